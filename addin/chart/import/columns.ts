import type { Cell } from "../cell.ts";
import { cellText, isBlank } from "../cell.ts";
import type { Chart } from "../chart.ts";
import { figureKey } from "../find.ts";
import type { PatternKey } from "../patternKeys.ts";
import { readChart } from "../readChart.ts";
import { readHeading } from "../../measures/heading.ts";
import { headingKey } from "../../measures/headingKey.ts";
import { InputError } from "../../measures/inputError.ts";
import type { Measure } from "../../measures/measure.ts";
import { cutShort } from "../../measures/quote.ts";
import type { Written } from "../../measures/parseReading.ts";
import type { LengthUnit } from "../../measures/units.ts";
import type { DecimalMark } from "../../measures/decimal.ts";
import type { UnitOrigin } from "./guessUnits.ts";
import { guessUnits, isUnitOpen } from "./guessUnits.ts";
import type { LaidOutSource } from "./source.ts";

/** What a list holds, a row each. */
export type ImportKind = "figures" | "patterns";

/** What a column of the file is taken for. `"own"` is a measure that the dictionary does not know. */
export type ColumnRole = "figure" | "measure" | "own" | "text" | "left out";

/** One column of the file, matched. */
export interface ImportColumn {
  /** Column in the file, from 0. */
  readonly position: number;
  /** As the file has it. */
  readonly heading: string;
  readonly role: ColumnRole;
  /** For role `"measure"`. */
  readonly measure?: Measure;
  /** In a list of patterns: what of the table of patterns it holds. */
  readonly key?: PatternKey;
  /** Heading for the chart, without the unit. */
  readonly name: string;
  /** The unit of readings that name none. */
  readonly unit: LengthUnit;
  readonly unitFrom: UnitOrigin;
  /** The first reading or text of the column. */
  readonly example: string;
  /** True when a column before it means the same; its name then says which one it is. */
  readonly repeated: boolean;
  /** A unit in the heading that a chart column cannot be in, such as `ft`. */
  readonly foreignUnit?: string;
}

/** What the user decided about a column; what is left out stays as detected. */
export interface ColumnChoice {
  readonly role?: Exclude<ColumnRole, "figure">;
  /** With role `"measure"`. */
  readonly measure?: Measure;
  /** In a list of patterns. */
  readonly key?: PatternKey | undefined;
  readonly unit?: LengthUnit;
}

/** Rows looked at to tell what a column holds, and in which unit. */
export const sampled = 200;
const sampledForUnits = 5000;

const figureHeadings = new Set([
  "figure",
  "figures",
  "name",
  "figure name",
  "doll",
  "mannequin",
  "model",
  "body",
  "figur",
  "puppe",
  "modell",
]);

/**
 * Matches the columns of a file to measures: by heading; a heading that is no known measure becomes a measure of
 * its own when its cells are lengths, else text. The figure names are in the column headed so, else in
 * the first column of text, else in the first column.
 *
 * @param options.chart the present chart: its readings tell the unit where the file does not
 * @param options.choices what the user decided, by column of the file
 */
export function matchColumns(
  laidOut: LaidOutSource,
  options: {
    readonly decimalMark: DecimalMark | undefined;
    readonly chart?: Chart | undefined;
    readonly choices?: ReadonlyMap<number, ColumnChoice>;
    /** Column of the file that holds the figure names, where the user has said so. */
    readonly figureColumn?: number | undefined;
    /** The unit of columns that give no sign of theirs, where the user has said so. */
    readonly assumedUnit?: LengthUnit | undefined;
  },
): readonly ImportColumn[] {
  const samples = laidOut.headings.map((_, position) => sample(laidOut, position, sampled));
  const readText = (text: string): Written => laidOut.source.texts(text, options.decimalMark);
  const detected = detectRoles(laidOut.headings, samples, readText);
  const figure = options.figureColumn ?? figurePosition(detected);
  // An empty column beside the chart has neither a heading nor anything below it.
  const isEmpty = (position: number): boolean =>
    laidOut.unheaded.includes(position) && laidOut.source.rows.every((row) => isBlank(row[position]));
  const chosen = detected.map((column, position) =>
    position === figure
      ? withRole(column, "figure")
      : choose(isEmpty(position) ? withRole(column, "left out") : column, options.choices?.get(position)),
  );
  return withUnits(laidOut, nameApart(chosen), samples, { ...options, readText });
}

/** The columns with their units and the first that each holds. */
export function withUnits(
  laidOut: LaidOutSource,
  columns: readonly (Detected & { readonly repeated: boolean })[],
  samples: readonly (readonly Cell[])[],
  options: {
    readonly readText: (text: string) => Written;
    readonly chart?: Chart | undefined;
    readonly choices?: ReadonlyMap<number, ColumnChoice>;
    readonly assumedUnit?: LengthUnit | undefined;
  },
): readonly ImportColumn[] {
  const units = guessUnits(
    columns.map((column, position) => ({ ...column, cells: sample(laidOut, position, sampledForUnits) })),
    options.readText,
    options.chart,
  );
  return columns.map((column, position) => {
    const guess = units[position] ?? { unit: "mm" as const, unitFrom: "assumed" as const };
    const assumed = isUnitOpen(guess) ? options.assumedUnit : undefined;
    const chosen = options.choices?.get(position)?.unit ?? assumed;
    return {
      ...column,
      unit: chosen ?? guess.unit,
      unitFrom: chosen ? ("you" as const) : guess.unitFrom,
      example: cellText(samples[position]?.[0]),
    };
  });
}

/** A column before its unit is known. */
export interface Detected {
  readonly position: number;
  readonly heading: string;
  readonly role: ColumnRole;
  readonly measure?: Measure;
  readonly key?: PatternKey;
  readonly name: string;
  readonly statedUnit?: LengthUnit;
  readonly foreignUnit?: string;
}

/**
 * What each column holds, as the chart’s own reader sees it. A heading in a unit that a chart column cannot be in makes
 * the column text.
 */
function detectRoles(
  headings: readonly string[],
  samples: readonly (readonly Cell[])[],
  readText: (text: string) => Written,
): readonly Detected[] {
  const lengths = positionsOfLengths(headings, samples, readText);
  return headings.map((heading, position): Detected => {
    const { unit, unitStated, foreignUnit, measure } = readHeading(heading, "mm");
    const column = {
      position,
      heading,
      role: "text",
      name: heading,
      ...(unitStated ? { statedUnit: unit } : {}),
      ...(foreignUnit === undefined ? {} : { foreignUnit }),
    } as const;
    if (!lengths.has(position)) return column;
    return measure ? withRole(column, "measure", measure) : withRole(column, "own");
  });
}

/** Columns that the chart’s reader takes for measures, tried on the sample under names made up for the purpose. */
function positionsOfLengths(
  headings: readonly string[],
  samples: readonly (readonly Cell[])[],
  readText: (text: string) => Written,
): ReadonlySet<number> {
  const height = samples.reduce((most, cells) => Math.max(most, cells.length), 1);
  const rows = Array.from({ length: height }, (_, i) => [String(i + 1), ...samples.map((cells) => cells[i])]);
  try {
    const chart = readChart([["Figure", ...headings], ...rows], { readText });
    return new Set(chart.measures.map((column) => column.position - 1));
  } catch (error) {
    if (error instanceof InputError) return new Set();
    throw error;
  }
}

function figurePosition(columns: readonly Detected[]): number {
  const headed = columns.findIndex((c) => c.role !== "measure" && figureHeadings.has(figureKey(c.name)));
  return headed >= 0
    ? headed
    : Math.max(
        0,
        columns.findIndex((c) => c.role === "text"),
      );
}

function choose(column: Detected, choice: ColumnChoice | undefined): Detected {
  return choice?.role === undefined ? column : withRole(column, choice.role, choice.measure);
}

/** The column taken for something else; its name follows. */
function withRole(column: Detected, role: ColumnRole, measure?: Measure): Detected {
  const { position, heading, statedUnit, foreignUnit } = column;
  return {
    position,
    heading,
    role,
    name: nameFor(heading, role, measure),
    ...(statedUnit ? { statedUnit } : {}),
    ...(foreignUnit === undefined ? {} : { foreignUnit }),
    ...(role === "measure" && measure ? { measure } : {}),
  };
}

/** A measure of the dictionary goes by its name there, with the side of the body that the heading states. */
function nameFor(heading: string, role: ColumnRole, measure: Measure | undefined): string {
  if (role === "figure") return "Figure";
  if (role === "text" || role === "left out") return heading;
  const { name, side } = readHeading(heading, "mm");
  if (!measure) return name || heading;
  if (!side) return measure.name;
  return `${side === "left" ? "Left" : "Right"} ${measure.name.toLowerCase()}`;
}

/** A second column of one measure keeps its readings under a heading of its own. */
export function nameApart(
  columns: readonly Detected[],
): readonly (Detected & { readonly repeated: boolean })[] {
  const counts = new Map<string, number>();
  return columns.map((column) => {
    if (column.role === "figure" || column.role === "left out") return { ...column, repeated: false };
    const key = headingKey(column.name);
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    if (count === 1) return { ...column, repeated: false };
    const role = column.role === "measure" ? "own" : column.role;
    return { ...withRole(column, role), name: `${column.name}, ${ordinal(count)} column`, repeated: true };
  });
}

function ordinal(count: number): string {
  return ["", "first", "second", "third", "fourth", "fifth"][count] ?? `${String(count)}th`;
}

/** The first cells of a column that hold something. */
export function sample(
  { source, firstRow }: LaidOutSource,
  position: number,
  count: number,
): readonly Cell[] {
  return source.rows
    .slice(firstRow, firstRow + count)
    .map((row) => row[position])
    .filter((cell) => !isBlank(cell));
}

/**
 * What to say of a list of figures whose headings are mostly no known measures, since they are in another language, say;
 * `undefined` where most are known.
 */
export function unknownHeadings(columns: readonly ImportColumn[]): string | undefined {
  const own = columns.filter(({ role }) => role === "own");
  const known = columns.filter(({ role }) => role === "measure");
  if (own.length <= known.length) return undefined;
  const [first, ...others] = own.map(({ heading }) => `“${cutShort(heading)}”`);
  const names =
    others.length > 1
      ? `${first ?? ""} and ${String(others.length)} others`
      : [first, ...others].join(" and ");
  return (
    `Measure Book does not know ${names}. It reads headings in English and German. Choose below which measure each one is: ` +
    "what stays a measure of its own is kept, but nothing is judged by it."
  );
}
