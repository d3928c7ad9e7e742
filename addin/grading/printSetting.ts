/** The scales, in percent, that are worth printing at: beyond them a pattern has to be drafted anew. */
export const printablePercent = { least: 50, most: 200 } as const;

/** The same as factors. */
export const printableFactor = { least: 0.5, most: 2 } as const;

/** More decimals no printer takes. */
const mostDecimals = 3;

/**
 * A scale as a printer takes it: in whole percent. Where that would take a measure out of its tolerance, the next whole
 * percent that does not; where none is, with as few decimals as it needs.
 *
 * @param factor the scale, 1 for the same size
 * @param within the scales at which each measure is within tolerance; those that are out at `factor` are not asked
 * @returns percent
 * @example
 * printPercent(0.754); // 75
 */
export function printPercent(factor: number, within: readonly Scales[] = []): number {
  const met = within.filter(({ least, most }) => least <= factor && factor <= most);
  const keeps = (percent: number) =>
    met.every(({ least, most }) => least <= percent / 100 && percent / 100 <= most);
  const nearest = Math.round(factor * 100);
  const decimals = Array.from({ length: mostDecimals }, (_, i) => 10 ** (i + 1));
  const percents = [
    nearest,
    nearest > factor * 100 ? nearest - 1 : nearest + 1,
    ...decimals.map((parts) => Math.round(factor * 100 * parts) / parts),
  ];
  return percents.find(keeps) ?? factor * 100;
}

/** True from 50 % to 200 %, with room for the last digit of a computed factor. */
export function isPrintable(factor: number): boolean {
  const percent = factor * 100;
  return percent >= printablePercent.least - 1e-9 && percent <= printablePercent.most + 1e-9;
}

/** From the least to the most scale at which something holds. */
export interface Scales {
  readonly least: number;
  readonly most: number;
}
