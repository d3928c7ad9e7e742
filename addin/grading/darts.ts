/**
 * The widest dart, in mm at full size, that still presses flat: 1 1/4 in. The project’s own starting value, around what
 * drafting handbooks show; at 1:x the largest sensible intake is an x-th of it.
 */
export const widestDartMm = 32;

/** What arithmetic may leave between two girths that are the same, in mm at full size. */
const noDifferenceMm = 1e-6;

export interface DartPlan {
  /** What has to be taken in between the wider girth and the waist, over the whole body, in mm. */
  readonly differenceMm: number;
  /** Taken at the seams, over the whole body, in mm. */
  readonly atSeamsMm: number;
  /** Darts to sew, over the whole body: those of the block, or more, in pairs, that keep each within the largest; 0 for none. */
  readonly darts: number;
  /** Width of each of them at the waist, in mm. */
  readonly intakeMm: number;
  /** How wide each dart would be with those of the block, in mm. */
  readonly asGivenMm: number;
  /** Largest sensible width of a dart at this scale, in mm. */
  readonly largestMm: number;
}

export interface DartOptions {
  /** Darts of the block over the whole body: 4 for one on each half front and half back. */
  readonly darts: number;
  /** Share of the difference that is shaped at the seams instead; 1/2 when left out, common practice. */
  readonly seamShare?: number;
  /** Scale of the figure as the x of 1:x; 1 when left out. */
  readonly scale?: number;
}

/**
 * How the difference between a wider girth and the waist (bust and waist, or hip and waist) is spread over the darts of a
 * block. A waist that is as wide or wider needs none.
 *
 * @param widerMm finished bust or hip of the garment, in mm
 * @param waistMm finished waist, in mm
 * @example
 * planDarts(960, 720, { darts: 4 }).intakeMm; // 30: half of 240 at the seams, the rest over four darts
 */
export function planDarts(widerMm: number, waistMm: number, options: DartOptions): DartPlan {
  const { darts, seamShare = 1 / 2, scale = 1 } = options;
  const differenceMm = widerMm - waistMm > noDifferenceMm / scale ? widerMm - waistMm : 0;
  const atSeamsMm = differenceMm * seamShare;
  const inDartsMm = differenceMm - atSeamsMm;
  const largestMm = widestDartMm / scale;
  // With room for the last digit: at 1:6, 32 mm of 32 mm must count as one dart.
  const leastDarts = Math.ceil(inDartsMm / largestMm - 1e-9);
  const needed = leastDarts <= darts ? darts : 2 * Math.ceil(leastDarts / 2);
  return {
    ...{ differenceMm, atSeamsMm, largestMm },
    darts: inDartsMm > 0 ? needed : 0,
    intakeMm: inDartsMm / needed,
    asGivenMm: inDartsMm / darts,
  };
}

/**
 * Length of each leg of a dart, so that both sewn edges match.
 *
 * @param intake width of the dart at its wide end, in any unit
 * @param depth distance from the wide end to the point, along the middle of the dart, in the same unit
 * @example
 * dartLeg(6, 4); // 5
 */
export function dartLeg(intake: number, depth: number): number {
  return Math.hypot(intake / 2, depth);
}

/**
 * Angle of a dart at its point, in degrees. It stays the same when a pattern is printed at another scale, and when a
 * dart is turned to another edge of its piece.
 *
 * @param intake width of the dart at its wide end, in any unit
 * @param depth distance from the wide end to the point, in the same unit
 * @example
 * dartAngle(2, 1); // 90
 */
export function dartAngle(intake: number, depth: number): number {
  return (2 * Math.atan2(intake / 2, depth) * 180) / Math.PI;
}
