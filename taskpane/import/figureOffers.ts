import type { Chart } from "../../addin/chart/chart.ts";
import { figureKey } from "../../addin/chart/find.ts";
import type { BodyMeasure } from "../../addin/chart/import/bodyMeasures.ts";
import type { FigureOffer, FigureOffers } from "../../addin/chart/import/patternPlan.ts";
import type { ChosenWords } from "../../addin/chart/import/patternWords.ts";
import { wordId } from "../../addin/chart/import/patternWords.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import type { FigureToFit } from "../../addin/similarity/figuresToFit.ts";
import { figuresToFit, nearWords, whoFits } from "../../addin/similarity/figuresToFit.ts";
import { count } from "../ui/words.ts";

/** Figures for which it is said how near they are; the others are only named. */
const told = 20;

/**
 * For whom the patterns of a list may be drafted, by the bodies that they are to fit: the one figure of the chart whose
 * readings are all within tolerance; where several or none are, the user is asked. What was chosen goes before.
 */
export function figureOffers(
  bodyOf: (row: number) => readonly BodyMeasure[],
  { chart, tolerances }: { readonly chart: Chart; readonly tolerances?: ToleranceTable | undefined },
  chosen: ChosenWords = new Map(),
): FigureOffers {
  const known = new Map<string, FigureOffer>();
  return (row) => {
    const body = bodyOf(row);
    if (body.length === 0 || chart.figures.length === 0) return undefined;
    const text = bodyWords(body);
    const before = known.get(text);
    if (before) return before;
    const offer = offerOf(text, figuresToFit(chart, body, tolerances), chart, chosen);
    known.set(text, offer);
    return offer;
  };
}

/**
 * What speaks against the figure that a pattern names, in a sentence; undefined where nothing does.
 *
 * @param body what the pattern is to fit
 */
export function figureRemark(
  { pattern, figure }: { readonly pattern: string; readonly figure: string },
  body: readonly BodyMeasure[],
  { chart, tolerances }: { readonly chart: Chart; readonly tolerances?: ToleranceTable | undefined },
): string | undefined {
  const near = figuresToFit(chart, body, tolerances);
  const named = near.find((each) => figureKey(chart.figures[each.figure] ?? "") === figureKey(figure));
  if (!named || whoFits([named]).possible.length > 0 || !named.worst) return undefined;
  return `“${pattern}” names ${figure}, and is to fit ${bodyWords(body)}: ${nearWords(named)}. It stays with ${figure}.`;
}

function offerOf(
  text: string,
  near: readonly FigureToFit[],
  { figures }: Chart,
  chosen: ChosenWords,
): FigureOffer {
  const { possible, only } = whoFits(near);
  const nameOf = ({ figure }: FigureToFit): string => figures[figure] ?? "";
  const value = chosen.get(wordId("draftedFor", text)) ?? (only && nameOf(only));
  const taken = near.find((each) => nameOf(each) === value);
  return {
    ...{ text, value, isAsked: !only },
    says: taken ? nearWords(taken) : value === "" ? "left empty" : `◆ ${whyAsked(possible, nameOf)}`,
    choices: near.map((each, i) => ({
      value: nameOf(each),
      ...(i < told && { says: nearWords(each) }),
    })),
  };
}

function whyAsked(possible: readonly FigureToFit[], nameOf: (near: FigureToFit) => string): string {
  const [first] = possible;
  if (!first) return "no figure is within tolerance";
  if (possible.length > 1) return `${count(possible.length, "figure")} can be it`;
  return `${nameOf(first)} may be it: ${nearWords(first)}`;
}

/** “bust 181 mm, waist 132–136 mm” */
function bodyWords(body: readonly BodyMeasure[]): string {
  return body
    .map(({ measure, leastMm, mostMm, unit }) => {
      const most = lengthWords(mostMm, unit);
      const length = leastMm === mostMm ? most : `${lengthWords(leastMm, unit)} to ${most}`;
      return `${measure.shortName.toLowerCase()} ${length}`;
    })
    .join(", ");
}
