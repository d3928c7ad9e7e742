import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useId } from "react";
import { inRem, useWidthOf } from "../drawing/letters.ts";
import { drawn } from "../drawing/looks.ts";
import { tickLabels } from "../drawing/ticks.ts";
import { useWidth } from "../drawing/useWidth.ts";
import { meaning } from "../ui/theme.ts";
import type { CheckDrawing, Span } from "./checkDrawing.ts";

const drawingHeight = 60;

const useStyles = makeStyles({
  ...drawn,
  words: {
    margin: 0,
    padding: 0,
    listStyleType: "none",
    fontSize: tokens.fontSizeBase200,
    lineHeight: 1.25,
    overflowWrap: "anywhere",
  },
  drawing: { display: "block", width: "100%", height: inRem(drawingHeight), overflow: "visible" },
  fits: { fill: meaning.leafGround, stroke: meaning.leaf, strokeWidth: 1.5 },
  worn: {
    fill: tokens.colorNeutralBackground1,
    stroke: meaning.leaf,
    strokeWidth: 1,
    strokeDasharray: "2 2",
  },
  has: { fill: meaning.chalk },
  stretched: { fill: meaning.chalkGround, stroke: meaning.chalk, strokeWidth: 1 },
});

/** The top of what is allowed, its height, and the axis below it. */
const top = 10;
const height = 16;
const axis = 38;

/**
 * What one check allows, with the limits of snug and loose dashed, and what the garment has: a solid mark, drawn out to where
 * the cloth stretches. Places are shares of the width, so that a wider pane makes it larger.
 */
export function CheckBars(props: { readonly title: string; readonly drawing: CheckDrawing }): ReactNode {
  const styles = useStyles();
  const id = useId();
  const [measured, width] = useWidth();
  const widthOf = useWidthOf();
  const { body, fits, snug, loose, atRest, has, ticks, needsWords, limitWords, hasWords, description } =
    props.drawing;
  return (
    <>
      <ul className={styles.words} aria-hidden="true">
        <li>
          ▭ {needsWords}
          {limitWords !== undefined && ` (${limitWords})`}
        </li>
        <li>
          ▮ {hasWords}
          {body && ` · ┆ ${body.words}`}
        </li>
      </ul>
      <svg
        ref={measured}
        className={styles.drawing}
        {...(width > 0 && { viewBox: `0 0 ${String(width)} ${String(drawingHeight)}` })}
        role="img"
        aria-labelledby={`${id}-title`}
        aria-describedby={`${id}-says`}
      >
        <title id={`${id}-title`}>{props.title}</title>
        <desc id={`${id}-says`}>{description}</desc>
        {[snug, loose].map((span, i) => span && <Zone key={i} span={span} className={styles.worn} />)}
        <Zone span={fits} className={styles.fits} />
        {body && (
          <line
            x1={percent(body.at)}
            x2={percent(body.at)}
            y1={top - 6}
            y2={top + height + 6}
            className={styles.base}
          />
        )}
        {has > atRest && (
          <rect
            x={percent(atRest)}
            y={top + 5}
            height={height - 10}
            width={percent(has - atRest)}
            className={styles.stretched}
          />
        )}
        {[atRest, has].map((at, i) => (
          <rect
            key={i}
            x={percent(at)}
            y={top - 4}
            width="4"
            height={height + 8}
            transform="translate(-2 0)"
            className={i === 0 && has > atRest ? styles.stretched : styles.has}
          />
        ))}
        <line x1="0" x2="100%" y1={axis} y2={axis} className={styles.axis} />
        {ticks.map(({ at, words }) => (
          <line
            key={words}
            x1={percent(at)}
            x2={percent(at)}
            y1={axis}
            y2={axis + 5}
            className={styles.axis}
          />
        ))}
        {tickLabels(ticks, width, widthOf).map(({ x, words }) => (
          <text key={words} x={x} y={axis + 18} textAnchor="middle" className={styles.quietLetters}>
            {words}
          </text>
        ))}
      </svg>
    </>
  );
}

function Zone({ span, className }: { readonly span: Span; readonly className: string }): ReactNode {
  return (
    <rect
      x={percent(span.from)}
      y={top}
      width={percent(Math.max(0, span.to - span.from))}
      height={height}
      className={className}
    />
  );
}

function percent(share: number): string {
  return `${String(Math.round(share * 10_000) / 100)}%`;
}
