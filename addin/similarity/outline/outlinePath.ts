import type { BodyOutline } from "./bodyOutline.ts";

/** A point of the drawing. */
interface Point {
  readonly x: number;
  readonly y: number;
}

/** Share of a quarter circle’s radius at which a curve has its handles. */
const roundness = 0.5523;

/**
 * The outline of a figure as the path of an SVG element: up the right side, over the head, down the left, and along the
 * inside of the legs.
 *
 * @param x from mm right of the middle line to units of the drawing
 * @param y from mm above the floor
 * @returns "" when there is nothing to draw
 */
export function outlinePath(
  { levels }: BodyOutline,
  x: (mm: number) => number,
  y: (mm: number) => number,
): string {
  const top = levels.at(-1);
  if (!top || levels.length < 3) return "";
  const outer = levels.slice(0, -1);
  const legs = levels.filter(({ name, innerMm }) => innerMm > 0 || name === "Top of the leg");
  const edge = (side: 1 | -1): readonly Point[] =>
    outer.map(({ halfWidthMm, heightMm }) => ({ x: x(side * halfWidthMm), y: y(heightMm) }));
  const inside = (side: 1 | -1): readonly Point[] =>
    legs.map(({ innerMm, heightMm }) => ({ x: x(side * innerMm), y: y(heightMm) }));
  const crown = { x: x(0), y: y(top.heightMm) };
  const [right, left] = [edge(1), edge(-1)];
  const [legRight, legLeft] = [inside(1), inside(-1)];
  const between =
    legs.length > 1
      ? `${lineTo(legLeft[0])}${smooth(legLeft)}${lineTo(legRight.at(-1))}${smooth([...legRight].reverse())}`
      : "";
  return `M${point(right[0] ?? crown)}${smooth(right)}${dome(right.at(-1) ?? crown, crown)}${dome(crown, left.at(-1) ?? crown)}${smooth([...left].reverse())}${between}Z`;
}

/** A quarter of an oval, between the side of the head and its crown. */
function dome(from: Point, to: Point): string {
  const isRising = to.y < from.y;
  const side = isRising ? from : to;
  const crown = isRising ? to : from;
  const handles = [
    { x: side.x, y: side.y + roundness * (crown.y - side.y) },
    { x: crown.x + roundness * (side.x - crown.x), y: crown.y },
  ];
  return `C${(isRising ? handles : handles.reverse()).map(point).join(" ")} ${point(to)}`;
}

function lineTo(to: Point | undefined): string {
  return to ? `L${point(to)}` : "";
}

/**
 * A curve from the first of some points that lie one above the other, without bulges between them (slopes after Fritsch and Carlson, 1980).
 */
function smooth(points: readonly Point[]): string {
  const [first, ...others] = points;
  if (!first) return "";
  const slopes = slopesOf(points);
  let before = first;
  const curves = others.map((next, i) => {
    const third = (next.y - before.y) / 3;
    const handles = [
      { x: before.x + (slopes[i] ?? 0) * third, y: before.y + third },
      { x: next.x - (slopes[i + 1] ?? 0) * third, y: next.y - third },
    ];
    before = next;
    return `C${handles.map(point).join(" ")} ${point(next)}`;
  });
  return curves.join("");
}

/** Change of x with y at each point: 0 where the curve turns back. */
function slopesOf(points: readonly Point[]): readonly number[] {
  const steps = points.slice(1).map((next, i) => {
    const before = points[i] ?? next;
    return (next.x - before.x) / (next.y - before.y || 1);
  });
  return points.map((_, i) => {
    const [below, above] = [steps[i - 1], steps[i]];
    if (below === undefined || above === undefined) return 0;
    return below * above <= 0 ? 0 : (2 * below * above) / (below + above);
  });
}

function point({ x, y }: Point): string {
  return `${tidy(x)} ${tidy(y)}`;
}

function tidy(value: number): string {
  return String(Math.round(value * 100) / 100);
}
