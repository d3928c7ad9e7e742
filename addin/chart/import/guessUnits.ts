import type { Cell } from "../cell.ts";
import { cellText } from "../cell.ts";
import type { Chart } from "../chart.ts";
import type { Measure } from "../../measures/measure.ts";
import type { Written } from "../../measures/parseReading.ts";
import { lengthIn, unitNamed } from "../../measures/parseReading.ts";
import type { LengthUnit } from "../../measures/units.ts";
import { lengthUnits, mmPerUnit } from "../../measures/units.ts";
import { findColumn } from "./findColumn.ts";

/** What the unit of a column rests on. */
export type UnitOrigin = "heading" | "readings" | "chart" | "guess" | "you";

export interface GuessedUnit {
  readonly unit: LengthUnit;
  readonly unitFrom: UnitOrigin;
}

interface Column {
  readonly role: string;
  readonly name: string;
  readonly measure?: Measure;
  readonly statedUnit?: LengthUnit;
  readonly cells: readonly Cell[];
}

/**
 * The unit of each column, from the strongest sign there is: its heading; marks in its own readings (`5 3/8"`);
 * the present chart, when it has the measure (the unit that brings the readings nearest to it); the other columns of the
 * file, when they agree; else the size of the numbers, which is only a guess.
 */
export function guessUnits(
  columns: readonly Column[],
  readText: (text: string) => Written,
  chart: Chart | undefined,
): readonly GuessedUnit[] {
  const first = columns.map((column): GuessedUnit | undefined => {
    if (column.statedUnit) return { unit: column.statedUnit, unitFrom: "heading" };
    if (column.role !== "measure" && column.role !== "own") return undefined;
    const marked = unitOfReadings(column.cells, readText);
    if (marked) return { unit: marked, unitFrom: "readings" };
    const near = unitNearChart(column, readText, chart);
    return near && { unit: near, unitFrom: "chart" };
  });
  const others = new Set(first.flatMap((guess) => (guess ? [guess.unit] : [])));
  const [agreed] = others.size === 1 ? others : [];
  const undecided = columns.filter((c, i) => !first[i] && (c.role === "measure" || c.role === "own"));
  const unit = agreed ?? unitBySize(undecided.flatMap((c) => numbers(c.cells, readText)));
  return first.map((guess) => guess ?? { unit, unitFrom: "guess" });
}

/** The unit that most readings of a column carry themselves; a fraction without a mark is in inches. */
function unitOfReadings(cells: readonly Cell[], readText: (text: string) => Written): LengthUnit | undefined {
  const carried = cells.map((cell) => {
    const text = cellText(cell);
    const written = readText(text);
    if (lengthIn(written, "mm").kind !== "length") return undefined;
    return unitNamed(written) ?? (/[\u00bc-\u00be\u2150-\u215e/\u2044]/.test(text) ? "in" : undefined);
  });
  return lengthUnits.find((unit) => {
    const carrying = carried.filter((each) => each === unit).length;
    return carrying > 0 && carrying >= cells.length / 3;
  });
}

function unitNearChart(
  column: Column,
  readText: (text: string) => Written,
  chart: Chart | undefined,
): LengthUnit | undefined {
  const present = chart && findColumn(chart, column);
  const usual = median([...(present?.mm ?? [])].filter((mm) => !Number.isNaN(mm)));
  const read = median(numbers(column.cells, readText));
  if (usual === undefined || read === undefined || usual <= 0 || read <= 0) return undefined;
  const apart = (unit: LengthUnit): number => Math.abs(Math.log((read * mmPerUnit[unit]) / usual));
  return lengthUnits.reduce((best, next) => (apart(next) < apart(best) ? next : best));
}

/**
 * Common practice, not a rule: tape readings of small figures in whole and half millimetres run to two and three
 * digits; numbers that all lie on sixteenths, with quarters or eighths among them, are inches; small numbers else are
 * centimetres.
 */
function unitBySize(values: readonly number[]): LengthUnit {
  const middle = median(values);
  if (middle === undefined || middle >= 50) return "mm";
  const sixteenths = values.every((v) => Math.abs(v * 16 - Math.round(v * 16)) < 1e-9);
  const quarters = values.some((v) => v * 2 !== Math.round(v * 2));
  return sixteenths && quarters ? "in" : "cm";
}

function numbers(cells: readonly Cell[], readText: (text: string) => Written): number[] {
  return cells.flatMap((cell) => {
    if (typeof cell === "number") return [cell];
    const reading = lengthIn(readText(cellText(cell)), "mm");
    return reading.kind === "length" ? [reading.mm] : [];
  });
}

function median(values: readonly number[]): number | undefined {
  return values.toSorted((a, b) => a - b)[values.length >> 1];
}
