import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { Drawing } from "../drawing/Drawing.tsx";
import { drawn } from "../drawing/looks.ts";
import { ScaleBar } from "../drawing/ScaleBar.tsx";
import { meaning } from "../ui/theme.ts";
import type { GradedPiece } from "./gradedPieces.ts";
import { arrowPath, outlinePath, placePiece } from "./placePiece.ts";
import { labelsFor } from "./screenLabels.ts";

const useStyles = makeStyles({
  base: drawn.base,
  target: { fill: meaning.chalkGround, stroke: meaning.chalk, strokeWidth: "1.5px", strokeLinejoin: "round" },
  arrow: { fill: "none", stroke: meaning.chalk, strokeWidth: "1.5px" },
  dot: { fill: meaning.chalk },
  quiet: { fill: "none", stroke: tokens.colorNeutralForeground3, strokeWidth: "0.75px" },
  lead: drawn.leader,
  label: drawn.boldLetters,
  key: drawn.letters,
});

const keyHeight = 44;
const barHeight = 40;
const gap = 16;
const lead = 12;
const head = 6;

/** Base and target of a piece over each other, with every point numbered and an arrow where it goes. */
export function PieceDrawing(props: {
  readonly piece: GradedPiece;
  readonly base: string;
  readonly target: string;
  /** Units of the drawing to 1 mm, the same for all pieces of a garment. */
  readonly perMm: number;
  readonly width: number;
}): ReactNode {
  const styles = useStyles();
  const { piece, base, target, perMm, width } = props;
  const labels = labelsFor(width);
  const placed = placePiece(piece.outlines, {
    ...{ perMm, gap, lead, widthOf: labels.widthOf },
    label: labels.label,
  });
  const left = Math.max(0, (width - placed.width) / 2);
  const height = keyHeight + placed.height + barHeight;
  const [ox, oy] = placed.origin;
  return (
    <Drawing width={width} height={Math.ceil(height)}>
      <path className={styles.base} d="M0 8H28" />
      <text className={styles.key} x="36" y="12">
        {base} (base)
      </text>
      <path className={styles.target} d="M0 26H28" />
      <text className={styles.key} x="36" y="30">
        {target} (target)
      </text>
      <g transform={`translate(${String(left)} ${String(keyHeight)})`}>
        <path className={styles.target} d={outlinePath(placed.target, placed.bends)} />
        <path className={styles.base} d={outlinePath(placed.base, placed.bends)} />
        <path
          className={styles.quiet}
          d={`M${String(ox - 5)} ${String(oy)}h10M${String(ox)} ${String(oy - 5)}v10`}
        />
        {placed.labels.map(({ lines: [words = ""], of, at, anchor }) => (
          <g key={words}>
            <path
              className={styles.lead}
              d={`M${of.join(" ")}L${String(at[0] + (anchor === "end" ? 2 : -2))} ${String(at[1])}`}
            />
            <text className={styles.label} x={at[0]} y={at[1] + 4} textAnchor={anchor}>
              {words}
            </text>
          </g>
        ))}
        {placed.target.map((to, i) => {
          const from = placed.base[i] ?? to;
          return (
            <g key={i}>
              <path className={styles.arrow} d={arrowPath(from, to, head)} />
              <circle className={styles.dot} cx={to[0]} cy={to[1]} r="2.5" />
            </g>
          );
        })}
      </g>
      <ScaleBar x={1} y={height - 4} perMm={perMm} unit={piece.unit} most={Math.min(width / 2, 160)} />
    </Drawing>
  );
}
