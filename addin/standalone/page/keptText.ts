import type { IWorkbookData } from "@univerjs/core";
import * as z from "zod/mini";
import { limits } from "../../workbook/limits.ts";
import { resultsName } from "../grid/keptResults.ts";

const rows = 1_048_576;
const columns = 16_384;

const isIndex = (most: number) => (key: string) => /^\d{1,7}$/.test(key) && Number(key) < most;
const row = z.string().check(z.refine(isIndex(rows)));
const column = z.string().check(z.refine(isIndex(columns)));
const any = z.record(z.string(), z.unknown());

const cell = z.nullable(
  z.looseObject({
    v: z.nullish(z.union([z.string(), z.number(), z.boolean()])),
    t: z.nullish(z.number()),
    f: z.nullish(z.string()),
    si: z.nullish(z.string()),
    s: z.nullish(z.union([z.string(), any])),
    p: z.nullish(any),
  }),
);

const range = z.looseObject({
  startRow: z.int().check(z.minimum(0), z.maximum(rows)),
  endRow: z.int().check(z.minimum(0), z.maximum(rows)),
  startColumn: z.int().check(z.minimum(0), z.maximum(columns)),
  endColumn: z.int().check(z.minimum(0), z.maximum(columns)),
});

const freeze = z.looseObject({
  xSplit: z.int().check(z.minimum(0), z.maximum(columns)),
  ySplit: z.int().check(z.minimum(0), z.maximum(rows)),
  startRow: z.int().check(z.minimum(-1), z.maximum(rows)),
  startColumn: z.int().check(z.minimum(-1), z.maximum(columns)),
});

const size = z.nullish(z.number().check(z.minimum(0), z.maximum(10_000)));

const sheet = z.looseObject({
  id: z.string(),
  name: z.string().check(z.minLength(1)),
  rowCount: z.optional(z.int().check(z.minimum(1), z.maximum(rows))),
  columnCount: z.optional(z.int().check(z.minimum(1), z.maximum(columns))),
  defaultRowHeight: size,
  defaultColumnWidth: size,
  cellData: z.optional(z.record(row, z.record(column, cell))),
  rowData: z.optional(z.record(row, z.nullable(z.looseObject({ h: size, ah: size })))),
  columnData: z.optional(z.record(column, z.nullable(z.looseObject({ w: size })))),
  mergeData: z.optional(z.array(range)),
  freeze: z.optional(freeze),
});

const tables = z.array(z.looseObject({ id: z.string(), name: z.string().check(z.minLength(1)), range }));

const pickLists = z.array(z.looseObject({ uid: z.string(), type: z.string(), ranges: z.array(range) }));

/** Formulas together fill no more cells than a workbook may have. */
const areas = z
  .record(z.string(), z.record(row, z.record(column, range)))
  .check(z.refine((sheets) => sum(Object.values(sheets).flatMap(sizesIn)) <= limits.area));

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
const resources: Readonly<Record<string, z.ZodMiniType>> = {
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

const resource = z.looseObject({ name: z.string(), data: z.string() }).check(
  z.refine(({ name, data }) => {
    if (data === "") return true;
    const value = parse(data);
    return value !== undefined && (resources[name] ?? z.unknown()).safeParse(value).success;
  }),
);

const workbook = z
  .looseObject({
    id: z.string().check(z.minLength(1)),
    name: z.string(),
    styles: z.optional(z.record(z.string(), z.nullable(any))),
    sheetOrder: z.array(z.string()).check(z.minLength(1)),
    sheets: z.record(z.string(), sheet),
    resources: z.optional(z.array(resource)),
  })
  .check(
    z.refine(
      ({ sheetOrder, sheets }) =>
        new Set(sheetOrder).size === sheetOrder.length &&
        sheetOrder.length === Object.keys(sheets).length &&
        sheetOrder.every((id) => sheets[id]?.id === id),
    ),
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
