import type { Cell } from "../cell.ts";
import { cellText } from "../cell.ts";
import type { Chart } from "../chart.ts";
import { unitsOfColumns } from "../unitsOfColumns.ts";
import type { Measure } from "../../measures/measure.ts";
import type { Written } from "../../measures/parseReading.ts";
import { lengthIn } from "../../measures/parseReading.ts";
import type { LengthUnit } from "../../measures/units.ts";
import { lengthUnits, mmPerUnit } from "../../measures/units.ts";
import { findColumn } from "./findColumn.ts";

/**
 * What the unit of a column rests on: the heading, the readings themselves, the present chart, the other columns of the file,
 * nothing but what is usual, a guess by the size of the numbers, or you.
 */
export type UnitOrigin = "heading" | "readings" | "chart" | "others" | "assumed" | "guess" | "you";

export interface GuessedUnit {
  readonly unit: LengthUnit;
  readonly unitFrom: UnitOrigin;
}

/** True where nothing in the column itself tells its unit, so that it has to be looked at. */
export function isUnitOpen({ unitFrom }: Pick<GuessedUnit, "unitFrom">): boolean {
  return unitFrom === "others" || unitFrom === "assumed" || unitFrom === "guess";
}

interface Column {
  readonly role: string;
  readonly name: string;
  readonly measure?: Measure;
  readonly statedUnit?: LengthUnit;
  readonly cells: readonly Cell[];
}

/**
 * The unit of each column: from its heading; from the present chart, when it has the measure and the readings carry no unit (the
 * unit that brings them nearest to it); else as {@link unitsOfColumns} decides for the worksheet functions too. Where that cannot
 * be known, the likeliest unit is only a guess.
 */
export function guessUnits(
  columns: readonly Column[],
  readText: (text: string) => Written,
  chart: Chart | undefined,
): readonly GuessedUnit[] {
  const decide = (near: readonly (LengthUnit | undefined)[]) =>
    unitsOfColumns(
      columns.map((column, i) => {
        const holdsReadings = column.role === "measure" || column.role === "own";
        return {
          stated: column.statedUnit ?? near[i],
          measure: column.measure,
          cells: holdsReadings ? column.cells : [],
        };
      }),
      readText,
    );
  const alone = decide([]);
  const near = columns.map((column, i) =>
    alone[i]?.from === "readings" || column.statedUnit ? undefined : unitNearChart(column, readText, chart),
  );
  return decide(near).map(({ unit, from }, i): GuessedUnit => {
    if (near[i]) return { unit, unitFrom: "chart" };
    if (from === "usual") return { unit, unitFrom: "assumed" };
    return { unit, unitFrom: from === "nothing" ? "guess" : from };
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

function numbers(cells: readonly Cell[], readText: (text: string) => Written): number[] {
  return cells.flatMap((cell) => {
    if (typeof cell === "number") return [cell];
    const reading = lengthIn(readText(cellText(cell)), { unit: "none", isDecimal: true });
    return reading.kind === "length" ? [reading.mm] : [];
  });
}

function median(values: readonly number[]): number | undefined {
  return values.toSorted((a, b) => a - b)[values.length >> 1];
}
