import type { Cell } from "../../addin/chart/cell.ts";
import { isBlank } from "../../addin/chart/cell.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { areaName } from "../../addin/workbook/address.ts";
import type { CellContent, SheetContent, TableContent } from "../../addin/workbook/content.ts";
import { freeName } from "../shell/freeName.ts";
import { count } from "../ui/words.ts";
import type { ColumnLook, Writing } from "../shell/writing.ts";
import { followed, headingRow, resultSheet, startOn } from "../shell/writing.ts";
import type { FiguresToGroup, GroupsInput } from "./readGroups.ts";
import { toleranceText } from "./toleranceStarter.ts";
import { shownTimes } from "./words.ts";

/** What is written to a new sheet, as a formula or as values. */
export interface SheetToWrite {
  /** Name of the sheet, if it is free. */
  readonly name: string;
  readonly title: string;
  /** What the rows are in words, for example “groups of 37 figures”. */
  readonly what: string;
  /** Headings first. */
  readonly values: readonly (readonly Cell[])[];
  /** Widths of the columns in pixels. */
  readonly widths: readonly number[];
}

/** Plans a new sheet with values that stay as they are. */
export function planValues(sheet: SheetToWrite, { sheets }: GroupsInput): Writing {
  const name = freeName(sheet.name, sheets);
  const { values } = sheet;
  const [headings = [], ...rows] = values;
  const area = { row: headingRow, column: 0, rows: values.length, columns: headings.length };
  return {
    label: `Write the ${sheet.what}`,
    preview: `Writes the ${sheet.what} as words and numbers into ${areaName(area)} of the new sheet “${name}”.`,
    done: `The ${sheet.what} are on the sheet “${name}”.`,
    at: startOn(name),
    edits: () => [
      {
        kind: "sheet",
        sheet: resultSheet({
          name,
          title: sheet.title,
          says: "As found when it was written; it does not follow later changes.",
          cells: [
            headings.map((value) => ({ value, style: "heading" as const })),
            ...rows.map((row) => row.map(resultCell)),
          ],
          columnWidths: sheet.widths,
        }),
      },
    ],
  };
}

/** Two decimals are enough to be read; a blank stays empty. */
function resultCell(value: Cell): CellContent | undefined {
  if (isBlank(value)) return undefined;
  return typeof value === "number" && !Number.isInteger(value) ? { value, format: "0.00" } : { value };
}

/** A formula, and the tolerances that it needs beside those of the workbook. */
export interface FormulaToWrite {
  /** The formula for a name of the tolerances, `undefined` for the usual ones. */
  readonly formula: (tolerances: string | undefined) => string;
  /** 1 where the tolerances count as they stand. */
  readonly times: number;
  readonly columns: readonly ComparedColumn[];
  /** The class of garments whose tolerances count; `undefined` for the body and its parts. */
  readonly garment: string | undefined;
}

/**
 * Plans a new sheet with a formula that follows every change. Where tolerances are made larger or smaller, a table of
 * them goes onto the sheet too, since a formula knows tolerances only as a table.
 *
 * @throws {InputError} when a tolerance becomes larger than a table can say
 */
export function planFormula(
  sheet: SheetToWrite,
  { formula, times, columns, garment }: FormulaToWrite,
  { sheets, tables }: GroupsInput,
  { tolerancesTable }: FiguresToGroup,
): Writing {
  const name = freeName(sheet.name, sheets);
  const isScaled = times !== 1;
  const scaled = freeName(
    "GroupTolerances",
    tables.map((table) => table.name),
    "_",
  );
  const text = `=${formula(isScaled ? scaled : tolerancesTable?.name)}`;
  const [headings = [], ...rows] = sheet.values;
  const width = headings.length;
  const own = isScaled ? scaledCells(columns, times, garment) : [];
  const beside = `${shownTimes(times)} times your tolerances`;
  return {
    label: `Write the ${sheet.what}`,
    preview: `Writes ${text} into A${String(headingRow + 1)} of the new sheet “${name}”; it fills the cells below and beside with the ${sheet.what}.${
      isScaled
        ? ` Beside it stands the table ${scaled} with ${beside} for ${count(columns.length, "measure")}: the formula goes by those.`
        : ""
    }`,
    done: `The ${sheet.what} are on the sheet “${name}”.`,
    at: startOn(name),
    edits: () => [
      {
        kind: "sheet",
        sheet: {
          ...resultSheet({
            name,
            title: sheet.title,
            says: isScaled
              ? `Follows every change of the figures; goes by the table beside it, with ${beside}.`
              : "Follows every change of the figures and tolerances.",
            cells: withTolerances(
              followed(text, { rows: rows.length, looks: looksOf(sheet.values) }),
              own,
              width,
            ),
            columnWidths: sheet.widths,
          }),
          ...(isScaled && { tables: [tableBeside(scaled, own, width)] }),
        },
      },
    ],
  };
}

/**
 * The same for a worksheet function that goes by the measures of the body, with the tolerances as they stand.
 *
 * @param name of the function
 * @param more its arguments after chart and tolerances
 * @throws {InputError} when another part than the body is looked at
 */
export function planBodyFormula(
  sheet: SheetToWrite,
  { name, more, part }: { readonly name: string; readonly more: readonly string[]; readonly part: string },
  input: GroupsInput,
  figures: FiguresToGroup,
): Writing {
  if (part !== "body") {
    throw new InputError(
      "The formula goes by the measures of the body only. Choose the body, or write words and numbers that stay as they are.",
    );
  }
  if (figures.estimates.areCounted) {
    throw new InputError(
      "The formula leaves estimates out, and here they count. Switch “Count estimates too” off, or write values.",
    );
  }
  const plan = {
    formula: (tolerances: string | undefined) => formulaOf(name, figures, tolerances, more),
    times: 1,
    columns: [],
    garment: undefined,
  };
  return planFormula(sheet, plan, input, figures);
}

/**
 * A worksheet function of chart and tolerances, without the leading `=`.
 *
 * @param tolerances name of their table; `undefined` for the usual ones
 */
export function formulaOf(
  name: string,
  { table }: FiguresToGroup,
  tolerances: string | undefined,
  more: readonly string[],
): string {
  const given = [`${table.name}[#All]`, tolerances === undefined ? "" : `${tolerances}[#All]`, ...more];
  const last = given.findLastIndex((argument) => argument !== "");
  return `${name}(${given.slice(0, last + 1).join(", ")})`;
}

/** Columns of which some number is not whole show two decimals. */
function looksOf([headings = [], ...rows]: SheetToWrite["values"]): readonly ColumnLook[] {
  return headings.map((_, column) =>
    rows.some((row) => typeof row[column] === "number" && !Number.isInteger(row[column]))
      ? { format: '0.00" "' }
      : undefined,
  );
}

/** The tolerances right of the result, with an empty column between. */
function withTolerances(
  cells: SheetContent["cells"],
  own: readonly (readonly Cell[])[],
  width: number,
): SheetContent["cells"] {
  if (own.length === 0) return cells;
  return Array.from({ length: Math.max(cells.length, own.length) }, (_, r) => [
    ...Array.from({ length: width + 1 }, (_, c) => cells[r]?.[c]),
    ...(own[r] ?? []).map((value) => ({ value })),
  ]);
}

function tableBeside(name: string, cells: readonly (readonly Cell[])[], width: number): TableContent {
  return {
    name,
    row: headingRow,
    column: width + 1,
    rows: cells.length,
    columns: cells[0]?.length ?? 0,
  };
}

function scaledCells(
  columns: readonly ComparedColumn[],
  times: number,
  garment: string | undefined,
): readonly (readonly Cell[])[] {
  const headings = garment === undefined ? ["Measure", "Tolerance"] : ["Measure", "Tolerance", garment];
  const before = headings.length - 2;
  return [
    headings,
    ...columns.map((compared) => [
      compared.column.heading,
      ...Array.from({ length: before }, () => undefined),
      toleranceCell(compared, times),
    ]),
  ];
}

/** @throws {InputError} when the tolerance becomes larger than a table can say */
function toleranceCell({ column, tolerance }: ComparedColumn, times: number): string {
  if (tolerance.percent * times < 100) return toleranceText(tolerance, times, column.unit);
  throw new InputError(
    `The tolerance of “${column.heading}” would be 100 % or more, which a table cannot hold. Take a smaller number, or write words and numbers that stay as they are.`,
  );
}
