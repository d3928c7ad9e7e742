/** A figure on the map, in the units of the drawing. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly group: number;
  readonly isBase: boolean;
}

/** Figures of one group that lie so close that one mark stands for them. */
export interface Clump<S extends Spot> {
  readonly x: number;
  readonly y: number;
  readonly group: number;
  /** The base figure first where it is among them, the others in their order. */
  readonly spots: readonly S[];
}

/**
 * Puts figures of one group under one mark when they lie within a distance of it. A mark stands where its first figure is.
 */
export function clumps<S extends Spot>(spots: readonly S[], distance: number): readonly Clump<S>[] {
  const found: { x: number; y: number; group: number; spots: S[] }[] = [];
  const basesFirst = [...spots].sort((a, b) => Number(b.isBase) - Number(a.isBase));
  for (const spot of basesFirst) {
    const near = found.find(
      ({ group, x, y }) => group === spot.group && Math.hypot(x - spot.x, y - spot.y) <= distance,
    );
    if (near) near.spots.push(spot);
    else found.push({ x: spot.x, y: spot.y, group: spot.group, spots: [spot] });
  }
  return found;
}
