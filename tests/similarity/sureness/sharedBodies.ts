import type { Chart } from "../../../addin/chart/chart.ts";
import { readingErrorMm, usualReadingError } from "../../../addin/measures/readingError.ts";
import { chartOf } from "../chartOf.ts";
import { seeded } from "../condensedOf.ts";

/** How often a figure has the body of an earlier one. */
export const sharings = { half: 0.5, seldom: 0.05, never: 0 } as const;
export type SharingKind = keyof typeof sharings;

/** A chart as it was read, and the bodies as they are. */
export interface SharedBodies {
  readonly chart: Chart;
  /** Measures of each figure’s body without the error of reading, in mm, in the order of the chart. */
  readonly bodies: readonly (readonly number[])[];
}

/**
 * A seeded, invented chart of 25–60 figures × 8–24 measures whose bodies are known. Bodies differ in size, in stoutness, and in
 * each measure by itself; one new body in four is a cousin of an earlier one: another in one to three measures, or a little
 * different in all. Readings are off by the usual reading error, which is what the sureness takes them to be; half of the charts are written in
 * halves of a millimetre, the others as read.
 */
export function sharedBodies(kind: SharingKind, seed: number): SharedBodies {
  const random = seeded(seed * 6007 + 101);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1));
  const measures = Array.from({ length: whole(8, 24) }, () => ({
    usualMm: 30 * Math.exp(random() * Math.log(12)),
    stout: random() < 0.6 ? 0.06 * random() : 0,
  }));
  const sizeSpread = [0.03, 0.12, 0.3][whole(0, 2)]!;
  const isRounded = random() < 0.5;

  const newBody = (): readonly number[] => {
    const [size, stout] = [sizeSpread * normal(), normal()];
    return measures.map(
      ({ usualMm, stout: share }) => usualMm * Math.exp(size + share * stout + 0.025 * normal()),
    );
  };
  const cousinOf = (body: readonly number[]): readonly number[] => {
    if (random() < 0.5) {
      const little = 0.003 + 0.02 * random();
      return body.map((mm) => mm * Math.exp(little * normal()));
    }
    const others = new Set(Array.from({ length: whole(1, 3) }, () => whole(0, body.length - 1)));
    return body.map((mm, c) => (others.has(c) ? mm * Math.exp(0.05 * normal()) : mm));
  };

  const bodies: (readonly number[])[] = [];
  const count = whole(25, 60);
  while (bodies.length < count) {
    const earlier = bodies[whole(0, bodies.length - 1)];
    if (earlier && random() < sharings[kind]) bodies.push(earlier);
    else bodies.push(earlier && random() < 0.25 ? cousinOf(earlier) : newBody());
  }
  const read = (mm: number): number => {
    const reading = mm + readingErrorMm(usualReadingError, mm) * normal();
    return isRounded ? Math.round(2 * reading) / 2 : reading;
  };
  return {
    chart: chartOf(
      measures.map((_, c) => `Measure ${String(c + 1)}`),
      bodies.map((body, i) => [`Figure ${String(i + 1)}`, body.map(read)] as const),
    ),
    bodies,
  };
}
