import type { Difference } from "../../addin/similarity/differenceWords.ts";
import { comparativeOf, differenceWords } from "../../addin/similarity/differenceWords.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import { count } from "../ui/words.ts";

/**
 * A probability as people say it.
 *
 * @example
 * chanceWords(0.62); // "about 6 in 10"
 */
export function chanceWords(probability: number): string {
  if (Number.isNaN(probability)) return "not known";
  if (probability >= 0.995) return "as good as certain";
  if (probability > 0.95) return "very likely, more than 95 in 100";
  if (probability < 0.005) return "as good as impossible";
  if (probability < 0.05) return "very unlikely, fewer than 5 in 100";
  return `about ${String(Math.round(probability * 10))} in 10`;
}

/** What else a chance rests on, besides the error of reading. */
export const chartTeaches =
  "The chart counts too: where many figures have one body to within the error of reading, small differences are more probably errors.";

/**
 * A number of tolerances.
 *
 * @example
 * tolerancesWords(1); // "1 tolerance"
 */
export function tolerancesWords(times: number): string {
  return `${shownTimes(times)} ${times === 1 ? "tolerance" : "tolerances"}`;
}

/** At most two decimals. */
export function shownTimes(times: number): string {
  return String(Math.round(times * 100) / 100);
}

/** How many figures share a body at a cut: “7 groups of 2 or more figures; 5 figures are in none”. Those that cannot be compared are among the five. */
export function groupingWords(groupOf: Int32Array): string {
  const sizes = sizesOf(groupOf);
  const groups = sizes.filter((size) => size > 1).length;
  const alone = sizes.length - groups;
  if (groups === 0) return `No two of the ${count(groupOf.length, "figure")} share.`;
  return `${count(groups, "group")}, holding ${count(groupOf.length - alone, "figure")}; ${
    alone === 0 ? "no figure is left over" : `${count(alone, "figure")} ${alone === 1 ? "is" : "are"} in none`
  }.`;
}

/** With fewer measures than these, a body is hardly told from another one: girths and lengths of the torso, and the limbs. */
const fewestOfBody = 5;

/** What groups by few measures of the body leave open; `undefined` where enough were compared. */
export function fewComparedWords(headings: readonly string[]): string | undefined {
  if (headings.length >= fewestOfBody) return undefined;
  const them = headings.length === 1 ? "it" : "them";
  return `Only ${headings.length === 1 ? "one measure" : `${String(headings.length)} measures`} of the body could be compared: ${headings.join(", ")}. Figures that agree in ${them} may differ elsewhere.`;
}

/** Number of figures in each group, by number. */
export function sizesOf(groupOf: Int32Array): readonly number[] {
  const sizes: number[] = [];
  for (const group of groupOf) sizes[group - 1] = (sizes[group - 1] ?? 0) + 1;
  return sizes;
}

/** Names with commas between them; those beyond `most` are counted only. */
export function namesWords(names: readonly string[], most: number): string {
  const others = names.length - most;
  return `${names.slice(0, most).join(", ")}${others > 0 ? ` and ${others.toLocaleString("en-GB")} more` : ""}`;
}

/** The largest difference of figures that share: “Waist 1/16" larger”, or “Waist hardly larger” where no tape shows it. */
export function differMostWords(difference: Difference): string {
  const { column, deltaMm } = difference;
  return parseFloat(lengthWords(Math.abs(deltaMm), column.unit)) > 0
    ? differenceWords(difference)
    : `${column.heading} hardly ${comparativeOf(column, deltaMm)}`;
}
