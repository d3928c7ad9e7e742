import { findMeasure } from "../measures/dictionary.ts";
import { InputError } from "../measures/inputError.ts";
import { didYouMean } from "../measures/nearNames.ts";
import { quote } from "../measures/quote.ts";
import type { Cells } from "./cell.ts";
import type { Chart } from "./chart.ts";
import { figureIndex, figureKey } from "./find.ts";
import type { GarmentClass } from "./garmentClass.ts";
import { defaultGarmentClasses, garmentClassNamed } from "./garmentClass.ts";
import type { Pattern, PatternProblem, PatternTable } from "./pattern.ts";
import { readClosure } from "./readClosure.ts";
import { endAt, endHeadings, sleeveAt, sleeveHeadings } from "./readParts.ts";
import { readStretch } from "./readStretch.ts";
import type { TableColumn, TableOptions, TableRow } from "./tableRows.ts";
import {
  columnNamed,
  lengthAt,
  listAt,
  neededColumn,
  placeIn,
  tableColumns,
  tableRows,
  textAt,
  withoutZeros,
} from "./tableRows.ts";
import { underLayers } from "./underLayers.ts";
import type { SleeveKind } from "./garmentTerms.ts";

const table = "patterns";

/** The headings of each column, finished measures apart; the first is the usual one. */
export const columnHeadings = {
  code: ["Pattern", "code", "pattern code"],
  garmentClass: ["Garment class", "class", "garment"],
  title: ["Title", "name", "pattern name"],
  draftedFor: ["Drafted for", "drafted on", "made for"],
  stretch: ["Stretch", "fabric stretch", "cloth stretch"],
  thickness: ["Thickness", "cloth thickness", "fabric thickness"],
  wornOver: ["Worn over", "under layers", "under-layers"],
  opens: ["Opens", "opens at", "closure"],
  openingLength: ["Opening length", "closure length", "placket", "placket length"],
  neck: ["Neck opening"],
  cuff: ["Cuff opening", "sleeve hem", "sleeve opening"],
  hem: ["Hem opening", "leg opening"],
  waist: ["Waist opening"],
  sleeve: sleeveHeadings,
  endsAt: endHeadings,
  length: ["Length", "finished length", "skirt length", "dress length", "hem length"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export interface PatternOptions extends TableOptions {
  readonly classes?: readonly GarmentClass[];
}

/**
 * A table of patterns → typed patterns, and the rows that cannot be used, each with a message that names row and column.
 *
 * Headings: Pattern (the code) and Garment class are needed. Title, Drafted for (a figure of the chart), Stretch %,
 * Thickness, Worn over (codes, with commas), Opens, Opening length, Neck opening, Cuff opening, Hem opening and Waist
 * opening, Sleeves (none, short, elbow, long), Ends at (a place of the body) and Length (to the hem, from the waist or
 * the back of the neck) may be there; every other heading that the dictionary knows, with or without “Finished”, is a finished measure
 * of the garment, unless it says whom it is to fit. Headings may state a unit; lengths are in mm without one.
 *
 * @throws {InputError} when a needed heading is missing or the table has no patterns
 */
export function readPatternTable(cells: Cells, chart: Chart, options: PatternOptions = {}): PatternTable {
  const columns = patternColumns(cells, options);
  const problems: PatternProblem[] = [];
  const patterns: { readonly pattern: Pattern; readonly row: TableRow }[] = [];
  const rowOfCode = new Map<string, number>();
  // A flat shoe has a heel height of 0.
  const heels = columns.finished
    .filter(({ measure }) => measure === "heelHeight")
    .map(({ column }) => column);
  for (const given of tableRows(cells, table, options)) {
    const row = options.zeroIsEmpty ? withoutZeros(given, heels) : given;
    try {
      const pattern = readPattern(row, columns, chart, options.classes ?? defaultGarmentClasses);
      const twin = rowOfCode.get(codeKey(pattern.code));
      if (twin !== undefined) {
        throw new InputError(
          `${placeIn(row, columns.code)}: ${quote(pattern.code)} is in row ${String(twin + 1)} too. Give each pattern a code of its own.`,
        );
      }
      rowOfCode.set(codeKey(pattern.code), row.row);
      patterns.push({ pattern, row });
    } catch (error) {
      problems.push(problemOf(error, row, columns));
    }
  }
  if (patterns.length === 0 && problems.length === 0) {
    throw new InputError("The patterns have headings but no rows. Write one row for each pattern.");
  }
  return { patterns: withSoundLayers(patterns, columns, problems), problems };
}

/**
 * As {@link readPatternTable}, for a table in which every row must be sound.
 *
 * @throws {InputError} the first problem, with the number of further ones
 */
export function readPatterns(cells: Cells, chart: Chart, options: PatternOptions = {}): readonly Pattern[] {
  const { patterns, problems } = readPatternTable(cells, chart, options);
  const [first, ...further] = problems;
  if (!first) return patterns;
  const more =
    further.length > 0
      ? ` There ${further.length > 1 ? "are" : "is"} ${String(further.length)} more to mend.`
      : "";
  throw new InputError(`${first.message}${more}`);
}

/**
 * The pattern with a code, in any case and spacing.
 *
 * @throws {InputError} “absent” with near codes; “value” with the reason when its row cannot be used
 */
export function patternNamed({ patterns, problems }: PatternTable, code: string): Pattern {
  const found = patterns.find((each) => codeKey(each.code) === codeKey(code));
  if (found) return found;
  const refused = problems.find((problem) => problem.code !== "" && codeKey(problem.code) === codeKey(code));
  if (refused) throw new InputError(refused.message);
  const codes = patterns.map((each) => each.code);
  throw new InputError(`There is no pattern ${quote(code)}.${didYouMean(code, codes)}`, "absent");
}

/** The columns of a table of patterns. */
export interface PatternColumns {
  readonly code: TableColumn;
  readonly garmentClass: TableColumn;
  readonly title: TableColumn | undefined;
  readonly draftedFor: TableColumn | undefined;
  readonly stretch: TableColumn | undefined;
  readonly thickness: TableColumn | undefined;
  readonly wornOver: TableColumn | undefined;
  readonly opens: TableColumn | undefined;
  readonly openingLength: TableColumn | undefined;
  readonly neck: TableColumn | undefined;
  readonly cuff: TableColumn | undefined;
  readonly hem: TableColumn | undefined;
  readonly waist: TableColumn | undefined;
  readonly sleeve: TableColumn | undefined;
  readonly endsAt: TableColumn | undefined;
  readonly length: TableColumn | undefined;
  readonly finished: readonly { readonly measure: string; readonly column: TableColumn }[];
}

/**
 * The columns of a table of patterns, by their headings.
 *
 * @throws {InputError} when a needed heading is missing
 */
export function patternColumns(cells: Cells, options: TableOptions): PatternColumns {
  const columns = tableColumns(cells, options.unit);
  const needed = ["code", "garmentClass"];
  const named = Object.fromEntries(
    Object.entries(columnHeadings).map(([key, names]) => [
      key,
      needed.includes(key) ? neededColumn(columns, names, table) : columnNamed(columns, names),
    ]),
  ) as Omit<PatternColumns, "finished">;
  const taken = new Set(Object.values(named).map((column) => column?.position));
  const finished = columns.flatMap((column) => {
    const { name } = column.heading;
    // “Bust (to fit)” is of the body.
    const measure = /\bfit\b/iu.test(name) ? undefined : findMeasure(name.replace(/\bfinished\b/giu, " "));
    return measure && !taken.has(column.position) ? [{ measure: measure.id, column }] : [];
  });
  return { ...named, finished };
}

function readPattern(
  row: TableRow,
  columns: PatternColumns,
  chart: Chart,
  classes: readonly GarmentClass[],
): Pattern {
  const code = textAt(row, columns.code);
  if (code === "") {
    throw new InputError(`${placeIn(row, columns.code)}: the code is missing. Give the pattern a code.`);
  }
  const garmentClass = garmentClassNamed(
    textAt(row, columns.garmentClass),
    classes,
    placeIn(row, columns.garmentClass),
  );
  const closure = readClosure(row, columns.opens, columns.openingLength, garmentClass.wornOn);
  return {
    code,
    title: textAt(row, columns.title),
    garmentClass,
    draftedFor: figureAt(row, columns.draftedFor, chart),
    stretch: readStretch(row, columns.stretch),
    thicknessMm: lengthAt(row, columns.thickness, { mayBeZero: true, what: "a thickness" }) ?? 0,
    wornOver: listAt(row, columns.wornOver),
    ...closure,
    neckMm: openingAt(row, columns.neck),
    cuffMm: openingAt(row, columns.cuff),
    hemMm: openingAt(row, columns.hem),
    waistMm: openingAt(row, columns.waist),
    sleeve: sleeveOf(row, columns),
    endsAt: endAt(row, columns.endsAt),
    lengthMm: lengthAt(row, columns.length, { what: "a length" }),
    finished: finishedAt(row, columns),
  };
}

function finishedAt(row: TableRow, columns: PatternColumns): Map<string, number> {
  const finished = new Map<string, number>();
  for (const { measure, column } of columns.finished) {
    const mayBeZero = measure === "heelHeight";
    const mm = lengthAt(row, column, { mayBeZero, what: "a finished measure" });
    if (mm === undefined) continue;
    if (finished.has(measure)) {
      throw new InputError(
        `${placeIn(row, column)}: the measure has another column that is filled too. Keep one of them.`,
      );
    }
    finished.set(measure, mm);
  }
  return finished;
}

/** @throws {InputError} when it says that there is none, but gives its cuff */
function sleeveOf(row: TableRow, columns: PatternColumns): SleeveKind | undefined {
  const sleeve = sleeveAt(row, columns.sleeve);
  if (sleeve === "none" && openingAt(row, columns.cuff) !== undefined) {
    throw new InputError(
      `${placeIn(row, columns.sleeve)}: it says that there are no sleeves, but there is a cuff opening. Keep one of them.`,
    );
  }
  return sleeve;
}

function openingAt(row: TableRow, column: TableColumn | undefined): number | undefined {
  return lengthAt(row, column, { what: "an opening that anything can pass" });
}

function figureAt(row: TableRow, column: TableColumn | undefined, chart: Chart): number | undefined {
  const name = textAt(row, column);
  if (name === "") return undefined;
  try {
    return figureIndex(chart, name);
  } catch (error) {
    if (error instanceof InputError) throw new InputError(`${placeIn(row, column)}: ${error.message}`);
    throw error;
  }
}

/** Leaves out, with a problem each, the patterns whose under-layers are unknown, refused or circular. */
function withSoundLayers(
  read: readonly { readonly pattern: Pattern; readonly row: TableRow }[],
  columns: PatternColumns,
  problems: PatternProblem[],
): readonly Pattern[] {
  const byCode = new Map(read.map(({ pattern }) => [codeKey(pattern.code), pattern]));
  const refused = new Set(problems.map(({ code }) => codeKey(code)));
  return read.flatMap(({ pattern, row }) => {
    try {
      underLayers(pattern, (code) => byCode.get(codeKey(code)) ?? absent(code));
      return [pattern];
    } catch (error) {
      problems.push(problemOf(error, row, columns, columns.wornOver));
      return [];
    }
  });

  function absent(code: string): never {
    const codes = read.map(({ pattern }) => pattern.code);
    const why = refused.has(codeKey(code))
      ? "has a row that cannot be used. Mend that row first."
      : `is not the code of a pattern.${didYouMean(code, codes)}`;
    throw new InputError(`${quote(code)} ${why}`);
  }
}

function problemOf(
  error: unknown,
  row: TableRow,
  columns: PatternColumns,
  column?: TableColumn,
): PatternProblem {
  if (!(error instanceof InputError)) throw error;
  const cell = row.cells[columns.code.position];
  const where = column ? `${placeIn(row, column)}: ` : "";
  return {
    row: row.row,
    code: typeof cell === "string" || typeof cell === "number" ? String(cell).trim() : "",
    message: where + error.message,
  };
}

/** The form in which codes are compared. */
export const codeKey = figureKey;
