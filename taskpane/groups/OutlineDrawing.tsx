import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import { usualUnit } from "../../addin/chart/usualUnit.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import type { BodyOutline, OutlineLevel } from "../../addin/similarity/outline/bodyOutline.ts";
import { bodyOutline } from "../../addin/similarity/outline/bodyOutline.ts";
import { outlinePath } from "../../addin/similarity/outline/outlinePath.ts";
import { Drawing } from "../drawing/Drawing.tsx";
import { DrawingFrame } from "../drawing/DrawingFrame.tsx";
import { fileNameOf } from "../drawing/fileName.ts";
import { drawn } from "../drawing/looks.ts";
import { ScaleBar } from "../drawing/ScaleBar.tsx";
import { meaning } from "../ui/theme.ts";
import { figureAt } from "./sharing.ts";

const useStyles = makeStyles({
  base: drawn.base,
  other: { fill: meaning.chalkGround, stroke: meaning.chalk, strokeWidth: "1.5px" },
  leader: drawn.leader,
  label: drawn.quietLetters,
  name: drawn.boldLetters,
  key: { fill: "none" },
  text: { margin: 0, overflowWrap: "anywhere" },
});

/** The levels that are named on the drawing. */
const named = ["Head", "Neck", "Shoulder", "Bust", "Waist", "Hip", "Top of the leg", "Knee", "Ankle"];

const labelHeight = 14;
const head = 24;
const foot = 28;
const labelWidth = 96;

/** A figure drawn from its girths and lengths, or two over each other. */
export function OutlineDrawing(props: {
  readonly chart: Chart;
  /** Places in the chart, from 0; the base is drawn dashed. */
  readonly base?: number;
  readonly other: number;
}): ReactNode {
  const styles = useStyles();
  const { chart, base, other } = props;
  const [first, second] = useMemo(
    () => [base === undefined ? undefined : bodyOutline(chart, base), bodyOutline(chart, other)] as const,
    [chart, base, other],
  );
  const unit = usualUnit(chart);
  const name = figureAt(chart, other);
  const baseName = base === undefined ? undefined : figureAt(chart, base);
  const lacking = [...(first ? [first] : []), second].filter(({ levels }) => levels.length === 0);
  if (lacking.length > 0) {
    return lacking
      .flatMap(({ notes }) => notes)
      .map((note) => (
        <p key={note} className={styles.text}>
          {note}
        </p>
      ));
  }
  return (
    <DrawingFrame
      title={baseName === undefined ? name : `${baseName} and ${name}`}
      description={
        baseName === undefined
          ? "From the front."
          : `From the front, on one floor: ${baseName} dashed, ${name} in a solid line.`
      }
      note={noteOf(first, second)}
      fileName={baseName === undefined ? fileNameOf("outline", name) : fileNameOf("outline", baseName, name)}
      table={tableOf(first, second, unit)}
    >
      {(width) => <Outlines width={width} outlines={[first, second]} unit={unit} names={[baseName, name]} />}
    </DrawingFrame>
  );
}

function Outlines(props: {
  readonly width: number;
  readonly outlines: readonly [BodyOutline | undefined, BodyOutline];
  readonly unit: LengthUnit;
  readonly names: readonly [string | undefined, string];
}): ReactNode {
  const styles = useStyles();
  const { width, outlines, unit, names } = props;
  const [base, other] = outlines;
  const levels = [...(base?.levels ?? []), ...other.levels];
  const widest = Math.max(...levels.map(({ halfWidthMm }) => halfWidthMm));
  const tallest = Math.max(...levels.map(({ heightMm }) => heightMm));
  const room = Math.min(width - labelWidth, 320);
  const perMm = Math.min((room - 8) / (2 * widest), Math.max(300, room * 1.4) / tallest);
  const middle = (width - labelWidth) / 2;
  const bottom = head + tallest * perMm;
  const x = (mm: number): number => middle + mm * perMm;
  const y = (mm: number): number => bottom - mm * perMm;
  return (
    <Drawing width={width} height={bottom + foot}>
      {base && (
        <>
          <path className={styles.base} d={`M0 8H24`} />
          <text x="30" y="12" className={styles.name}>
            {names[0]}
          </text>
          <path className={styles.other} d={`M${String(width / 2)} 8h24`} />
          <text x={width / 2 + 30} y="12" className={styles.name}>
            {names[1]}
          </text>
        </>
      )}
      <path className={styles.leader} d={`M0 ${String(bottom)}H${String(width - labelWidth)}`} />
      {labelsOf(other.levels, y).map(({ level, at }) => (
        <g key={level.name}>
          <path
            className={styles.leader}
            d={`M${String(x(level.halfWidthMm) + 2)} ${String(y(level.heightMm))}L${String(width - labelWidth + 2)} ${String(at)}`}
          />
          <text x={width - labelWidth + 6} y={at + 4} className={styles.label}>
            {level.name}
          </text>
        </g>
      ))}
      <path className={styles.other} d={outlinePath(other, x, y)} />
      {base && <path className={styles.base} d={outlinePath(base, x, y)} />}
      <ScaleBar x={0} y={bottom + foot - 4} perMm={perMm} unit={unit} most={width / 3} />
    </Drawing>
  );
}

/** Names from the head down, moved down where they would lie over each other. */
function labelsOf(
  levels: readonly OutlineLevel[],
  y: (mm: number) => number,
): readonly { readonly level: OutlineLevel; readonly at: number }[] {
  let last = -Infinity;
  return levels
    .filter(({ name }) => named.includes(name))
    .sort((a, b) => b.heightMm - a.heightMm)
    .map((level) => {
      last = Math.max(y(level.heightMm), last + labelHeight);
      return { level, at: last };
    });
}

function tableOf(base: BodyOutline | undefined, other: BodyOutline, unit: LengthUnit) {
  const levels = [...other.levels].reverse();
  const of = (outline: BodyOutline, name: string): OutlineLevel | undefined =>
    outline.levels.find((level) => level.name === name);
  const widthOf = (level: OutlineLevel | undefined): string =>
    level ? `${level.isWidthEstimated ? "about " : ""}${lengthWords(2 * level.halfWidthMm, unit)}` : "";
  const heightOf = (level: OutlineLevel | undefined): string =>
    level ? `${level.isHeightEstimated ? "about " : ""}${lengthWords(level.heightMm, unit)}` : "";
  // Two figures of one name have two headings all the same.
  const both = base ? [base, { ...other, figure: `${other.figure} ` }] : [other];
  return {
    headings: [
      "Place",
      ...both.map(({ figure }) => `Width of ${figure}`),
      ...both.map(({ figure }) => `Height of ${figure}`),
    ],
    rows: levels.map(({ name }) => [
      name,
      ...both.map((outline) => widthOf(of(outline, name))),
      ...both.map((outline) => heightOf(of(outline, name))),
    ]),
  };
}

function noteOf(base: BodyOutline | undefined, other: BodyOutline): string {
  const both = base ? [base, other] : [other];
  const estimated = both
    .map(({ figure, levels }) => ({
      figure,
      places: levels.filter(({ isWidthEstimated }) => isWidthEstimated).map(({ name }) => name.toLowerCase()),
    }))
    .filter(({ places }) => places.length > 0)
    .map(({ figure, places }) => `${places.join(", ")} of ${figure}`);
  return [
    "This is a diagram, not a likeness: each girth is drawn as an oval, arms are left out, and heights without a reading lie by usual proportions.",
    ...(estimated.length > 0 ? [`Widths estimated: ${estimated.join("; ")}.`] : []),
    ...both.flatMap(({ notes }) => notes),
  ].join(" ");
}
