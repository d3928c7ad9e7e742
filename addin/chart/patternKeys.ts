import { measureById } from "../measures/dictionary.ts";
import type { LengthUnit } from "../measures/units.ts";
import type { PatternColumns } from "./readPatterns.ts";
import { columnHeadings } from "./readPatterns.ts";
import type { TableColumn } from "./tableRows.ts";

/**
 * What a column of the table of patterns holds: one of its own, a finished measure by the dictionary’s id, or a measure of the
 * body that the pattern is to fit, which is kept and takes no part in verdicts.
 */
export type PatternKey = keyof typeof columnHeadings | `finished ${string}` | `body ${string}`;

const finishedPrefix = "finished ";
const bodyPrefix = "body ";

/** The columns that hold lengths, finished measures apart. */
const lengthKeys: readonly PatternKey[] = [
  "thickness",
  "openingLength",
  "neck",
  "cuff",
  "hem",
  "waist",
  "length",
];

/** The id of the measure, for a finished measure. */
export function finishedMeasure(key: PatternKey): string | undefined {
  return isFinished(key) ? key.slice(finishedPrefix.length) : undefined;
}

/** The id of the measure, for a measure of the body. */
export function bodyMeasure(key: PatternKey): string | undefined {
  return isBody(key) ? key.slice(bodyPrefix.length) : undefined;
}

export function holdsLengths(key: PatternKey): boolean {
  return isFinished(key) || isBody(key) || lengthKeys.includes(key);
}

/** The column of a table that holds it; a measure of the body has none that is read. */
export function columnFor(columns: PatternColumns, key: PatternKey): TableColumn | undefined {
  if (isBody(key)) return undefined;
  if (!isFinished(key)) return columns[key];
  const measure = finishedMeasure(key);
  return columns.finished.find((each) => each.measure === measure)?.column;
}

/** The usual heading, with the unit behind a length. */
export function usualHeading(key: PatternKey, unit: LengthUnit): string {
  return holdsLengths(key) ? `${keyName(key)} (${unit})` : keyName(key);
}

/** The usual heading without a unit: “Garment class”, “Finished under bust”, “To fit bust”. */
export function keyName(key: PatternKey): string {
  if (isBody(key)) return `To fit ${finishedName(key.slice(bodyPrefix.length))}`;
  return isFinished(key)
    ? `Finished ${finishedName(key.slice(finishedPrefix.length))}`
    : columnHeadings[key][0]!;
}

/** “bust”, “under bust” */
export function finishedName(measure: string): string {
  return (measureById(measure)?.shortName ?? measure).toLowerCase();
}

/** A stretch with its sign, so that nobody takes 25 for a share. */
export function stretchText(text: string): string {
  return /^[\d.,]+$/u.test(text) ? `${text}%` : text;
}

function isFinished(key: PatternKey): key is `finished ${string}` {
  return key.startsWith(finishedPrefix);
}

function isBody(key: PatternKey): key is `body ${string}` {
  return key.startsWith(bodyPrefix);
}
