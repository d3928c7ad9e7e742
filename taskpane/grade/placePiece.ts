import type { PieceOutlines } from "../../addin/grading/pieceOutlines.ts";
import { spread } from "../drawing/spread.ts";

/** Across to the right and downwards, in units of the drawing. */
export type Spot = readonly [x: number, y: number];

export interface PlacedLabel {
  /** One below the other. */
  readonly lines: readonly string[];
  /** The point of the target piece that it belongs to. */
  readonly of: Spot;
  /** Where the lines begin or end, at half of their height. */
  readonly at: Spot;
  readonly anchor: "start" | "end";
}

/** How a line from corner to corner is bent: as an armhole or a crotch, as a neck, or as the cap of a sleeve. */
type Bend = "up" | "down" | "cap";

/**
 * The lines that no garment has straight. Grade rules know the corners alone: the curve between two of them is drawn by eye.
 */
const bends: Readonly<Record<string, Bend>> = {
  "Underarm to Shoulder tip": "up",
  "Shoulder at neck to Neck at centre": "down",
  "Underarm to Top of cap": "cap",
  "Thigh at inside leg to Hip at centre": "up",
};

/** How far a curve follows the directions in which it begins and ends, as a share of the way. */
const pull = 0.6;

/** A piece with its labels beside it, ready to be drawn with 0, 0 in the left upper corner. */
export interface PlacedPiece {
  readonly width: number;
  readonly height: number;
  /** The corners in order around the piece. */
  readonly base: readonly Spot[];
  readonly target: readonly Spot[];
  /** Of the line from each corner to the next; `undefined` for a straight one. */
  readonly bends: readonly (Bend | undefined)[];
  /** Where 0 across and 0 along are. */
  readonly origin: Spot;
  readonly labels: readonly PlacedLabel[];
}

export interface Placing {
  /** Units of the drawing to 1 mm. */
  readonly perMm: number;
  /** Lines of each corner. */
  readonly label: (point: string, place: number) => readonly string[];
  /** Width that a line takes. */
  readonly widthOf: (line: string) => number;
  /** The least distance from label to label, downwards. */
  readonly gap: number;
  /** Between the piece and its labels. */
  readonly lead: number;
}

/** Extent of both outlines of a piece with its origin, in mm. */
export function sizeOf({ corners }: PieceOutlines): {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
} {
  const spots = [...corners.flatMap(({ base, target }) => [base, target]), [0, 0] as const];
  const xs = spots.map(([across]) => across);
  const ys = spots.map(([, along]) => -along);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return { left, top, width: Math.max(...xs) - left, height: Math.max(...ys) - top };
}

/** Places base and target over each other with a label for every corner, in two columns beside the piece. */
export function placePiece(outlines: PieceOutlines, placing: Placing): PlacedPiece {
  const { perMm, label, widthOf, gap, lead } = placing;
  const size = sizeOf(outlines);
  const middle = size.left + size.width / 2;
  const wanted = outlines.corners.map(({ point, target }, i) => ({
    lines: label(point, i),
    isLeft: target[0] < middle,
    y: (-target[1] - size.top) * perMm,
    place: i,
  }));
  const column = (isLeft: boolean) => {
    const own = wanted.filter((each) => each.isLeft === isLeft).sort((a, b) => a.y - b.y);
    const ys = spread(
      own.map(({ y }) => y),
      gap,
    );
    return own.map((each, i) => ({ ...each, labelY: ys[i] ?? each.y }));
  };
  const labels = [...column(true), ...column(false)];
  const widest = (isLeft: boolean) =>
    Math.max(
      0,
      ...labels
        .filter((each) => each.isLeft === isLeft)
        .flatMap(({ lines }) => lines.map((line) => widthOf(line) + lead)),
    );
  const [room, roomRight] = [widest(true), widest(false)];
  const height = size.height * perMm;
  const above = Math.max(gap / 2, ...labels.map(({ labelY }) => gap / 2 - labelY));
  const below = Math.max(gap / 2, ...labels.map(({ labelY }) => labelY + gap / 2 - height));
  const spot = ([across, along]: readonly [number, number]): Spot => [
    room + (across - size.left) * perMm,
    above + (-along - size.top) * perMm,
  ];
  const target = outlines.corners.map((corner) => spot(corner.target));
  const right = room + size.width * perMm;
  return {
    ...{ width: right + roomRight, height: above + height + below, target },
    base: outlines.corners.map((corner) => spot(corner.base)),
    bends: outlines.corners.map(({ point }, i, all) => bends[`${point} to ${all[i + 1]?.point ?? ""}`]),
    origin: spot([0, 0]),
    labels: labels.map(({ lines, isLeft, labelY, place }) => ({
      lines,
      of: target[place] ?? [0, 0],
      at: [isLeft ? room - lead : right + lead, above + labelY],
      anchor: isLeft ? "end" : "start",
    })),
  };
}

/** The outline through some spots, as the path of an svg, its lines bent as is said. */
export function outlinePath(spots: readonly Spot[], bent: PlacedPiece["bends"] = []): string {
  const [first] = spots;
  if (!first) return "";
  const lines = spots.slice(1).map((to, i) => lineTo(spots[i] ?? to, to, bent[i]));
  return `M${numbers(first)}${lines.join("")}Z`;
}

/** A line to a spot: straight, or a curve that stays between the two (cubic Bézier: inside the hull of its four spots). */
function lineTo(from: Spot, to: Spot, bend: Bend | undefined): string {
  if (bend === undefined) return `L${numbers(to)}`;
  const between = (a: Spot, b: Spot): Spot => [a[0] + pull * (b[0] - a[0]), a[1] + pull * (b[1] - a[1])];
  const middle = (from[0] + to[0]) / 2;
  // Where the two directions meet: level with one spot, below or above the other.
  const meeting: Spot = bend === "up" ? [to[0], from[1]] : [from[0], to[1]];
  const [leaves, arrives]: readonly [Spot, Spot] =
    bend === "cap"
      ? [
          [middle, from[1]],
          [middle, to[1]],
        ]
      : [between(from, meeting), between(to, meeting)];
  return `C${[leaves, arrives, to].map(numbers).join(" ")}`;
}

/**
 * An arrow from spot to spot, as the path of an svg: a line with a head; no head where the line is shorter than one, "" where
 * nothing moves.
 */
export function arrowPath(from: Spot, to: Spot, head: number): string {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  if (length < head / 100) return "";
  const line = `M${numbers(from)}L${numbers(to)}`;
  if (length < head) return line;
  const [ux, uy] = [dx / length, dy / length];
  const wing = (side: 1 | -1): Spot => [
    to[0] - head * ux + (side * head * uy) / 2,
    to[1] - head * uy - (side * head * ux) / 2,
  ];
  return `${line}M${numbers(wing(1))}L${numbers(to)}L${numbers(wing(-1))}`;
}

/** Three decimals: a thousandth of a millimetre on paper. */
function numbers([x, y]: Spot): string {
  return `${shortNumber(x)} ${shortNumber(y)}`;
}

/** A number as an svg has it, with no more digits than can be seen. */
export function shortNumber(value: number): string {
  return String(Math.round(value * 1000) / 1000 + 0);
}
