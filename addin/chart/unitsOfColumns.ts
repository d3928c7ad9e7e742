import type { Measure } from "../measures/measure.ts";
import type { Written } from "../measures/parseReading.ts";
import { lengthIn, longestMm, readWritten } from "../measures/parseReading.ts";
import type { LengthUnit } from "../measures/units.ts";
import { lengthUnits, mmPerUnit } from "../measures/units.ts";
import { usualShareOfHeight } from "../measures/usualShareOfHeight.ts";
import type { Cell } from "./cell.ts";

/**
 * What the unit of a column rests on: its heading; its own readings, which carry it; the other columns, which agree; nothing but
 * what is usual; or nothing at all, for no unit that may be assumed makes a possible figure.
 */
export type UnitSource = "heading" | "readings" | "others" | "usual" | "nothing";

export interface ColumnUnit {
  /** With `"nothing"`: only the likeliest. */
  readonly unit: LengthUnit;
  readonly from: UnitSource;
}

/** A column whose unit is wanted. */
export interface ColumnOfUnit {
  /** The unit that the heading states. */
  readonly stated: LengthUnit | undefined;
  readonly measure: Measure | undefined;
  /** The cells below the heading. */
  readonly cells: readonly Cell[];
}

/** The fraction of an inch tape that names no unit is in inches where no heading states another. */
export const unitOfFraction: LengthUnit = "in";

/** So large a share of the readings has to carry a unit before the column is taken to be in it. */
const tellingShare = 1 / 3;
/** Heights of the figures that are sewn for, in mm, with room on both sides: 1:18, and the tallest people. */
const smallestFigure = 90;
const largestFigure = 2500;
/** A single column may lie so far beyond, for heads, hands and feet of figures have sizes of their own. */
const beyond = 1.5;

/**
 * The unit of every column of a chart, where its heading states none. The one place where this is decided: for the worksheet functions,
 * for Import, for Check and for the tables of patterns alike.
 *
 * - A text that names a unit is in it; a fraction that names none is in inches.
 * - Where a third of the readings of a column or more carry a unit in this way, the numbers beside them are in the same unit, unless
 *   the usual unit brings them nearer to the readings that carry one.
 * - All other columns are in one unit: that of the columns which state one, if these agree and are not fewer; else the usual one;
 *   else any that the chart shows elsewhere: the first that makes possible figures, {@link smallestFigure} to {@link largestFigure} tall.
 * - A column whose every reading would make an impossible figure in that unit is not known, and has to be asked about.
 *
 * @param readText reads texts; as tape readings in a worksheet where it is left out
 * @param usual the unit that nothing else has to be said about
 */
export function unitsOfColumns(
  columns: readonly ColumnOfUnit[],
  readText: (text: string) => Written = readWritten,
  usual: LengthUnit = "mm",
): readonly ColumnUnit[] {
  const contents = columns.map(({ stated, cells }) => (stated ? undefined : contentOf(cells, readText)));
  const told = columns.map(({ stated }, i): ColumnUnit | undefined => {
    if (stated) return { unit: stated, from: "heading" };
    const unit = carriedUnit(contents[i]!, usual);
    return unit && { unit, from: "readings" };
  });
  const open = columns.flatMap(({ measure }, i) => {
    const { plain } = contents[i] ?? { plain: [] };
    const share = measure && usualShareOfHeight[measure.id];
    return told[i] || share === undefined || plain.length === 0 ? [] : [{ i, share, plain }];
  });
  const voters = told.flatMap((unit, i) => (unit && columns[i]?.measure ? [unit.unit] : []));
  const agreed = new Set(voters).size === 1 ? voters[0] : undefined;
  const shown = contents.flatMap((content) => [...(content?.carried.keys() ?? [])]);
  const candidates = [
    ...(agreed && voters.length >= open.length ? [agreed] : []),
    usual,
    ...(agreed ? [agreed] : []),
    ...shown,
  ];
  const heights = open.map(({ share, plain }) => median(plain) / share);
  const height = median(heights);
  const isPossible = (unit: LengthUnit) =>
    heights.length === 0 || isBetween(height * mmPerUnit[unit], smallestFigure, largestFigure);
  const unit = candidates.find(isPossible);
  const unknown = (values: readonly number[], tall: number): ColumnUnit => ({
    unit: likeliest(values, tall),
    from: "nothing",
  });
  const others: ColumnUnit = unit
    ? { unit, from: unit === usual ? "usual" : "others" }
    : unknown(
        open.flatMap(({ plain }) => plain),
        height,
      );
  const [low, high] = [smallestFigure / beyond, largestFigure * beyond];
  const impossible = new Map(
    open.flatMap(({ i, share, plain }): readonly (readonly [number, ColumnUnit])[] =>
      plain.some((value) => isBetween((value * mmPerUnit[others.unit]) / share, low, high))
        ? []
        : [[i, unknown(plain, median(plain) / share)]],
    ),
  );
  return told.map((own, i) => own ?? impossible.get(i) ?? others);
}

/** What a column holds, apart from its heading. */
interface Content {
  /** Numbers without a unit, as written. */
  readonly plain: readonly number[];
  /** Readings in mm, by the unit that they carry. */
  readonly carried: ReadonlyMap<LengthUnit, readonly number[]>;
}

function contentOf(cells: readonly Cell[], readText: (text: string) => Written): Content {
  const plain: number[] = [];
  const carried = new Map<LengthUnit, number[]>();
  for (const cell of cells) {
    if (typeof cell === "number") {
      if (cell > 0 && cell <= longestMm) plain.push(cell);
      continue;
    }
    if (typeof cell !== "string") continue;
    // Digits that can be two numbers are decimals here: with thousands of millimetres the figure would be a giant.
    const reading = lengthIn(readText(cell), { unit: "none", fractionUnit: unitOfFraction, isDecimal: true });
    if (reading.kind !== "length" || reading.mm === 0) continue;
    if (reading.unitFrom === "assumed") plain.push(reading.mm);
    else carried.set(reading.unit, [...(carried.get(reading.unit) ?? []), reading.mm]);
  }
  return { plain, carried };
}

/** The unit that the readings of a column carry themselves, where enough of them do and the numbers beside them agree. */
function carriedUnit({ plain, carried }: Content, usual: LengthUnit): LengthUnit | undefined {
  const all = [...carried.values()].flat();
  if (all.length === 0 || all.length < tellingShare * (all.length + plain.length)) return undefined;
  const most = [...carried].reduce((a, b) => (b[1].length > a[1].length ? b : a))[0];
  if (plain.length === 0) return most;
  const apart = (unit: LengthUnit) => Math.abs(Math.log((median(plain) * mmPerUnit[unit]) / median(all)));
  return [most, ...carried.keys(), usual].reduce((best, next) => (apart(next) < apart(best) ? next : best));
}

/**
 * Common practice, not a rule: numbers that all lie on sixteenths, with quarters or eighths among them, are inches; others
 * are centimetres; the first that makes a possible figure.
 *
 * @param tall how tall the figure would be, in the unit that is wanted
 */
function likeliest(values: readonly number[], tall: number): LengthUnit {
  const sixteenths = values.every((v) => Math.abs(v * 16 - Math.round(v * 16)) < 1e-9);
  const quarters = values.some((v) => v * 2 !== Math.round(v * 2));
  const order: readonly LengthUnit[] = sixteenths && quarters ? ["in", "cm", "mm"] : ["cm", "in", "mm"];
  return order.find((unit) => isBetween(tall * mmPerUnit[unit], smallestFigure, largestFigure)) ?? "cm";
}

/** The other units, for asking: the likeliest first. */
export function unitsToAsk(likely: LengthUnit): readonly LengthUnit[] {
  return [likely, ...lengthUnits.filter((unit) => unit !== likely)];
}

function isBetween(value: number, low: number, high: number): boolean {
  return value >= low && value <= high;
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}
