import type { LengthUnit } from "../measures/units.ts";
import { toMm } from "../measures/units.ts";

/** The steps in which a tape is read, coarsest first, in its unit: whole and half millimetres, eighths to thirty-seconds. */
const steps: Readonly<Record<LengthUnit, readonly number[]>> = {
  mm: [1, 0.5],
  cm: [0.1, 0.05],
  in: [1 / 8, 1 / 16, 1 / 32],
};

/** Decimals such as 13.65 lie on their step but for this share of it. */
const rounding = 1e-6;

/**
 * The error that a reading has at least, however well it repeats, since it was rounded to a step of the tape: step / √12, which
 * is 0.29 mm for whole millimetres and 0.14 mm for halves. The step is the coarsest on which all readings lie, else
 * the finest.
 *
 * Source: JCGM 100:2008 (GUM), 4.3.7, the standard deviation of an even distribution; F.2.2.1 for rounding.
 *
 * @param readings in mm
 * @param unit of the tape
 * @returns mm
 */
export function leastReadingErrorMm(readings: readonly number[], unit: LengthUnit): number {
  const inMm = steps[unit].map((step) => toMm(step, unit));
  const step = inMm.find((each) => readings.every((reading) => liesOn(reading, each)));
  return (step ?? Math.min(...inMm)) / Math.sqrt(12);
}

function liesOn(reading: number, step: number): boolean {
  const times = reading / step;
  return Math.abs(times - Math.round(times)) < rounding;
}
