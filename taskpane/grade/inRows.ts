/** Something that takes up room on a page, in mm. */
export interface Sized {
  readonly width: number;
  readonly height: number;
}

export interface Rows {
  /** Left upper corner of each block. */
  readonly places: readonly (readonly [x: number, y: number])[];
  readonly height: number;
}

/** Blocks in rows from left to right, none over another. */
export function inRows(blocks: readonly Sized[], room: number, between: number): Rows {
  const places: [number, number][] = [];
  let [x, y, rowHeight] = [0, 0, 0];
  for (const { width, height } of blocks) {
    if (x > 0 && x + width > room) {
      y += rowHeight + between;
      [x, rowHeight] = [0, 0];
    }
    places.push([x, y]);
    x += width + between;
    rowHeight = Math.max(rowHeight, height);
  }
  return { places, height: y + rowHeight };
}
