import type { Cells } from "../../../addin/chart/cell.ts";
import { mmPerUnit } from "../../../addin/measures/units.ts";
import { seeded } from "../../similarity/condensedOf.ts";
import type { InventedChart } from "./inventedCharts.ts";

export const slipKinds = [
  "read in another unit",
  "point slipped",
  "half of the girth",
  "twice the girth",
  "digits swapped",
  "digit doubled",
  "digit missing",
  "columns swapped",
  "rows swapped",
  "out of proportion",
  "whole row",
  "whole column",
] as const;
export type SlipKind = (typeof slipKinds)[number];

/** A slip, and the readings as they were before it; places from 0 among the readings. */
export interface PlantedSlip {
  readonly kind: SlipKind;
  readonly cells: Cells;
  readonly truth: readonly { readonly figure: number; readonly column: number; readonly mm: number }[];
}

/** A slip counts from so large a factor on. */
const least = Math.log(1.3);

/** One slip of a kind, anywhere; `undefined` when the chart has no place for it. */
export function plantSlip(chart: InventedChart, kind: SlipKind, seed: number): PlantedSlip | undefined {
  const random = seeded(seed * 104729 + slipKinds.indexOf(kind));
  for (let attempt = 0; attempt < 200; attempt++) {
    const figure = Math.floor(random() * chart.readings.length);
    const column = Math.floor(random() * chart.units.length);
    const changed = change(chart, kind, { figure, column, random });
    if (!changed || changed.length === 0) continue;
    const rows = chart.readings.map((row) => [...row]);
    for (const one of changed) rows[one.figure]![one.column] = one.to;
    return {
      kind,
      cells: cellsOf({ ...chart, readings: rows }),
      truth: changed.map(({ figure: i, column: j }) => ({
        figure: i,
        column: j,
        mm: chart.readings[i]![j]! * mmPerUnit[chart.units[j]!],
      })),
    };
  }
  return undefined;
}

export function cellsOf({ headings, names, readings }: InventedChart): Cells {
  return [headings, ...readings.map((row, i) => [names[i], ...row])];
}

interface Changed {
  readonly figure: number;
  readonly column: number;
  readonly to: number;
}

function change(
  { readings, units, isGirth }: InventedChart,
  kind: SlipKind,
  { figure, column, random }: { figure: number; column: number; random: () => number },
): readonly Changed[] | undefined {
  const reading = readings[figure]![column];
  const unit = units[column]!;
  if (reading === undefined) return undefined;
  const pick = <T>(list: readonly T[]): T | undefined => list[Math.floor(random() * list.length)];
  const single = (to: number | undefined): readonly Changed[] | undefined =>
    to !== undefined && to > 0 && Math.abs(Math.log(to / reading)) >= least
      ? [{ figure, column, to }]
      : undefined;
  const inAnother = (): number => {
    const other = pick((["mm", "cm", "in"] as const).filter((one) => one !== unit))!;
    return mmPerUnit[unit] / mmPerUnit[other];
  };
  switch (kind) {
    case "read in another unit": {
      const factor = inAnother();
      return single(Number((reading * factor).toFixed(2)));
    }
    case "point slipped":
      return single(Number((reading * pick([10, 0.1])!).toFixed(4)));
    case "half of the girth":
      return isGirth[column] ? single(Number((reading / 2).toFixed(2))) : undefined;
    case "twice the girth":
      return isGirth[column] ? single(reading * 2) : undefined;
    case "digits swapped":
    case "digit doubled":
    case "digit missing":
      return unit === "in" ? undefined : single(pick(slipOfDigits(String(reading), kind)));
    case "columns swapped":
      return swap({ figure, column: column + 1 });
    case "rows swapped":
      return swap({ figure: figure + 1, column });
    case "out of proportion":
      return single(Number((reading * Math.exp(pick([1, -1])! * (least + random() * 0.5))).toFixed(unit === "mm" ? 0 : 1))); // prettier-ignore
    case "whole row": {
      const factor = pick([0.1, 1 / 25.4, 10])!;
      const taken = readings[figure]!.flatMap((value, j) =>
        value === undefined ? [] : [{ figure, column: j, to: Number((value * factor).toFixed(3)) }],
      );
      return units.every((one) => one === unit) ? taken : undefined;
    }
    case "whole column": {
      const factor = pick([0.1, 1 / 25.4, 10])!;
      return readings.flatMap((row, i) =>
        row[column] === undefined
          ? []
          : [{ figure: i, column, to: Number((row[column] * factor).toFixed(3)) }],
      );
    }
  }

  function swap(other: { figure: number; column: number }): readonly Changed[] | undefined {
    const theirs = readings[other.figure]?.[other.column];
    if (theirs === undefined || reading === undefined) return undefined;
    const sizeOfSlip = Math.abs(Math.log((theirs * mmPerUnit[units[other.column]!]) / (reading * mmPerUnit[unit]))); // prettier-ignore
    if (sizeOfSlip < least || units[other.column] !== unit) return undefined;
    return [
      { figure, column, to: theirs },
      { ...other, to: reading },
    ];
  }
}

function slipOfDigits(text: string, kind: SlipKind): readonly number[] {
  const places = [...text].flatMap((sign, i) => (sign === "." ? [] : [i]));
  const made = places.map((at, k) => {
    const next = places[k + 1];
    if (kind === "digit doubled") return text.slice(0, at) + text[at]! + text.slice(at);
    if (kind === "digit missing") return text.slice(0, at) + text.slice(at + 1);
    if (next === undefined) return text;
    const signs = [...text];
    [signs[at], signs[next]] = [signs[next]!, signs[at]!];
    return signs.join("");
  });
  // Nobody writes 013 or a bare point.
  return made.filter((one) => one !== text && /^(0|[1-9]\d*)(\.\d+)?$/.test(one)).map(Number);
}
