import type { LengthUnit } from "../measures/units.ts";
import { mmPerUnit } from "../measures/units.ts";

/** A mix-up of units: true length = reading × factor. */
export interface UnitSlip {
  readonly factor: number;
  /** The unit that it was read in, when a plain mix-up with the column’s unit explains it. */
  readonly readIn?: LengthUnit;
}

/** 2.54, 10, 25.4 and their inverses. */
export const unitFactors: readonly number[] = [10, 1 / 10, 25.4, 1 / 25.4, 2.54, 1 / 2.54];

export const unitNames: Readonly<Record<LengthUnit, string>> = {
  mm: "millimetres",
  cm: "centimetres",
  in: "inches",
};

/** All mix-ups of units, with the one that each means in a column of `unit`. */
export function unitSlips(unit: LengthUnit): readonly UnitSlip[] {
  return unitFactors.map((factor) => unitSlip(factor, unit));
}

export function unitSlip(factor: number, unit: LengthUnit): UnitSlip {
  const readIn = (["mm", "cm", "in"] as const).find(
    (other) => other !== unit && Math.abs(mmPerUnit[other] / mmPerUnit[unit] / factor - 1) < 1e-9,
  );
  return readIn ? { factor, readIn } : { factor };
}

/** “about 10 times too small” */
export function timesOff(factor: number): string {
  const times = factor > 1 ? factor : 1 / factor;
  return `about ${String(Number(times.toFixed(2)))} times too ${factor > 1 ? "small" : "large"}`;
}

/** The question to ask: “was it read in inches?” */
export function unitQuestion({ factor, readIn }: UnitSlip, subject: string): string {
  if (readIn) return `${subject} read in ${unitNames[readIn]}?`;
  const ten = Math.abs(Math.abs(Math.log10(factor)) - 1) < 1e-9;
  return ten ? "has the decimal point slipped?" : "were centimetres and inches mixed up?";
}
