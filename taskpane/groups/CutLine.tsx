import { makeStyles } from "@fluentui/react-components";
import type { ScaleLinear } from "d3-scale";
import type { KeyboardEvent, PointerEvent, ReactNode } from "react";
import { inRem, letterSize } from "../drawing/letters.ts";
import { meaning } from "../ui/theme.ts";
import { shownTimes, tolerancesWords } from "./words.ts";

const useStyles = makeStyles({
  grip: {
    position: "absolute",
    width: "32px",
    marginLeft: "-16px",
    cursor: "ew-resize",
    touchAction: "pan-y",
    display: "flex",
    justifyContent: "center",
    alignItems: "flex-start",
    outlineStyle: "none",
    "&:focus-visible > span": { outline: `2px solid ${meaning.chalk}`, outlineOffset: "2px" },
  },
  flag: {
    position: "sticky",
    top: 0,
    minWidth: "24px",
    padding: "0 4px",
    borderRadius: "4px",
    fontSize: inRem(letterSize),
    lineHeight: inRem(18),
    fontWeight: 600,
    textAlign: "center",
    color: "var(--colorNeutralBackground1)",
    backgroundColor: meaning.brass,
    userSelect: "none",
  },
});

const least = 0.05;
const step = 0.05;
const page = 0.5;

/** The line at which the tree is cut, to be dragged, or moved with the keys. */
export function CutLine(props: {
  readonly cut: number;
  readonly scale: ScaleLinear<number, number>;
  /** The right end of the scale. */
  readonly limit: number;
  /** Of the drawing, in its units, as the scale is. */
  readonly width: number;
  /** Where the line begins and ends, in the same. */
  readonly top: number;
  readonly height: number;
  /** What the cut gives, in words. */
  readonly says: string;
  readonly onCut: (cut: number) => void;
}): ReactNode {
  const styles = useStyles();
  const { cut, scale, limit, width, top, height, says, onCut } = props;

  function moveTo(to: number): void {
    const rounded = Math.round(Math.min(limit, Math.max(least, to)) * 100) / 100;
    if (rounded !== cut) onCut(rounded);
  }
  function drag(event: PointerEvent<HTMLDivElement>): void {
    const sheet = event.currentTarget.parentElement;
    if (!sheet || !event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const { left, width: shown } = sheet.getBoundingClientRect();
    moveTo(scale.invert(((event.clientX - left) * width) / shown));
  }
  function press(event: KeyboardEvent): void {
    const to = keyed(event.key, cut, limit);
    if (to === undefined) return;
    event.preventDefault();
    moveTo(to);
  }
  return (
    <div
      className={styles.grip}
      style={{ left: inRem(scale(cut)), top: inRem(top), height: inRem(height - top) }}
      role="slider"
      tabIndex={0}
      aria-label="Cut line"
      aria-orientation="horizontal"
      aria-valuemin={least}
      aria-valuemax={Math.round(limit * 100) / 100}
      aria-valuenow={cut}
      aria-valuetext={`${tolerancesWords(cut)}: ${says}`}
      onKeyDown={press}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        event.currentTarget.focus();
      }}
      onPointerMove={drag}
    >
      <span className={styles.flag}>{shownTimes(cut)}</span>
    </div>
  );
}

function keyed(key: string, cut: number, limit: number): number | undefined {
  switch (key) {
    case "ArrowRight":
    case "ArrowUp":
      return cut + step;
    case "ArrowLeft":
    case "ArrowDown":
      return cut - step;
    case "PageUp":
      return cut + page;
    case "PageDown":
      return cut - page;
    case "Home":
      return least;
    case "End":
      return limit;
    default:
      return undefined;
  }
}
