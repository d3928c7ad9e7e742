import type { Chart } from "../chart/chart.ts";
import type { GarmentTolerances, ToleranceTable } from "../chart/tolerances.ts";
import { apart, isWithin } from "./pair.ts";
import type { ComparedColumn, ZoneChoice } from "./columns.ts";
import { columnsNamed, columnsOfZone } from "./columns.ts";
import { compareNames } from "./nameOrder.ts";
import type { Difference } from "./differenceWords.ts";
import { differenceWords, isBeyond, toleranceWords } from "./differenceWords.ts";

/** Whether two figures can share what is worn on one part of the body, or one class of garments. */
export interface Share {
  /** A part of the body, or the garment class as the tolerances name it. */
  readonly what: string;
  /** `no` as soon as one measure is beyond its tolerance, whatever else is missing. */
  readonly answer: "yes" | "no" | "not known";
  /** Why, or which readings to take, in words. */
  readonly why: string;
  /** The worst difference among the measures that could be compared, in tolerances; NaN when none could. */
  readonly ofTolerance: number;
}

const parts: readonly (readonly [string, ZoneChoice])[] = [
  ["Body", "body"],
  ["Torso", "torso"],
  ["Arms", "arms"],
  ["Legs", "legs"],
  ["Head", "head"],
  ["Hands", "hands"],
  ["Feet", "feet"],
];

/** Reasons beyond these are counted only. */
const mostReasons = 3;

/**
 * What two figures can share: the body and each part of it, then each class of garments that has tolerances of its own. A
 * part without measures in the chart is not known.
 *
 * @param i where one figure stands in the chart, from 0
 * @param j where the other stands; it is the one that is larger or smaller in the words
 * @param options.tolerances for the parts of the body; the usual ones stand in
 */
export function shares(
  chart: Chart,
  i: number,
  j: number,
  options: {
    readonly tolerances?: ToleranceTable | undefined;
    readonly garments?: readonly GarmentTolerances[] | undefined;
  } = {},
): readonly Share[] {
  const { tolerances, garments = [] } = options;
  return [
    ...parts.map(([what, zone]) => shareOf(what, columnsOfZone(chart, zone, tolerances), chart, i, j)),
    ...garments.map((each) => shareOf(each.garment, columnsNamed(chart, each.tolerances), chart, i, j)),
  ];
}

/**
 * What one figure shares with all others as a table, headings first: those that share only some clothes, most classes first, then
 * those that share the body, then those of which neither is known. Equals by name.
 */
export function sharesOfAll(
  chart: Chart,
  i: number,
  { tolerances, garments = [] }: Parameters<typeof shares>[3] = {},
): readonly (readonly string[])[] {
  const of = [
    columnsOfZone(chart, "body", tolerances),
    ...garments.map((each) => columnsNamed(chart, each.tolerances)),
  ];
  const rows = [...chart.figures.keys()]
    .filter((j) => j !== i)
    .map((j) => {
      const [body, ...classes] = of.map((columns) => shortly(columns, chart, i, j));
      const count = classes.filter((answer) => answer === "yes").length;
      return { j, count, kind: body === "yes" ? 1 : count > 0 ? 0 : 2, says: [body!, ...classes] };
    })
    .sort((a, b) => a.kind - b.kind || b.count - a.count || compareNames(chart, a.j, b.j));
  const kinds = ["only some clothes", "the body", "nothing known"];
  return [
    ["Figure", "Shares", "Body", ...garments.map(({ garment }) => garment)],
    ...rows.map(({ j, kind, says }) => [nameOf(chart, j), kinds[kind]!, ...says]),
  ];
}

/** “no: Waist 5 mm larger” */
function shortly(columns: readonly ComparedColumn[], chart: Chart, i: number, j: number): string {
  const { answer } = shareOf("", columns, chart, i, j);
  return answer === "no" ? `no: ${differenceWords(differencesOf(columns, i, j)[0]!)}` : answer;
}

function shareOf(
  what: string,
  columns: readonly ComparedColumn[],
  chart: Chart,
  i: number,
  j: number,
): Share {
  const differences = differencesOf(columns, i, j);
  const ofTolerance = differences[0]?.ofTolerance ?? Number.NaN;
  const beyond = differences.filter(isBeyond);
  if (beyond.length > 0) {
    const named = beyond.slice(0, mostReasons).map(differenceWords).join(", ");
    const others = beyond.length - mostReasons;
    const why = `On ${nameOf(chart, j)}: ${named}${others > 0 ? `, and ${String(others)} more` : ""}.`;
    return { what, answer: "no", why, ofTolerance };
  }
  if (isWithin(apart(columns, i, j).distance, 1)) {
    return { what, answer: "yes", why: closestWords(differences[0]), ofTolerance };
  }
  return { what, answer: "not known", why: missingWords(columns, chart, i, j), ofTolerance };
}

/** The measures that both figures have, worst difference first, equal ones in the order of the chart. */
function differencesOf(columns: readonly ComparedColumn[], i: number, j: number): readonly Difference[] {
  return columns
    .map((compared) => ({ compared, found: apart([{ ...compared, required: false }], i, j) }))
    .filter(({ found }) => found.compared > 0)
    .map(({ compared, found }) => ({
      column: compared.column,
      ofTolerance: found.distance,
      deltaMm: found.deltaMm ?? 0,
    }))
    .sort((a, b) => b.ofTolerance - a.ofTolerance);
}

function closestWords(worst: Difference | undefined): string {
  if (!worst || worst.deltaMm === 0) return "No difference.";
  return `Differs most: ${differenceWords(worst)}, of ${toleranceWords(worst)} allowed.`;
}

/** Which readings to take of which figure. */
function missingWords(columns: readonly ComparedColumn[], chart: Chart, i: number, j: number): string {
  if (columns.length === 0) return "The chart has no measure for it.";
  const figures = i === j ? [i] : [i, j];
  const toTake = figures.flatMap((figure) => {
    const headings = columns
      .filter(({ column }) => Number.isNaN(column.mm[figure] ?? Number.NaN))
      .map(({ column }) => column.heading);
    return headings.length > 0 ? [`${headings.join(", ")} of ${nameOf(chart, figure)}`] : [];
  });
  return `Measure ${toTake.join("; ")}.`;
}

function nameOf(chart: Chart, figure: number): string {
  return chart.figures[figure] ?? "";
}
