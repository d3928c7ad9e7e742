import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Measure } from "../../addin/measures/measure.ts";
import { meaning } from "../ui/theme.ts";
import type { TapePlace } from "./tapePlaces.ts";
import { figureLines, spokenPlace, tapeOn, tapePlaces } from "./tapePlaces.ts";

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
  // The reading stays in sight below, at 320 px too.
  how: { display: "grid", gridTemplateColumns: "104px 1fr", gap: "12px", alignItems: "start" },
  summary: { cursor: "pointer", padding: "4px 0", minHeight: "24px" },
  text: { margin: 0 },
  onFigures: { margin: "4px 0 0", color: tokens.colorNeutralForeground3, fontSize: tokens.fontSizeBase200 },
  behind: { strokeDasharray: "2 2.4", strokeWidth: "1.2px" },
});

/** How a measure is taken: where the tape goes, and what to mind on small figures. */
export function HowToTake(props: { readonly measure: Measure; readonly heading: string }): ReactNode {
  const styles = useStyles();
  const { measure, heading } = props;
  return (
    <div className={styles.how}>
      <TapeDrawing measureId={measure.id} name={heading} />
      <div>
        <p className={styles.text}>{measure.definition}</p>
        <p className={styles.onFigures}>{measure.onFigures}</p>
      </div>
    </div>
  );
}

/** The same behind words that open it; drawn once it is opened. */
export function FoldedHowToTake({ measure }: { readonly measure: Measure }): ReactNode {
  const styles = useStyles();
  const [isOpen, setOpen] = useState(false);
  return (
    <details
      onToggle={(event) => {
        setOpen(event.currentTarget.open);
      }}
    >
      <summary className={styles.summary}>How to take it</summary>
      {isOpen && <HowToTake measure={measure} heading={measure.shortName} />}
    </details>
  );
}

/** The figure itself, from the front, with what lies on it. */
export function FigureDrawing(props: { readonly label: string; readonly children: ReactNode }): ReactNode {
  const styles = useStyles();
  return (
    <svg className={styles.drawing} viewBox="0 0 100 212" role="img" aria-label={props.label}>
      {figureLines.map((path) => (
        <path key={path} className={styles.figure} d={path} />
      ))}
      {props.children}
    </svg>
  );
}

/** Where the tape goes for a measure; nothing for a measure that is not drawn. */
function TapeDrawing(props: { readonly measureId: string | undefined; readonly name: string }): ReactNode {
  const place = props.measureId === undefined ? undefined : tapePlaces[props.measureId];
  if (!place) return null;
  return (
    <FigureDrawing label={spokenPlace(props.name, place)}>
      <TapeMark place={place} />
    </FigureDrawing>
  );
}

/** The tape on the figure. */
export function TapeMark({ place }: { readonly place: TapePlace }): ReactNode {
  const styles = useStyles();
  const { strokes, ends, transform } = tapeOn(place);
  return (
    <>
      <g transform={transform}>
        {strokes.map(({ path, isBehind }) => (
          <path key={path} className={isBehind ? `${styles.tape} ${styles.behind}` : styles.tape} d={path} />
        ))}
      </g>
      {ends.map(([x, y]) => (
        <circle key={`${String(x)} ${String(y)}`} cx={x} cy={y} r={1.6} fill={meaning.chalk} />
      ))}
    </>
  );
}
