import { findMeasure } from "../measures/dictionary.ts";
import { didYouMean } from "../measures/nearNames.ts";
import { headingKey } from "../measures/headingKey.ts";
import { InputError } from "../measures/inputError.ts";
import { quote } from "../measures/quote.ts";
import type { Cells } from "./cell.ts";
import type { GarmentClass } from "./garmentClass.ts";
import { defaultGarmentClasses } from "./garmentClass.ts";
import { endAt, endHeadings, sleeveAt, sleeveHeadings } from "./readParts.ts";
import type { TableColumn, TableOptions, TableRow } from "./tableRows.ts";
import {
  columnNamed,
  listAt,
  neededColumn,
  percentAt,
  placeIn,
  tableColumns,
  tableRows,
  textAt,
} from "./tableRows.ts";
import { openingPlaces, wornOnParts } from "./garmentTerms.ts";
import type { OpeningPlace } from "./garmentTerms.ts";

const table = "garment classes";

/**
 * A table with the headings Garment class and Worn on, and if wanted Seam edges, Openings, Sleeves, Ends at, Also called, What it is →
 * classes: those of the project, each replaced by the row of the same name, and new ones behind them.
 *
 * @throws {InputError} naming row and column
 */
export function readGarmentClasses(cells: Cells, options: TableOptions = {}): readonly GarmentClass[] {
  const columns = tableColumns(cells, options.unit);
  const name = neededColumn(columns, ["Garment class", "class"], table);
  const wornOn = neededColumn(columns, ["Worn on"], table);
  const edges = columnNamed(columns, ["Seam edges", "edges"]);
  const openings = columnNamed(columns, ["Openings", "openings that matter"]);
  const sleeve = columnNamed(columns, sleeveHeadings);
  const endsAt = columnNamed(columns, endHeadings);
  const synonyms = columnNamed(columns, ["Also called", "other names", "synonyms"]);
  const note = columnNamed(columns, ["What it is", "note", "notes"]);
  const own = new Map<string, GarmentClass>();
  for (const row of tableRows(cells, table, options)) {
    const named = textAt(row, name);
    if (named === "") throw new InputError(`${placeIn(row, name)}: the name is missing. Name the class.`);
    const before = defaultGarmentClasses.find((each) => headingKey(each.name) === headingKey(named));
    if (own.has(headingKey(named))) {
      throw new InputError(`${placeIn(row, name)}: ${quote(named)} is in the table twice. Keep one row.`);
    }
    own.set(headingKey(named), {
      name: named,
      synonyms: synonyms ? listAt(row, synonyms) : (before?.synonyms ?? []),
      wornOn: oneOf(row, wornOn, wornOnParts),
      seamEdges: seamEdges(row, edges) ?? before?.seamEdges ?? 4,
      openings: openings ? readOpenings(row, openings) : (before?.openings ?? []),
      ...ifKnown("sleeve", sleeve ? sleeveAt(row, sleeve) : before?.sleeve),
      ...ifKnown("endsAt", endsAt ? endAt(row, endsAt) : before?.endsAt),
      ...ifKnown("lacingGap", before?.lacingGap),
      note: textAt(row, note) || (before?.note ?? ""),
    });
  }
  const kept = defaultGarmentClasses.map((each) => own.get(headingKey(each.name)) ?? each);
  return [...kept, ...[...own.values()].filter((each) => !kept.includes(each))];
}

/** The classes as the cells of a table that {@link readGarmentClasses} reads. */
export function garmentClassCells(classes: readonly GarmentClass[] = defaultGarmentClasses): Cells {
  return [
    ["Garment class", "Worn on", "Seam edges", "Openings", "Sleeves", "Ends at", "Also called", "What it is"],
    ...classes.map(({ name, wornOn, seamEdges, openings, sleeve, endsAt, synonyms, note }) => [
      name,
      wornOn,
      seamEdges,
      openings.join(", "),
      sleeve,
      endsAt,
      synonyms.join(", "),
      note,
    ]),
  ];
}

/** An optional key is left out where it is not known. */
function ifKnown<K extends string, T>(key: K, value: T | undefined): Partial<Record<K, T>> {
  return value === undefined ? {} : ({ [key]: value } as Record<K, T>);
}

function seamEdges(row: TableRow, column: TableColumn | undefined): number | undefined {
  const given = percentAt(row, column);
  if (!given) return undefined;
  if (Number.isInteger(given.value) && given.value > 0) return given.value;
  throw new InputError(
    `${placeIn(row, column)}: ${quote(given.written)} is not a number of edges. Write 2, 4 or another whole number.`,
  );
}

function readOpenings(row: TableRow, column: TableColumn): readonly OpeningPlace[] {
  return listAt(row, column).map((word) => {
    const found = openingPlaces.find((place) => place === word.toLowerCase());
    if (found) return found;
    throw new InputError(
      `${placeIn(row, column)}: ${quote(word)} is not an opening. Write ${openingPlaces.join(", ")}.${didYouMean(word, openingPlaces)}`,
    );
  });
}

function oneOf<const T extends string>(row: TableRow, column: TableColumn, words: readonly T[]): T {
  const said = textAt(row, column);
  const found = words.find((word) => headingKey(word) === headingKey(said));
  if (found !== undefined) return found;
  const what = findMeasure(said) ? "is a measure, not a part" : "is not a part to wear it on";
  throw new InputError(
    `${placeIn(row, column)}: ${quote(said)} ${what}. Write ${words.join(", ")}.${didYouMean(said, words)}`,
  );
}
