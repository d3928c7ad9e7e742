import { findMeasure, measureById } from "../../measures/dictionary.ts";
import type { DecimalMark } from "../../measures/decimal.ts";
import { readHeading } from "../../measures/heading.ts";
import { headingKey } from "../../measures/headingKey.ts";
import { lengthIn } from "../../measures/parseReading.ts";
import type { LengthUnit } from "../../measures/units.ts";
import type { Cell } from "../cell.ts";
import { cellText } from "../cell.ts";
import type { Chart } from "../chart.ts";
import type { GarmentClass } from "../garmentClass.ts";
import type { PatternKey } from "../patternKeys.ts";
import { bodyMeasure, finishedMeasure, holdsLengths, keyName } from "../patternKeys.ts";
import { columnHeadings } from "../readPatterns.ts";
import { figureKey } from "../find.ts";
import { unitOfFraction } from "../unitsOfColumns.ts";
import { bodyMeasureOf, rangeEnds } from "./bodyMeasures.ts";
import type { ColumnChoice, Detected, ImportColumn, ImportKind } from "./columns.ts";
import { nameApart, sample, sampled, withUnits } from "./columns.ts";
import { classByWords } from "./patternWords.ts";
import type { LaidOutSource } from "./source.ts";

type ColumnKey = keyof typeof columnHeadings;

/** Further headings in lists of patterns, beside those that the table itself may have. */
const everydayHeadings: Readonly<Partial<Record<ColumnKey, readonly string[]>>> = {
  code: [
    "pattern no",
    "pattern number",
    "no",
    "nr",
    "number",
    "sku",
    "ref",
    "reference",
    "id",
    "item",
    "style",
  ],
  title: ["description", "called", "pattern title"],
  garmentClass: [
    "garment type",
    "type of garment",
    "kind of garment",
    "type",
    "kind",
    "what",
    "category",
    "what is it",
  ],
  draftedFor: [
    "for",
    "figure",
    "doll",
    "mannequin",
    "model",
    "fits",
    "designed for",
    "sized for",
    "for figure",
    "base figure",
  ],
  stretch: ["stretchiness", "stretch percent", "percent stretch"],
  wornOver: ["over", "goes over", "layered over"],
  opens: ["closes", "fastening", "fastens", "fasteners", "opening", "closing", "closed with", "zip"],
  openingLength: ["zip length", "length of opening", "fastening length", "opening len"],
  neck: ["neck hole", "neckline", "neck edge"],
  cuff: ["cuff", "cuffs", "wrist opening"],
  hem: ["ankle opening"],
  waist: ["elastic", "waist edge", "waist elastic"],
  sleeve: ["sleeve", "sleeve type", "sleeve style"],
  endsAt: ["hemline", "ends where", "reaches to", "hem at"],
  length: ["total length", "overall length", "garment length"],
};

/** Headings that a chart of figures has too, so that they do not make a list of patterns. */
const inChartsToo = new Set<ColumnKey>(["code", "title", "draftedFor", "length", "sleeve", "cuff", "waist"]);

const keyOfHeading: ReadonlyMap<string, ColumnKey> = new Map(
  (Object.keys(columnHeadings) as ColumnKey[])
    .flatMap((key) =>
      [...columnHeadings[key], ...(everydayHeadings[key] ?? [])].map(
        (name) => [headingKey(name), key] as const,
      ),
    )
    .reverse(),
);

/**
 * What a list holds. Patterns have headings of their own, or a column that says what garment each is; where the two
 * do not agree, it is not sure.
 */
export function kindOf(
  laidOut: LaidOutSource,
  classes: readonly GarmentClass[],
): { readonly kind: ImportKind; readonly isSure: boolean } {
  const keys = laidOut.headings.map((heading) => keyOfHeading.get(headingKey(nameOf(heading))));
  const own = new Set(keys.filter((key) => key !== undefined && !inChartsToo.has(key)));
  const tells = (position: number): boolean => {
    const cells = sample(laidOut, position, sampled);
    return mostly(cells, (cell) => classByWords(cellText(cell), classes) !== undefined);
  };
  // A chart has columns such as Hair, whose “wig” is a garment to others.
  const isTold = laidOut.headings.some(
    (_, at) => (keys[at] === "garmentClass" || keys[at] === "title" || own.size > 1) && tells(at),
  );
  // No chart says whom its figures are to fit.
  const fits = laidOut.headings.some(
    (heading) => /\bfits?\b/iu.test(heading) && bodyMeasureOf(nameOf(heading)) !== undefined,
  );
  const signs = own.size + (isTold ? 2 : 0) + (fits ? 2 : 0);
  return { kind: signs >= 2 ? "patterns" : "figures", isSure: signs === 0 || signs > 2 };
}

/**
 * Matches the columns of a list of patterns to those of the table: by heading; a column without a known one by its cells,
 * when these name garments or figures; else it is kept as text. A list that has a name and no code goes by the name.
 *
 * @param options.chart of the figures: its readings tell the unit where the list does not
 */
export function matchPatternColumns(
  laidOut: LaidOutSource,
  options: {
    readonly decimalMark: DecimalMark | undefined;
    readonly classes: readonly GarmentClass[];
    readonly chart: Chart;
    readonly choices?: ReadonlyMap<number, ColumnChoice>;
    readonly nameColumn?: number | undefined;
    readonly assumedUnit?: LengthUnit | undefined;
  },
): readonly ImportColumn[] {
  const { classes, chart, choices, decimalMark } = options;
  const samples = laidOut.headings.map((_, position) => sample(laidOut, position, sampled));
  const isLength = (cell: Cell): boolean =>
    typeof cell === "number" ||
    lengthIn(laidOut.source.texts(cellText(cell), decimalMark), {
      unit: "mm",
      fractionUnit: unitOfFraction,
      isDecimal: true,
    }).kind === "length";
  const isLengthOrRange = (cell: Cell): boolean =>
    isLength(cell) || rangeEnds(cellText(cell))?.every(isLength) === true;
  const keys = laidOut.headings.map((heading, at): PatternKey | undefined => {
    const body = bodyMeasureOf(nameOf(heading));
    if (body && mostly(samples[at] ?? [], isLengthOrRange)) return `body ${body.id}`;
    return keyFor(nameOf(heading), mostly(samples[at] ?? [], isLength));
  });
  const findBy = (key: ColumnKey, tells: (text: string) => boolean): void => {
    if (keys.includes(key)) return;
    const at = keys.findIndex(
      (each, position) =>
        each === undefined && mostly(samples[position] ?? [], (cell) => tells(cellText(cell))),
    );
    if (at >= 0) keys[at] = key;
  };
  const figures = new Set(chart.figures.map(figureKey));
  findBy("draftedFor", (text) => figures.has(figureKey(text)));
  const name = options.nameColumn ?? namePosition(keys);
  if (keys[name] !== "garmentClass") keys[name] = "code";
  findBy("garmentClass", (text) => classByWords(text, classes) !== undefined);

  const chosen = laidOut.headings.map((heading, position): Detected => {
    const choice = choices?.get(position);
    const key = choice?.role === undefined ? keys[position] : choice.key;
    if (position === name) return columnAs(position, heading, "code", "figure");
    if (choice?.role === "left out") return columnAs(position, heading, undefined, "left out");
    // Each column of the table has one of the list.
    const isTaken = key !== undefined && choice === undefined && keys.indexOf(key) < position;
    return columnAs(position, heading, key === "code" || isTaken ? undefined : key);
  });
  return withUnits(laidOut, nameApart(chosen), samples, {
    ...options,
    chart: ofNamed(chart, samples[keys.indexOf("draftedFor")] ?? []),
    readText: (text) => laidOut.source.texts(text, decimalMark),
  });
}

/** The chart of the figures that a list names, in which its lengths are most alike; else the whole. */
function ofNamed(chart: Chart, names: readonly Cell[]): Chart {
  const places = new Map(chart.figures.map((figure, i) => [figureKey(figure), i]));
  const named = names.flatMap((cell) => places.get(figureKey(cellText(cell))) ?? []);
  if (named.length === 0) return chart;
  return {
    ...chart,
    measures: chart.measures.map((column) => ({
      ...column,
      mm: Float64Array.from(named, (i) => column.mm[i] ?? Number.NaN),
    })),
  };
}

function keyFor(heading: string, areLengths: boolean): PatternKey | undefined {
  const named = keyOfHeading.get(headingKey(heading));
  const measure = /\bopening\b/iu.test(heading)
    ? undefined
    : findMeasure(heading.replace(/\bfinished\b/giu, " "));
  const finished = measure && (`finished ${measure.id}` as const);
  if (named === undefined) return areLengths ? finished : undefined;
  if (named === "sleeve" && areLengths) return finished;
  if (named === "opens" && areLengths) return "openingLength";
  // “Knee”, “midi”
  if (named === "length" && !areLengths) return "endsAt";
  return holdsLengths(named) && !areLengths ? undefined : named;
}

function namePosition(keys: (PatternKey | undefined)[]): number {
  const [code, title] = [keys.indexOf("code"), keys.indexOf("title")];
  if (code >= 0) return code;
  if (title >= 0) return title;
  return Math.max(0, keys.indexOf(undefined));
}

function columnAs(
  position: number,
  heading: string,
  key: PatternKey | undefined,
  role: ImportColumn["role"] = roleOf(key),
): Detected {
  const { unit, unitStated, foreignUnit } = readHeading(heading, "mm");
  const id = key === undefined ? undefined : (finishedMeasure(key) ?? bodyMeasure(key));
  const measure = id === undefined ? undefined : measureById(id);
  return {
    ...{ position, heading, role },
    name: key === undefined ? heading : keyName(key),
    ...(key !== undefined && { key }),
    ...(measure && { measure }),
    ...(unitStated && { statedUnit: unit }),
    ...(foreignUnit !== undefined && { foreignUnit }),
  };
}

function roleOf(key: PatternKey | undefined): ImportColumn["role"] {
  if (key === undefined || !holdsLengths(key)) return "text";
  return (finishedMeasure(key) ?? bodyMeasure(key)) === undefined ? "own" : "measure";
}

/** A heading without its unit and without a percent sign. */
function nameOf(heading: string): string {
  return readHeading(heading, "mm")
    .name.replace(/[%％()]/gu, " ")
    .trim();
}

function mostly(cells: readonly Cell[], holds: (cell: Cell) => boolean): boolean {
  return cells.length > 0 && cells.filter(holds).length * 2 > cells.length;
}
