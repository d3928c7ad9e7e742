import { areasMeet } from "../address.ts";
import { tableNamed } from "../existing.ts";
import { sameName } from "../names.ts";
import type { Area, CellAddress, Edit, TableInfo } from "../port.ts";
import { cellKey, touched, type Touched, type TouchedArea } from "../touched.ts";
import { savedInput, type Inputs } from "./cellInput.ts";
import { findFrozen, type FreezePlace } from "./freeze.ts";
import { changedByLooks } from "./looks.ts";
import { findGrowths, type Growth } from "./growth.ts";
import { findMarks, type MarkPlace, type MarkRule } from "./marks.ts";
import { findNotes } from "./notes.ts";
import { partOf, rangeOf, readParts, textsOf } from "./ranges.ts";
import { operation, type Operation } from "./requests.ts";
import type { Found } from "./editOperations.ts";

/** How one part of an area was before an action wrote to it. */
export interface SavedPart {
  readonly area: Area;
  readonly from: TouchedArea;
  readonly inputs: Inputs;
  readonly looks: Excel.SettableCellProperties[][] | undefined;
}

/** All that has to be known to take the edits of one phase back. */
export interface Before {
  readonly touched: Touched;
  readonly parts: readonly SavedPart[];
  /** The tables that grow. */
  readonly tables: readonly TableInfo[];
  /** Tables that Excel may let grow by itself, since cells right below or beside them are written. */
  readonly neighbours: readonly TableInfo[];
  /** Cells there that no edit writes, which Excel may fill then. */
  readonly asides: readonly SavedPart[];
  /** How they get rows. */
  readonly growths: readonly Growth[];
  readonly marks: readonly { readonly at: CellAddress; readonly rules: readonly MarkRule[] }[];
  readonly notes: readonly { readonly at: CellAddress; readonly text: string | undefined }[];
  readonly frozen: readonly FreezePlace[];
}

/** Look at what the edits of one phase are about to touch, and save it. */
export async function saveBefore(
  context: Excel.RequestContext,
  edits: readonly Edit[],
  tables: readonly TableInfo[],
): Promise<{ before: Before; found: Found; marks: ReadonlyMap<string, MarkPlace> }> {
  const what = touched(edits);
  const grown = what.grownTables.map((name) => tableNamed(tables, name));
  const growths = await findGrowths(context, edits, (name) => tableNamed(tables, name));
  const others = tables.filter((table) => !grown.includes(table));
  const aside = others.flatMap((table) => asideOf(table.area, what.areas));
  const areas = await loadAreas(context, [...what.areas, ...growths.flatMap(gapBelow), ...aside]);
  const marks = await findMarks(context, what.marks, tables);
  const notes = await findNotes(context, what.notes);
  const notePlaces = new Map(notes.map((place) => [cellKey(place.at), place]));
  return {
    before: {
      touched: what,
      parts: areas.flatMap(({ parts }) => parts),
      tables: grown,
      neighbours: others.filter(({ area }) => asideOf(area, what.areas).length > 0),
      asides: areas.flatMap(({ from, parts }) => (aside.includes(from) ? parts : [])),
      growths,
      marks: marks.map(({ at, rules }) => ({
        at,
        rules: rules.map(({ formula, area }) => ({ formula, area })),
      })),
      notes: notes.map(({ at, text }) => ({ at, text })),
      frozen: await findFrozen(context, what.frozen),
    },
    found: {
      formatsOf: (area) => areas.find((saved) => sameArea(saved.area, area))?.formats ?? [],
      growthOf: (name) => growths.find(({ table }) => sameName(table.name, name)),
      noteAt: (at) => notePlaces.get(cellKey(at)),
    },
    marks: new Map(marks.map((place) => [cellKey(place.at), place])),
  };
}

/** The cells right below and right beside a table, next to those that are written there. */
function asideOf(table: Area, written: readonly TouchedArea[]): readonly TouchedArea[] {
  const [bottom, right] = [table.row + table.rows, table.column + table.columns];
  const onSheet = written.filter(({ area }) => sameName(area.sheet, table.sheet));
  return onSheet.flatMap(({ area }) => {
    const rowsBelow = area.row <= bottom ? area.row + area.rows - bottom : 0;
    const columnsBeside = area.column <= right ? area.column + area.columns - right : 0;
    return [
      { ...table, row: bottom, rows: rowsBelow },
      { ...table, column: right, columns: columnsBeside },
    ]
      .filter((strip) => strip.rows > 0 && strip.columns > 0 && areasMeet(strip, area))
      .map((strip) => ({ area: strip, cells: unwritten(strip, onSheet), styled: false }));
  });
}

function unwritten(strip: Area, written: readonly TouchedArea[]): TouchedArea["cells"] {
  return Array.from({ length: strip.rows }, (_, i) =>
    Array.from({ length: strip.columns }, (__, j) => {
      const [row, column] = [strip.row + i, strip.column + j];
      const isWritten = written.some(
        ({ area, cells }) => cells[row - area.row]?.[column - area.column] !== undefined,
      );
      return isWritten ? undefined : {};
    }),
  );
}

/** Cells that become rows of a table where they are: they get its looks with it. */
function gapBelow({ way, gap }: Growth): readonly TouchedArea[] {
  if (way !== "below") return [];
  const cells = Array.from({ length: gap.rows }, () => Array.from({ length: gap.columns }, () => ({})));
  return [{ area: gap, cells, styled: true }];
}

interface SavedArea {
  readonly area: Area;
  readonly from: TouchedArea;
  readonly formats: readonly (readonly string[])[];
  readonly parts: readonly SavedPart[];
}

async function loadAreas(
  context: Excel.RequestContext,
  areas: readonly TouchedArea[],
): Promise<readonly SavedArea[]> {
  // An answer holds the formula, value, type, format and, where they are asked for, looks of each cell.
  const parts = areas.map((from) => ({ ...partOf(from.area, from.styled ? 180 : 70), from }));
  const loaded = await readParts(parts, async (group) => {
    const loading = group.map(({ area, from }) => ({ from, finish: loadPart(context, from, area) }));
    await context.sync();
    return loading.map(({ from, finish }) => ({ from, ...finish() }));
  });
  const byArea = new Map<TouchedArea, (typeof loaded)[number][]>(areas.map((from) => [from, []]));
  for (const each of loaded) byArea.get(each.from)?.push(each);
  return [...byArea].map(([from, own]) => {
    return {
      area: from.area,
      from,
      formats: own.flatMap(({ formats }) => formats),
      parts: own.map(({ part }) => part),
    };
  });
}

/** Queue reading a part of an area; the result can be asked for after the next sync. */
function loadPart(
  context: Excel.RequestContext,
  from: TouchedArea,
  area: Area,
): () => { readonly part: SavedPart; readonly formats: readonly (readonly string[])[] } {
  const range = rangeOf(context, area);
  range.load(["formulas", "values", "valueTypes", "numberFormat"]);
  const looks = from.styled ? range.getCellProperties(changedByLooks) : undefined;
  return () => ({
    part: { area, from, inputs: savedInputs(range, from, area), looks: looks?.value },
    formats: textsOf(range.numberFormat),
  });
}

/** Looks once more at what is about to be written over, in the same request as the writing. */
export interface LastLook {
  readonly operation: Operation;
  /**
   * What was there when the writing began, to be asked for afterwards; `undefined` where it is what was saved before.
   */
  changed(): Before | undefined;
}

/** Most cells that are looked at once more: what a large import writes over is not looked at. */
const lastLookCells = 5_000;

/**
 * Somebody else may change cells between our reading and our writing. A second reading at the head of the request that
 * writes tells of it, and knows what to bring back.
 */
export function lastLook(before: Before): LastLook {
  const cells = before.parts.reduce((sum, { area }) => sum + area.rows * area.columns, 0);
  const parts = cells > lastLookCells ? [] : before.parts;
  let finish: (() => Before) | undefined;
  return {
    operation: operation((context) => {
      const loading = parts.map(({ from, area }) => loadPart(context, from, area));
      const sizes = before.tables.map((table) => {
        const item = context.workbook.tables.getItem(table.name);
        item.load("showTotals");
        const range = item.getRange();
        range.load("rowCount");
        return { table, item, range };
      });
      finish = () => ({
        ...before,
        parts: parts.length === 0 ? before.parts : loading.map((each) => each().part),
        tables: sizes.map(({ table, item, range }) => ({
          ...table,
          area: { ...table.area, rows: range.rowCount - (item.showTotals ? 1 : 0) },
        })),
      });
    }),
    changed: () => {
      const now = finish?.();
      const seen = ({ parts: all, tables }: Before) =>
        JSON.stringify([all.map(({ inputs }) => inputs), tables.map(({ area }) => area.rows)]);
      return now && seen(now) !== seen(before) ? now : undefined;
    },
  };
}

/** What brings back those cells of a part that are written to, and leaves the others alone. */
function savedInputs(range: Excel.Range, { area: whole, cells }: TouchedArea, part: Area): Inputs {
  const formats = textsOf(range.numberFormat);
  const isWritten = (i: number, j: number) => cells[part.row - whole.row + i]?.[j] !== undefined;
  return {
    formats: formats.map((row, i) => row.map((format, j) => (isWritten(i, j) ? format : null))),
    formulas: formats.map((row, i) =>
      row.map((format, j) =>
        isWritten(i, j)
          ? savedInput(
              range.formulas[i]?.[j],
              range.values[i]?.[j],
              range.valueTypes[i]?.[j] ?? "Empty",
              format,
            )
          : null,
      ),
    ),
  };
}

function sameArea(a: Area, b: Area): boolean {
  return (
    a.sheet === b.sheet &&
    a.row === b.row &&
    a.column === b.column &&
    a.rows === b.rows &&
    a.columns === b.columns
  );
}
