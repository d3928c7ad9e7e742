import { findMeasure } from "../../measures/dictionary.ts";
import type { DecimalMark } from "../../measures/decimal.ts";
import type { Measure } from "../../measures/measure.ts";
import type { LengthUnit } from "../../measures/units.ts";
import { toMm } from "../../measures/units.ts";
import type { Cell } from "../cell.ts";
import { cellText } from "../cell.ts";
import { bodyMeasure } from "../patternKeys.ts";
import type { ImportColumn } from "./columns.ts";
import type { CellReader, TargetColumn } from "./importPlan.ts";
import { lengthReader } from "./importPlan.ts";
import type { LaidOutSource } from "./source.ts";

/** What a pattern is to fit in one measure of the body; a range where the list has one. */
export interface BodyMeasure {
  readonly measure: Measure;
  readonly leastMm: number;
  readonly mostMm: number;
  /** The unit of the list. */
  readonly unit: LengthUnit;
}

const before =
  /^(?:(?:(?:to|will|should|designed to|meant to) )?fits?|(?:passend )?für|passt|for|(?:body|figure|doll)(?:’s|'s|s)?)(?: an?)? (.+)$/iu;
const behind = /^(.+?),? (?:to fit|(?:of the )?(?:body|figure|doll))$/iu;

/**
 * The measure of the body that a heading in a list of patterns names, without its unit: “To fit bust”, “fits hip”,
 * “for waist”, “Waist (body)”. Undefined for one that names a measure of the garment, or none. The words are common practice.
 */
export function bodyMeasureOf(heading: string): Measure | undefined {
  const words = heading
    .replace(/[()[\]:–-]/gu, " ")
    .replace(/\s+/gu, " ")
    .trim();
  // “Body length” and “figure height” are measures by themselves.
  if (findMeasure(words)) return undefined;
  const named = before.exec(words)?.[1] ?? behind.exec(words)?.[1];
  return named === undefined ? undefined : findMeasure(named);
}

const range = /^(.*?\d.*?)(?:\s*[-–—]\s*|\s+(?:to|bis)\s+)(\d.*)$/iu;
const unitBehind = /(?:mm|cm|in|inch|inches|["″”])\s*$/iu;

/** The two ends of “178–184 mm”, each with the unit that stands behind. */
export function rangeEnds(text: string): readonly [string, string] | undefined {
  const [, least = "", most = ""] = range.exec(text.trim()) ?? [];
  if (least === "" || most === "") return undefined;
  const unit = unitBehind.test(least) ? "" : (unitBehind.exec(most)?.[0] ?? "");
  return [`${least} ${unit}`.trim(), most];
}

/** Lengths and ranges in the unit of their target. */
export function bodyReader(
  target: TargetColumn,
  laidOut: LaidOutSource,
  decimalMark: DecimalMark | undefined,
): CellReader {
  const read = lengthReader(target, laidOut, decimalMark);
  return (cell, format, row) => {
    const whole = read(cell, format, row);
    const ends = whole.kind === "refused" ? rangeEnds(cellText(cell)) : undefined;
    if (!ends) return whole;
    const [least, most] = ends.map((end) => read(end, undefined, row));
    if (least?.kind !== "value" || most?.kind !== "value") return whole;
    return { kind: "value", value: `${cellText(least.value)}–${cellText(most.value)}`, as: "reading" };
  };
}

/**
 * What each pattern of a list is to fit.
 *
 * @returns of a row of the source; empty where its cells say nothing that can be read
 */
export function bodyMeasures(
  laidOut: LaidOutSource,
  columns: readonly ImportColumn[],
  decimalMark: DecimalMark | undefined,
): (row: number) => readonly BodyMeasure[] {
  const read = columns.flatMap((from) => {
    if (from.role === "left out" || from.key === undefined || bodyMeasure(from.key) === undefined) return [];
    const { measure, unit } = from;
    if (!measure) return [];
    const target: TargetColumn = {
      ...{ from, unit, position: undefined, heading: from.name },
      holds: "readings",
    };
    return [{ from, measure, unit, reader: bodyReader(target, laidOut, decimalMark) }];
  });
  return (row) =>
    read.flatMap(({ from, measure, unit, reader }): readonly BodyMeasure[] => {
      const cell = laidOut.source.rows[row]?.[from.position];
      const said = reader(cell, laidOut.source.formats?.[row]?.[from.position], row);
      if (said.kind !== "value") return [];
      const [least, most = least] = lengthsIn(said.value);
      if (least === undefined || most === undefined) return [];
      return [{ measure, unit, leastMm: toMm(least, unit), mostMm: toMm(most, unit) }];
    });
}

/** The number, or the two, of a cell that was read; “~152” and “152 (list)” keep what they say beside it. */
function lengthsIn(value: Cell): readonly number[] {
  if (typeof value === "number") return [value];
  const numbers = cellText(value).match(/\d+(?:\.\d+)?/gu) ?? [];
  return numbers.slice(0, 2).map(Number);
}
