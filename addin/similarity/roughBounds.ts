import type { Readings } from "./pair.ts";

/*
 * Which groups are surely too far apart, told by a few sums of whole numbers.
 *
 * Each measure has a scale on which a tolerance is equally long everywhere: the place of a reading is ∫ dx / tolerance(x), in
 * tolerances where the tolerance is a fixed length, the logarithm from there on where it is a share of the reading. Two readings a < b
 * are d = (b − a) / max(floor, share · (a + b)) tolerances apart, share being half the percentage, and their places at most
 * atanh(share · d) / share: that is ln(b / a) / (2 · share), exact where the share decides at every reading between them, since there
 * d = tanh(ln(b / a) / 2) / share; where the floor decides somewhere, the places are only closer. So places farther apart than
 * that of a limit tell that the readings are beyond it.
 *
 * Of each group the place of the smallest reading is kept, and how far the place of the largest is below the end of the scale, in the
 * two halves of one number of 32 bits. Of two groups together each half is the lesser of two.
 */

/** The end of the scale: four times this is less than half of what 16 bits hold. */
const end = 2 ** 13 - 1;

/** Stands for a reading that is missing, in either half: too far from nothing. */
const missing = 2 * end;

/** Where both of these bits of a sum are set, the two groups are not too far apart in that measure. */
export const bothNear = 0x8000_8000 | 0;

const oneNear = 0x8000;

/** So many measures are asked at once. */
export const abreast = 8;

export interface RoughBounds {
  /** Number of slots. */
  readonly size: number;
  /** Measure c of slot i at ⌊c / abreast⌋ · size · abreast + i · abreast + c % abreast; behind the last measure nothing is far. */
  readonly bounds: Int32Array;
  /** By measure, how much of the scale a tolerance takes. */
  readonly fineness: Float64Array;
  /** By measure half of percent / 100, as of readings. */
  readonly halfShare: Float64Array;
}

/**
 * @param figures by slot, which figure stands there
 * @param columns in the order in which they are to be asked
 */
export function roughBounds(readings: Readings, figures: Int32Array, columns: Int32Array): RoughBounds {
  const { width, mm } = readings;
  const size = figures.length;
  const bounds = new Int32Array(Math.ceil(width / abreast) * size * abreast).fill((missing << 16) | missing);
  const fineness = new Float64Array(width);
  const halfShare = Float64Array.from(columns, (column) => readings.halfShare[column]!);
  const places = new Float64Array(size);
  columns.forEach((column, c) => {
    const floorMm = readings.floorMm[column]!;
    let least = Infinity;
    let most = -Infinity;
    for (let slot = 0; slot < size; slot++) {
      const place = placeOf(mm[figures[slot]! * width + column]!, floorMm, halfShare[c]!);
      places[slot] = place;
      if (place < least && place > -Infinity) least = place;
      if (place > most && place < Infinity) most = place;
    }
    const fine = most > least ? end / (most - least) : 0;
    fineness[c] = fine;
    for (let slot = 0, at = firstAt(c, size); slot < size; slot++, at += abreast) {
      const place = fine * (places[slot]! - least);
      if (place >= 0 && place < 2 * end) bounds[at] = packed(Math.ceil(place), end - Math.floor(place));
    }
  });
  return { size, bounds, fineness, halfShare };
}

/** Where the numbers of a measure begin. */
function firstAt(c: number, size: number): number {
  return (c - (c % abreast)) * size + (c % abreast);
}

function packed(least: number, belowEnd: number): number {
  return (Math.max(0, belowEnd) << 16) | Math.min(end, least);
}

function placeOf(mm: number, floorMm: number, halfShare: number): number {
  if (halfShare === 0 || 2 * halfShare * mm <= floorMm) return mm / floorMm;
  return (1 + Math.log((2 * halfShare * mm) / floorMm)) / (2 * halfShare);
}

/**
 * What has to be added to the bounds of another slot: see `bothNear`.
 *
 * @param limit in tolerances, with room for rounding
 * @param own filled for this slot, by measure
 */
export function fillOwn(rough: RoughBounds, slot: number, limit: number, own: Int32Array): void {
  const { size, bounds, fineness, halfShare } = rough;
  let share = 0;
  let places = limit;
  for (let c = 0, at = slot * abreast; c < own.length; c++, at++) {
    if (c > 0 && c % abreast === 0) at += (size - 1) * abreast;
    if (c < halfShare.length && halfShare[c] !== share) {
      share = halfShare[c]!;
      places = share > 0 ? Math.atanh(Math.min(1, share * limit)) / share : limit;
    }
    // One more, since products are rounded.
    const most = c < fineness.length ? Math.min(end, Math.ceil(places * fineness[c]!) + 1) : end;
    const bound = bounds[at]!;
    const add = oneNear + (Number.isNaN(most) ? end : most) - end;
    own[c] = (((bound & 0xffff) + add) << 16) | ((bound >>> 16) + add);
  }
}

/** Makes one of two groups. */
export function widen({ size, bounds }: RoughBounds, kept: number, gone: number): void {
  for (
    let i = kept * abreast, j = gone * abreast;
    i < bounds.length;
    i += size * abreast, j += size * abreast
  ) {
    for (let c = 0; c < abreast; c++) {
      const one = bounds[i + c]!;
      const other = bounds[j + c]!;
      bounds[i + c] = (Math.min(one >>> 16, other >>> 16) << 16) | Math.min(one & 0xffff, other & 0xffff);
    }
  }
}
