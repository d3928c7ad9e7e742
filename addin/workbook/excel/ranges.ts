import type { Cell, Cells } from "../../chart/cell.ts";
import type { Area, CellAddress, RangeData } from "../port.ts";
import { codeOf } from "./excelError.ts";
import { inGroups, inTurn } from "./requests.ts";

/** A part of a sheet to be read, with about how many bytes the answer takes. */
export interface Part {
  readonly area: Area;
  readonly bytes: number;
}

/** Excel on the web refuses answers of more than 5 MB; the bytes of a part are a guess. */
const answerLimit = 3_000_000;

export function rangeOf(context: Excel.RequestContext, area: Area): Excel.Range {
  return context.workbook.worksheets
    .getItem(area.sheet)
    .getRangeByIndexes(area.row, area.column, area.rows, area.columns);
}

export function cellOf(context: Excel.RequestContext, at: CellAddress): Excel.Range {
  return rangeOf(context, { ...at, rows: 1, columns: 1 });
}

/** An area as one part to be read, at that many bytes a cell. */
export function partOf(area: Area, bytesPerCell: number): Part {
  return { area, bytes: area.rows * area.columns * bytesPerCell };
}

/**
 * Read parts in as many answers as their size needs, and halve what turns out to be too much for one answer.
 *
 * @param read reads some parts in one request, and gives one result a part
 * @returns the results in order; a part that had to be cut gives more than one
 */
export async function readParts<P extends Part, R>(
  parts: readonly P[],
  read: (group: readonly P[]) => Promise<readonly R[]>,
): Promise<R[]> {
  const small = parts.flatMap((part) => (part.bytes > answerLimit ? halves(part) : [part]));
  if (small.length > parts.length) return readParts(small, read);
  const results = await inTurn(inGroups(parts, answerLimit), async (group) => {
    try {
      return await read(group);
    } catch (error) {
      const [first] = group;
      const smaller = group.length > 1 || !first ? group : halves(first);
      if (codeOf(error) !== "ResponsePayloadSizeLimitExceeded" || smaller.length < 2) throw error;
      const middle = Math.ceil(smaller.length / 2);
      return [
        ...(await readParts(smaller.slice(0, middle), read)),
        ...(await readParts(smaller.slice(middle), read)),
      ];
    }
  });
  return results.flat();
}

function halves<P extends Part>(part: P): P[] {
  const { area } = part;
  if (area.rows < 2) return [part];
  const top = Math.ceil(area.rows / 2);
  const bytes = part.bytes / 2;
  return [
    { ...part, bytes, area: { ...area, rows: top } },
    { ...part, bytes, area: { ...area, row: area.row + top, rows: area.rows - top } },
  ];
}

/** Read an area that is there. */
export async function readRange(context: Excel.RequestContext, area: Area): Promise<RangeData> {
  const parts = await readParts([partOf(area, 50)], async (group) => {
    const ranges = group.map((part) => {
      const range = rangeOf(context, part.area);
      range.load(["values", "valueTypes", "numberFormat"]);
      return range;
    });
    await context.sync();
    return ranges.map((range) => ({
      values: cellsOf(range.values, range.valueTypes),
      formats: textsOf(range.numberFormat),
    }));
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

/** A value of Excel’s with its type. */
export function cellFrom(value: unknown, type: string | undefined): Cell {
  if (type === "Empty") return undefined;
  if (type === "Error") return { error: String(value) };
  if (typeof value === "number" || typeof value === "boolean" || typeof value === "string") return value;
  return undefined;
}

export function textsOf(values: readonly (readonly unknown[])[]): string[][] {
  return values.map((row) => row.map(String));
}
