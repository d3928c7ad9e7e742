import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { meaning } from "../ui/theme.ts";
import type { Point, TapePlace } from "./tapePlaces.ts";
import { figureLines, tapePlaces } from "./tapePlaces.ts";

const useStyles = makeStyles({
  drawing: { width: "100%", display: "block" },
  figure: {
    fill: tokens.colorNeutralBackground1,
    stroke: tokens.colorNeutralForeground3,
    strokeWidth: "0.8px",
  },
  tape: {
    fill: "none",
    stroke: meaning.chalk,
    strokeWidth: "1.8px",
    strokeLinecap: "round",
    strokeLinejoin: "round",
  },
  behind: { strokeDasharray: "2 2.4", strokeWidth: "1.2px" },
});

/** Where the tape goes for a measure; nothing for a measure that is not drawn. */
export function TapeDrawing(props: {
  readonly measureId: string | undefined;
  readonly name: string;
}): ReactNode {
  const styles = useStyles();
  const place = props.measureId === undefined ? undefined : tapePlaces[props.measureId];
  if (!place) return null;
  return (
    <svg className={styles.drawing} viewBox="0 0 100 212" role="img" aria-label={spoken(props.name, place)}>
      {figureLines.map((path) => (
        <path key={path} className={styles.figure} d={path} />
      ))}
      {place.kind === "around" ? (
        <g transform={`rotate(${String(place.tilt ?? 0)} ${String(place.x)} ${String(place.y)})`}>
          <path className={`${styles.tape} ${styles.behind}`} d={halfRing(place, 0)} />
          <path className={styles.tape} d={halfRing(place, 1)} />
        </g>
      ) : (
        <>
          <path
            className={place.onBack ? `${styles.tape} ${styles.behind}` : styles.tape}
            d={line(place.points)}
          />
          {ends(place.points).map(([x, y]) => (
            <circle key={`${String(x)} ${String(y)}`} cx={x} cy={y} r={1.6} fill={meaning.chalk} />
          ))}
        </>
      )}
    </svg>
  );
}

/** Half of a flat ring: in front (1) below its middle, behind (0) above it. */
function halfRing({ x, y, half }: Extract<TapePlace, { kind: "around" }>, sweep: 0 | 1): string {
  const rise = Math.max(1.2, half * 0.22);
  const [from, to] = [x + half, x - half].map(String);
  return `M${from ?? ""} ${String(y)} A${String(half)} ${String(rise)} 0 0 ${String(sweep)} ${to ?? ""} ${String(y)}`;
}

function line(points: readonly Point[]): string {
  return points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${String(x)} ${String(y)}`).join(" ");
}

function ends(points: readonly Point[]): readonly Point[] {
  const [first] = points;
  const last = points.at(-1);
  return first && last ? (first === last || points.length < 2 ? [first] : [first, last]) : [];
}

function spoken(name: string, place: TapePlace): string {
  if (place.kind === "around") return `${name}: the tape goes around here.`;
  return place.onBack ? `${name}: along the back.` : `${name}: from one mark to the other.`;
}
