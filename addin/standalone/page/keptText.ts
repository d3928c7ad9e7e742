import type { IWorkbookData } from "@univerjs/core";
import { z } from "zod";
import { limits } from "../../workbook/limits.ts";
import { resultsName } from "../grid/keptResults.ts";

const rows = 1_048_576;
const columns = 16_384;

const isIndex = (most: number) => (key: string) => /^\d{1,7}$/.test(key) && Number(key) < most;
const row = z.string().refine(isIndex(rows));
const column = z.string().refine(isIndex(columns));
const any = z.record(z.string(), z.unknown());

const cell = z
  .looseObject({
    v: z.union([z.string(), z.number(), z.boolean()]).nullish(),
    t: z.number().nullish(),
    f: z.string().nullish(),
    si: z.string().nullish(),
    s: z.union([z.string(), any]).nullish(),
    p: any.nullish(),
  })
  .nullable();

const range = z.looseObject({
  startRow: z.int().min(0).max(rows),
  endRow: z.int().min(0).max(rows),
  startColumn: z.int().min(0).max(columns),
  endColumn: z.int().min(0).max(columns),
});

const freeze = z.looseObject({
  xSplit: z.int().min(0).max(columns),
  ySplit: z.int().min(0).max(rows),
  startRow: z.int().min(-1).max(rows),
  startColumn: z.int().min(-1).max(columns),
});

const size = z.number().min(0).max(10_000).nullish();

const sheet = z.looseObject({
  id: z.string(),
  name: z.string().min(1),
  rowCount: z.int().min(1).max(rows).optional(),
  columnCount: z.int().min(1).max(columns).optional(),
  defaultRowHeight: size,
  defaultColumnWidth: size,
  cellData: z.record(row, z.record(column, cell)).optional(),
  rowData: z.record(row, z.looseObject({ h: size, ah: size }).nullable()).optional(),
  columnData: z.record(column, z.looseObject({ w: size }).nullable()).optional(),
  mergeData: z.array(range).optional(),
  freeze: freeze.optional(),
});

const tables = z.array(z.looseObject({ id: z.string(), name: z.string().min(1), range }));

const pickLists = z.array(z.looseObject({ uid: z.string(), type: z.string(), ranges: z.array(range) }));

/** Formulas together fill no more cells than a workbook may have. */
const areas = z
  .record(z.string(), z.record(row, z.record(column, range)))
  .refine((sheets) => sum(Object.values(sheets).flatMap(sizesIn)) <= limits.area);

function sizesIn(rows: Readonly<Record<string, Readonly<Record<string, z.infer<typeof range>>>>>): number[] {
  return Object.values(rows).flatMap((cells) =>
    Object.values(cells).map(
      ({ startRow, endRow, startColumn, endColumn }) =>
        (endRow - startRow + 1) * (endColumn - startColumn + 1),
    ),
  );
}

function sum(sizes: readonly number[]): number {
  return sizes.reduce((total, size) => total + Math.max(0, size), 0);
}

/** What is kept beside the cells, all of it as JSON. What the page itself works with has to have its form too. */
const resources: Readonly<Record<string, z.ZodType>> = {
  // The page writes lists of tables, the grid writes them as part of something larger.
  SHEET_TABLE_PLUGIN: z.record(z.string(), z.union([tables, z.looseObject({ tables })])),
  SHEET_DATA_VALIDATION_PLUGIN: z.record(z.string(), pickLists),
  SHEET_NOTE_PLUGIN: z.record(
    z.string(),
    z.record(row, z.record(column, z.looseObject({ note: z.string() }))),
  ),
  [resultsName]: z.object({
    cells: z.record(z.string(), z.record(row, z.record(column, cell))),
    areas,
  }),
};

const resource = z.looseObject({ name: z.string(), data: z.string() }).refine(({ name, data }) => {
  if (data === "") return true;
  const value = parse(data);
  return value !== undefined && (resources[name] ?? z.unknown()).safeParse(value).success;
});

const workbook = z
  .looseObject({
    id: z.string().min(1),
    name: z.string(),
    styles: z.record(z.string(), any.nullable()).optional(),
    sheetOrder: z.array(z.string()).min(1),
    sheets: z.record(z.string(), sheet),
    resources: z.array(resource).optional(),
  })
  .refine(
    ({ sheetOrder, sheets }) =>
      new Set(sheetOrder).size === sheetOrder.length &&
      sheetOrder.length === Object.keys(sheets).length &&
      sheetOrder.every((id) => sheets[id]?.id === id),
  );

const kept = z.object({
  format: z.literal(1),
  // The value itself is opened: a copy of a large workbook would cost its size once more.
  snapshot: z.custom<IWorkbookData>((value) => workbook.safeParse(value).success),
});

/** The grid’s workbook as the text that is kept. */
export function toKeptText(snapshot: IWorkbookData): string {
  return JSON.stringify({ format: 1, snapshot });
}

/** Kept text as the grid opens it; `undefined` when it is not a workbook that the grid can hold. */
export function fromKeptText(text: string): IWorkbookData | undefined {
  const snapshot = kept.safeParse(parse(text)).data?.snapshot;
  if (snapshot) dropEmptied(snapshot);
  return snapshot;
}

/** Cells that were emptied can be kept as nothing at all, which not every part of the grid expects. */
function dropEmptied({ sheets }: IWorkbookData): void {
  for (const { cellData } of Object.values(sheets)) {
    for (const cells of Object.values((cellData ?? {}) as Record<string, object>))
      for (const [key, value] of Object.entries(cells))
        if (value === null) Reflect.deleteProperty(cells, key);
  }
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
