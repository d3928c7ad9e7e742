import { tableNamed } from "../checkEdits.ts";
import type { Area, CellAddress, Edit, TableInfo } from "../port.ts";
import { cellKey, touched, type Touched, type TouchedArea } from "../touched.ts";
import { savedInput, type Inputs } from "./cellInput.ts";
import { findFrozen, type FreezePlace } from "./freeze.ts";
import { changedByLooks } from "./looks.ts";
import { findMarks } from "./marks.ts";
import { findNotes } from "./notes.ts";
import { partOf, rangeOf, readParts, textsOf } from "./ranges.ts";
import type { Found } from "./editOperations.ts";

/** How one part of an area was before an action wrote to it. */
export interface SavedPart {
  readonly area: Area;
  readonly inputs: Inputs;
  readonly looks: Excel.SettableCellProperties[][] | undefined;
}

/** All that has to be known to take the edits of one phase back. */
export interface Before {
  readonly touched: Touched;
  readonly parts: readonly SavedPart[];
  /** The tables that grow. */
  readonly tables: readonly TableInfo[];
  readonly marks: readonly { readonly at: CellAddress; readonly marked: boolean }[];
  readonly notes: readonly { readonly at: CellAddress; readonly text: string | undefined }[];
  readonly frozen: readonly FreezePlace[];
}

/** Look at what the edits of one phase are about to touch, and save it. */
export async function saveBefore(
  context: Excel.RequestContext,
  edits: readonly Edit[],
  tables: readonly TableInfo[],
): Promise<{ before: Before; found: Found }> {
  const what = touched(edits);
  const grown = what.grownTables.map((name) => tableNamed(tables, name));
  const lastRows = await loadLastRows(context, grown);
  const areas = await loadAreas(context, what.areas);
  const marks = await findMarks(context, what.marks);
  const notes = await findNotes(context, what.notes);
  const markPlaces = new Map(marks.map((place) => [cellKey(place.at), place]));
  const notePlaces = new Map(notes.map((place) => [cellKey(place.at), place]));
  return {
    before: {
      touched: what,
      parts: areas.flatMap(({ parts }) => parts),
      tables: grown,
      marks: marks.map(({ at, marked }) => ({ at, marked })),
      notes: notes.map(({ at, text }) => ({ at, text })),
      frozen: await findFrozen(context, what.frozen),
    },
    found: {
      formatsOf: (area) => areas.find((saved) => sameArea(saved.area, area))?.formats ?? [],
      lastRowFormats: (name) => lastRows.get(tableNamed(tables, name).name) ?? [],
      markAt: (at) => markPlaces.get(cellKey(at)),
      noteAt: (at) => notePlaces.get(cellKey(at)),
    },
  };
}

/** The number formats of the last row of tables, by the table’s name. */
async function loadLastRows(
  context: Excel.RequestContext,
  tables: readonly TableInfo[],
): Promise<Map<string, readonly string[]>> {
  if (tables.length === 0) return new Map();
  const rows = tables.map(({ name, area }) => {
    const range = rangeOf(context, { ...area, row: area.row + area.rows - 1, rows: 1 });
    range.load("numberFormat");
    return { name, range };
  });
  await context.sync();
  return new Map(rows.map(({ name, range }) => [name, textsOf(range.numberFormat)[0] ?? []]));
}

interface SavedArea {
  readonly area: Area;
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
    const ranges = group.map(({ area, from }) => {
      const range = rangeOf(context, area);
      range.load(["formulas", "values", "valueTypes", "numberFormat"]);
      return { from, area, range, looks: from.styled ? range.getCellProperties(changedByLooks) : undefined };
    });
    await context.sync();
    return ranges.map(({ from, area, range, looks }) => ({
      from,
      part: { area, inputs: savedInputs(range, from, area), looks: looks?.value },
      formats: textsOf(range.numberFormat),
    }));
  });
  const byArea = new Map<TouchedArea, (typeof loaded)[number][]>(areas.map((from) => [from, []]));
  for (const each of loaded) byArea.get(each.from)?.push(each);
  return [...byArea].map(([from, own]) => {
    return {
      area: from.area,
      formats: own.flatMap(({ formats }) => formats),
      parts: own.map(({ part }) => part),
    };
  });
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
