import type { PieceOutlines } from "../../addin/grading/pieceOutlines.ts";
import { sizeOf } from "./placePiece.ts";

/** Pane widths from which names have room beside a piece; below, numbers stand for them. */
const namesFrom = 480;
/** Mean width of a letter in units of a drawing, at 12 and on the wide side. */
const letterWidth = 7.2;
const lead = 12;
const highest = 320;

export interface ScreenLabels {
  readonly label: (point: string, place: number) => readonly string[];
  readonly widthOf: (line: string) => number;
}

/** How the points of a piece are labelled at a width: by number, and by name where there is room. */
export function labelsFor(width: number): ScreenLabels {
  return {
    label: (point, place) => [width < namesFrom ? String(place + 1) : `${String(place + 1)} ${point}`],
    widthOf: (line) => line.length * letterWidth,
  };
}

/** Units of the drawing to 1 mm at which the largest of some pieces still has room, with its labels. */
export function screenScale(pieces: readonly PieceOutlines[], width: number): number {
  const { label, widthOf } = labelsFor(width);
  const widest = Math.max(
    0,
    ...pieces.flatMap(({ corners }) => corners.flatMap(({ point }, i) => label(point, i).map(widthOf))),
  );
  const room = Math.max(40, width - 2 * (widest + lead));
  const sizes = pieces.filter(({ corners }) => corners.length > 0).map(sizeOf);
  return Math.min(
    room / Math.max(1, ...sizes.map((size) => size.width)),
    highest / Math.max(1, ...sizes.map((size) => size.height)),
  );
}
