import type { Cell, Cells } from "../../chart/cell.ts";
import type { Area, CellAddress, RangeData } from "../port.ts";
import { inTurn } from "./requests.ts";

/** Most cells read in one answer; Excel on the web refuses answers of more than 5 MB. */
const answerLimit = 40_000;

export function rangeOf(context: Excel.RequestContext, area: Area): Excel.Range {
  return context.workbook.worksheets
    .getItem(area.sheet)
    .getRangeByIndexes(area.row, area.column, area.rows, area.columns);
}

export function cellOf(context: Excel.RequestContext, at: CellAddress): Excel.Range {
  return rangeOf(context, { ...at, rows: 1, columns: 1 });
}

/** An area cut into parts of whole rows, each small enough for one answer. */
export function readableParts(area: Area): Area[] {
  const most = Math.max(1, Math.floor(answerLimit / Math.max(1, area.columns)));
  return Array.from({ length: Math.ceil(area.rows / most) }, (_, i) => ({
    ...area,
    row: area.row + i * most,
    rows: Math.min(most, area.rows - i * most),
  }));
}

/** Read an area that is there, in as many answers as its size needs. */
export async function readRange(context: Excel.RequestContext, area: Area): Promise<RangeData> {
  const parts = await inTurn(readableParts(area), async (part) => {
    const range = rangeOf(context, part);
    range.load(["values", "valueTypes", "numberFormat"]);
    await context.sync();
    return { values: cellsOf(range.values, range.valueTypes), formats: textsOf(range.numberFormat) };
  });
  return {
    area,
    values: parts.flatMap((part) => part.values),
    formats: parts.flatMap((part) => part.formats),
  };
}

/** Excel’s values and their types as cells: error values are told from text only by the type. */
export function cellsOf(
  values: readonly (readonly unknown[])[],
  types: readonly (readonly string[])[],
): Cells {
  return values.map((row, i) => row.map((value, j) => cellFrom(value, types[i]?.[j])));
}

function cellFrom(value: unknown, type: string | undefined): Cell {
  if (type === "Empty") return undefined;
  if (type === "Error") return { error: String(value) };
  if (typeof value === "number" || typeof value === "boolean" || typeof value === "string") return value;
  return undefined;
}

export function textsOf(values: readonly (readonly unknown[])[]): string[][] {
  return values.map((row) => row.map(String));
}
