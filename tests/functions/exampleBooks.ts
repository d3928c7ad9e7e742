import type { Cell } from "../../addin/chart/cell.ts";
import type { SheetContent, WorkbookContent } from "../../addin/workbook/content.ts";
import { cellName } from "../../addin/workbook/address.ts";
import type { FunctionDescriptor, Result } from "../../functions/descriptor.ts";
import { exampleArguments } from "../../functions/exampleArguments.ts";
import { toCells } from "../../functions/arguments.ts";

/** A formula of the reference, where to type it, and what it gives there. */
export interface ExampleToType {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** For example `OnAPART!A1`. */
  readonly address: string;
  /** With the leading `=`. */
  readonly formula: string;
  readonly gives: Result;
}

/** A workbook with the tables and ranges that examples read, before their formulas are typed. */
export interface ExampleBook {
  readonly content: WorkbookContent;
  readonly examples: readonly ExampleToType[];
}

interface Read {
  readonly formula: string;
  readonly gives: Result;
  readonly sheet: string;
  readonly tables: ReadonlyMap<string, readonly (readonly Cell[])[]>;
  /** Readings from A1 of the sheet that the formula stands on. */
  readonly range: readonly (readonly Cell[])[];
}

/** The first example of every function, in as few workbooks as hold the tables that they read. */
export function exampleBooks(descriptors: readonly FunctionDescriptor[]): ExampleBook[] {
  const books: Read[][] = [];
  for (const example of descriptors.map(readExample)) {
    const book = books.find((others) => others.every((other) => agree(other, example)));
    if (book) book.push(example);
    else books.push([example]);
  }
  return books.map(toBook);
}

function readExample({ name, examples }: FunctionDescriptor): Read {
  const example = examples[0];
  if (!example) throw new Error(`FIT.${name} has no example`);
  const { formula, values, gives } = example;
  const tables = new Map<string, readonly (readonly Cell[])[]>();
  let range: readonly (readonly Cell[])[] = [];
  for (const [i, text] of exampleArguments(formula).entries()) {
    const table = /^(\w+)\[#All\]$/.exec(text)?.[1];
    if (table !== undefined) tables.set(table, toCells(values[i]));
    else if (/^A1:[A-Z]+\d+$/.test(text)) range = toCells(values[i]);
    else if (/^[A-Z]+\d/.test(text)) throw new Error(`${formula}: “${text}” is read from a cell`);
  }
  return { formula: `=${formula}`, gives, sheet: `On${name}`, tables, range };
}

function agree(one: Read, other: Read): boolean {
  return [...one.tables].every(([name, cells]) => {
    const theirs = other.tables.get(name);
    return theirs === undefined || JSON.stringify(theirs) === JSON.stringify(cells);
  });
}

function toBook(examples: readonly Read[]): ExampleBook {
  const tables = new Map(examples.flatMap((example) => [...example.tables]));
  return {
    content: {
      sheets: [
        ...[...tables].map(([name, cells]) => tableSheet(name, cells)),
        ...examples.map(({ sheet, range }) => ({ name: sheet, cells: contents(range) })),
      ],
    },
    examples: examples.map(({ formula, gives, sheet, range }) => {
      const row = range.length > 0 ? range.length + 1 : 0;
      return { sheet, row, column: 0, address: `${sheet}!${cellName(row, 0)}`, formula, gives };
    }),
  };
}

function tableSheet(name: string, cells: readonly (readonly Cell[])[]): SheetContent {
  return {
    name: `${name} table`,
    cells: [[{ value: `The table ${name}` }], ...contents(cells)],
    tables: [{ name, row: 1, column: 0, rows: cells.length, columns: cells[0]?.length ?? 0 }],
  };
}

function contents(cells: readonly (readonly Cell[])[]): SheetContent["cells"] {
  return cells.map((row) =>
    row.map((value) => (value === undefined || value === "" ? undefined : { value })),
  );
}
