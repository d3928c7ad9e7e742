import type { Cell } from "../../chart/cell.ts";
import type { CellContent, SheetContent, WorkbookContent } from "../../workbook/content.ts";
import { descriptors } from "../../../functions/all.ts";
import { toCell, toCells } from "../../../functions/arguments.ts";

/** One formula of a workbook, calculated. */
export interface Calculated {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly formula: string;
  /** A table for a spilled result. */
  readonly result: readonly (readonly unknown[])[];
}

/** Calculates every formula of ours in a workbook: calls with cells, ranges, tables, numbers and texts. */
export function calculate(workbook: WorkbookContent): readonly Calculated[] {
  return workbook.sheets.flatMap((sheet) =>
    sheet.cells.flatMap((row, r) =>
      row.flatMap((cell, c) => {
        const call = /^=FIT\.([A-Z]+)\((.*)\)$/.exec(cell?.formula ?? "");
        if (!call) return [];
        const descriptor = descriptors.find(({ name }) => name === call[1]);
        if (!descriptor) throw new Error(`${cell?.formula ?? ""} calls a function that does not exist`);
        const values = (call[2] ?? "").split(/\s*,\s*/).map((text) => argument(workbook, sheet.name, text));
        const result = descriptor.compute(values);
        return [
          {
            sheet: sheet.name,
            row: r,
            column: c,
            formula: cell?.formula ?? "",
            result: Array.isArray(result) ? result : [[result]],
          },
        ];
      }),
    ),
  );
}

function argument(workbook: WorkbookContent, sheetName: string, text: string): unknown {
  // An argument that is left out.
  if (text === "") return undefined;
  const table = /^(\w+)\[#All\]$/.exec(text);
  if (table) return toCells(tableCells(workbook, table[1] ?? ""));
  if (/^\d+(\.\d+)?$/.test(text)) return Number(text);
  const quoted = /^"([^"]*)"$/.exec(text);
  if (quoted) return quoted[1];
  const range = /^([A-Z])(\d+)(?::([A-Z])(\d+))?$/.exec(text);
  if (!range) throw new Error(`“${text}” is not a table, a cell or a range`);
  const [, left = "", top = "", right = left, bottom = top] = range;
  const sheet = workbook.sheets.find(({ name }) => name === sheetName);
  const cells = rectangle(
    sheet?.cells ?? [],
    Number(top) - 1,
    letter(left),
    Number(bottom),
    letter(right) + 1,
  );
  return range[3] === undefined ? cells[0]?.[0] : toCells(cells);
}

/** The workbook with the results of our formulas as their last values, in all the cells that they fill. */
export function calculated(workbook: WorkbookContent): WorkbookContent {
  const results = calculate(workbook);
  return {
    sheets: workbook.sheets.map((sheet) => ({
      ...sheet,
      cells: results
        .filter((each) => each.sheet === sheet.name)
        .reduce((cells, each) => filled(cells, each), sheet.cells),
    })),
  };
}

function filled(cells: SheetContent["cells"], { row, column, result }: Calculated): SheetContent["cells"] {
  const rows = result.length;
  const columns = Math.max(0, ...result.map((line) => line.length));
  const height = Math.max(cells.length, row + rows);
  return Array.from({ length: height }, (_, r) => {
    const line = cells[r] ?? [];
    if (r < row || r >= row + rows) return line;
    return Array.from({ length: Math.max(line.length, column + columns) }, (__, c) => {
      if (c < column || c >= column + columns) return line[c];
      const value = toCell(result[r - row]?.[c - column]) ?? "";
      if (r > row || c > column) return { ...line[c], value, spilled: true };
      return { ...line[c], value, ...(rows * columns > 1 && { spill: { rows, columns } }) };
    });
  });
}

/** The cells of a table, headings first. */
export function tableCells(workbook: WorkbookContent, name: string): Cell[][] {
  for (const sheet of workbook.sheets) {
    const table = sheet.tables?.find((one) => one.name === name);
    if (table)
      return rectangle(
        sheet.cells,
        table.row,
        table.column,
        table.row + table.rows,
        table.column + table.columns,
      );
  }
  throw new Error(`There is no table ${name}`);
}

function rectangle(
  cells: readonly (readonly (CellContent | undefined)[])[],
  top: number,
  left: number,
  bottom: number,
  right: number,
): Cell[][] {
  return Array.from({ length: bottom - top }, (_, r) =>
    Array.from({ length: right - left }, (_, c) => cells[top + r]?.[left + c]?.value),
  );
}

function letter(name: string): number {
  return name.charCodeAt(0) - "A".charCodeAt(0);
}
