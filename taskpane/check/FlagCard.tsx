import { Button, makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { Cell } from "../../addin/chart/cell.ts";
import type { Choice, Flag, FlagKind } from "../../addin/checking/checkChart.ts";
import { flaggedText } from "../../addin/checking/flag.ts";
import type { Measure } from "../../addin/measures/measure.ts";
import { FoldedHowToTake } from "../measure/TapeDrawing.tsx";
import { meaning } from "../ui/theme.ts";
import { shownLength } from "../ui/words.ts";
import { card } from "../ui/boxes.ts";

const useStyles = makeStyles({
  card: {
    ...card,
    overflowWrap: "anywhere",
  },
  place: {
    justifyContent: "space-between",
    gap: "8px",
    padding: "4px 0",
    minHeight: "32px",
    fontWeight: 600,
    textAlign: "left",
    color: meaning.chalk,
    "&:hover": { textDecorationLine: "underline" },
    // There its frame is drawn.
    "@media (forced-colors: active)": { padding: "4px 8px" },
  },
  reading: { whiteSpace: "nowrap" },
  kind: { fontWeight: 600 },
  stops: { color: meaning.thread },
  look: { color: meaning.brass },
  note: { color: tokens.colorNeutralForeground3 },
  why: { margin: 0 },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px", paddingTop: "4px" },
});

type Weight = "stops" | "look" | "note";

/** Cells without a reading stop the chart; notes only want to be known. */
const weights: Partial<Record<FlagKind, Weight>> = {
  "date instead of a reading": "stops",
  "error in the cell": "stops",
  "not a length": "stops",
  "unit not known": "stops",
  "unlike the other figures": "note",
  "same readings, two names": "note",
  estimates: "note",
  "unit assumed": "note",
};

const signs: Readonly<Record<Weight, string>> = { stops: "✕", look: "◆", note: "◇" };

/** One flag: where, what was read, why it looks wrong, and what can be done. */
export function FlagCard(props: {
  readonly flag: Flag;
  readonly cell: Cell;
  /** What the reading is of, where the dictionary knows it. */
  readonly measure: Measure | undefined;
  readonly disabled: boolean;
  readonly onSelect: () => void;
  readonly onUse: () => void;
  readonly onChoose: (choice: Choice) => void;
  readonly onConfirm: () => void;
}): ReactNode {
  const styles = useStyles();
  const { flag, cell, measure, disabled } = props;
  const { choices = [] } = flag;
  const weight = weights[flag.kind] ?? "look";
  const place = flag.measure || (flag.figure ? "The whole row" : "The whole column");
  const reading =
    flag.readingMm === undefined ? flaggedText(flag, cell) : shownLength(flag.readingMm, flag.unit);
  return (
    <li className={styles.card}>
      <Button
        appearance="transparent"
        className={styles.place}
        onClick={props.onSelect}
        title="Show it in the chart"
        data-flag
      >
        <span>{place}</span>
        {flag.measure !== "" && flag.figure !== "" && <span className={styles.reading}>{reading}</span>}
      </Button>
      <span className={mergeClasses(styles.kind, styles[weight])}>
        {signs[weight]} {flag.kind}
      </span>
      <p className={styles.why}>{flag.why}</p>
      {measure && flag.figure !== "" && <FoldedHowToTake measure={measure} />}
      {(flag.corrections.length > 0 || choices.length > 0 || weight !== "stops") && (
        <div className={styles.actions}>
          {flag.corrections.length > 0 && (
            <Button disabledFocusable={disabled} onClick={props.onUse}>
              {correctionLabel(flag)}
            </Button>
          )}
          {choices.map((choice) => (
            <Button
              key={choice.label}
              disabledFocusable={disabled}
              onClick={() => {
                props.onChoose(choice);
              }}
            >
              {choiceLabel(choice)}
            </Button>
          ))}
          {weight !== "stops" && (
            <Button appearance="subtle" disabledFocusable={disabled} onClick={props.onConfirm}>
              It is right
            </Button>
          )}
        </div>
      )}
    </li>
  );
}

/** What taking one of several choices does, in words. */
export function choiceLabel(choice: Choice): string {
  return "correction" in choice ? `Use ${choice.label}` : `In ${choice.label}`;
}

/** What taking the suggestion does, in words: also the label of the action. */
export function correctionLabel({ corrections, suggestedMm, unit }: Flag): string {
  if (corrections.length === 1 && suggestedMm !== undefined) return `Use ${shownLength(suggestedMm, unit)}`;
  if (corrections.length === 2) return "Change both readings";
  return `Change ${String(corrections.length)} readings`;
}
