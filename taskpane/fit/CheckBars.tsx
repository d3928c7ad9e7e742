import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useId } from "react";
import { meaning } from "../ui/theme.ts";
import type { CheckDrawing } from "./checkDrawing.ts";

const useStyles = makeStyles({
  drawing: { display: "block", width: "100%", height: "94px", overflow: "visible" },
  label: { fontSize: "12px", fill: tokens.colorNeutralForeground1 },
  tickLabel: { fontSize: "12px", fill: tokens.colorNeutralForeground3 },
  line: { stroke: tokens.colorNeutralForeground3, strokeWidth: 1 },
  body: { stroke: tokens.colorNeutralForeground3, strokeWidth: 1, strokeDasharray: "3 2" },
  needs: { fill: tokens.colorNeutralBackground3, stroke: tokens.colorNeutralForeground3, strokeWidth: 1 },
  allowed: {
    fill: meaning.leafGround,
    stroke: meaning.leaf,
    strokeWidth: 1,
  },
  has: { fill: meaning.chalk },
  stretched: { fill: meaning.chalkGround, stroke: meaning.chalk, strokeWidth: 1 },
});

/** Needs and has of one check as two bars on one scale. Widths are shares, so that a wider pane makes it larger. */
export function CheckBars(props: { readonly title: string; readonly drawing: CheckDrawing }): ReactNode {
  const styles = useStyles();
  const id = useId();
  const { body, needs, most, atRest, has, ticks, needsWords, hasWords, description } = props.drawing;
  return (
    <svg
      className={styles.drawing}
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-says`}
    >
      <title id={`${id}-title`}>{props.title}</title>
      <desc id={`${id}-says`}>{description}</desc>
      <text x="0" y="11" className={styles.label}>
        {needsWords}
      </text>
      <rect x="0" y="16" height="12" width={percent(needs)} className={styles.needs} />
      {most !== undefined && most > needs && (
        <rect
          x={percent(needs)}
          y="16"
          height="12"
          width={percent(most - needs)}
          className={styles.allowed}
        />
      )}
      <text x="0" y="43" className={styles.label}>
        {hasWords}
      </text>
      {has > atRest && (
        <rect
          x={percent(atRest)}
          y="48"
          height="12"
          width={percent(has - atRest)}
          className={styles.stretched}
        />
      )}
      <rect x="0" y="48" height="12" width={percent(atRest)} className={styles.has} />
      {body && (
        <>
          <text x="100%" y="43" textAnchor="end" className={styles.tickLabel}>
            ┆ {body.words}
          </text>
          {[14, 46].map((top) => (
            <line
              key={top}
              x1={percent(body.at)}
              x2={percent(body.at)}
              y1={top}
              y2={top + 16}
              className={styles.body}
            />
          ))}
        </>
      )}
      <line x1="0" x2="100%" y1="70" y2="70" className={styles.line} />
      {ticks.map(({ at, words }) => (
        <g key={words}>
          <line x1={percent(at)} x2={percent(at)} y1="70" y2="75" className={styles.line} />
          <text
            x={percent(at)}
            y="88"
            textAnchor={at < 0.06 ? "start" : at > 0.9 ? "end" : "middle"}
            className={styles.tickLabel}
          >
            {words}
          </text>
        </g>
      ))}
    </svg>
  );
}

function percent(share: number): string {
  return `${String(Math.round(share * 10_000) / 100)}%`;
}
