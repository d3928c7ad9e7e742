import type { BodyOutline } from "../../addin/similarity/bodyOutline.ts";

/** A point of the drawing. */
interface Point {
  readonly x: number;
  readonly y: number;
}

/** Share of a quarter circle’s radius at which a curve has its handles. */
const roundness = 0.5523;

/**
 * The outline of a figure as the path of an SVG element: the outer edge up the right side, over the head and down the left,
 * then the inside of the legs.
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
  const head = levels.at(-2);
  if (!top || !head) return "";
  const sides = [1, -1].map((side) => {
    const outer = levels
      .slice(0, -1)
      .map(({ halfWidthMm, heightMm }) => ({ x: x(side * halfWidthMm), y: y(heightMm) }));
    const inner = levels
      .filter(({ name, innerMm }) => innerMm > 0 || name === "Top of the leg")
      .map(({ innerMm, heightMm }) => ({ x: x(side * innerMm), y: y(heightMm) }));
    const crown = { x: x(0), y: y(top.heightMm) };
    const from = outer.at(-1) ?? crown;
    const handles = [
      { x: from.x, y: from.y + roundness * (crown.y - from.y) },
      { x: crown.x + roundness * (from.x - crown.x), y: crown.y },
    ];
    const sole = inner[0] && outer[0] ? `M${point(inner[0])}L${point(outer[0])}` : "";
    const legs = inner.length > 1 ? smooth(inner) : "";
    return `${smooth(outer)}C${handles.map(point).join(" ")} ${point(crown)}${sole}${legs}`;
  });
  return sides.join("");
}

/**
 * A curve through points that lie one above the other, without bulges between them (slopes after Fritsch and Carlson, 1980).
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
  return `M${point(first)}${curves.join("")}`;
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
