import type { WidthOf } from "../drawing/letters.ts";

/** A mark of a drawing, in its units. */
export interface Mark {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** What is written beside it. */
  readonly label: string;
}

/** Where a label stands: `x`, `y` is its base line at the start, middle or end of the text. */
export interface PlacedLabel {
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
}

export interface LabelRoom {
  readonly width: number;
  readonly height: number;
  /** Size of the letters. */
  readonly size: number;
  readonly widthOf: WidthOf;
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Between a mark and its label. */
const gap = 3;

/**
 * Which marks have room for what is written on them: none that lies over another which has, first marks first.
 *
 * @param reach from the middle of a mark to its edge
 */
export function withRoom(marks: readonly Pick<Mark, "x" | "y">[], reach: number): readonly boolean[] {
  const kept: Pick<Mark, "x" | "y">[] = [];
  return marks.map((mark) => {
    const isFree = !kept.some(({ x, y }) => Math.hypot(x - mark.x, y - mark.y) < 2 * reach);
    if (isFree) kept.push(mark);
    return isFree;
  });
}

/**
 * Places a label beside each mark so that it covers no other label and no mark, first marks first: to the right, the left,
 * above, below, then at the corners.
 *
 * @returns one a mark; `undefined` where there is no room
 */
export function placeLabels(marks: readonly Mark[], room: LabelRoom): readonly (PlacedLabel | undefined)[] {
  const taken: Box[] = marks.map(({ x, y, radius }) => ({
    left: x - radius,
    right: x + radius,
    top: y - radius,
    bottom: y + radius,
  }));
  return marks.map((mark, i) => {
    const others = taken.filter((_, at) => at !== i);
    const found = placesAround(mark, room).find((place) => {
      const box = boxOf(place, mark.label, room);
      return isInside(box, room) && !others.some((other) => doMeet(box, other));
    });
    if (found) taken.push(boxOf(found, mark.label, room));
    return found;
  });
}

function placesAround({ x, y, radius }: Mark, { size }: LabelRoom): readonly PlacedLabel[] {
  const middle = y + size * 0.35;
  const above = y - radius - gap;
  const below = y + radius + gap + size * 0.75;
  const right = x + radius + gap;
  const left = x - radius - gap;
  return [
    { x: right, y: middle, anchor: "start" },
    { x: left, y: middle, anchor: "end" },
    { x, y: above, anchor: "middle" },
    { x, y: below, anchor: "middle" },
    { x: right, y: above, anchor: "start" },
    { x: right, y: below, anchor: "start" },
    { x: left, y: above, anchor: "end" },
    { x: left, y: below, anchor: "end" },
  ];
}

function boxOf({ x, y, anchor }: PlacedLabel, label: string, { size, widthOf }: LabelRoom): Box {
  const width = widthOf(label);
  const left = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
  return { left, right: left + width, top: y - size * 0.8, bottom: y + size * 0.25 };
}

function isInside({ left, right, top, bottom }: Box, { width, height }: LabelRoom): boolean {
  return left >= 0 && right <= width && top >= 0 && bottom <= height;
}

function doMeet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
