import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { KeyboardEvent, ReactNode } from "react";
import { useEffect, useLayoutEffect, useRef, useState } from "react";
import type { Match } from "../../addin/fit/match.ts";
import type { SoundRanks } from "../../addin/fit/restsOn.ts";
import { soundWords } from "../../addin/fit/restsOn.ts";
import type { Verdict } from "../../addin/fit/verdict.ts";
import { verdictOf } from "../../addin/fit/verdict.ts";
import { doubtSign } from "../ui/DoubtWords.tsx";
import { meaning } from "../ui/theme.ts";
import type { GridCell } from "./gridKeys.ts";
import { cellAfterKey } from "./gridKeys.ts";
import type { MatrixPart } from "./matrix.ts";
import { patternName } from "./patternName.ts";
import { verdictLooks } from "./verdictLooks.ts";
import { VerdictWords } from "./VerdictWords.tsx";
import { placesOf, scrollTo, spanInSight } from "./windowing.ts";

/** The least size of a cell, in CSS pixels; a name is as high, and so much wider. */
const leastCell = { width: 84, height: 44 } as const;
const nameShare = 108 / 84;

/** The longest verdict, in two lines. */
const longest = "too close\nto call";

const useStyles = makeStyles({
  box: {
    overflow: "auto",
    // Its fixed names lie over its cells, and over nothing outside.
    isolation: "isolate",
    maxHeight: "min(70vh, 560px)",
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    borderRadius: tokens.borderRadiusMedium,
    backgroundColor: tokens.colorNeutralBackground1,
    fontSize: tokens.fontSizeBase200,
    lineHeight: 1.25,
  },
  sheet: { position: "relative" },
  headings: { position: "sticky", top: 0, zIndex: 2 },
  row: { position: "absolute", left: 0, right: 0 },
  fixed: {
    position: "sticky",
    left: 0,
    zIndex: 1,
    height: "100%",
    borderRight: `1px solid ${tokens.colorNeutralStroke1}`,
  },
  each: {
    boxSizing: "border-box",
    padding: "4px 6px",
    display: "flex",
    alignItems: "center",
    overflow: "hidden",
    backgroundColor: tokens.colorNeutralBackground1,
    borderBottom: `1px solid ${tokens.colorNeutralStroke1}`,
  },
  placed: { position: "absolute", top: 0, height: "100%" },
  // Never seen: as large as a cell has to be for what it may hold.
  sample: { position: "absolute", visibility: "hidden", whiteSpace: "pre" },
  name: { fontWeight: 600, backgroundColor: tokens.colorNeutralBackground3 },
  clipped: {
    display: "-webkit-box",
    WebkitLineClamp: 2,
    WebkitBoxOrient: "vertical",
    overflow: "hidden",
    overflowWrap: "anywhere",
  },
  verdict: {
    gap: "4px",
    fontWeight: 600,
    cursor: "pointer",
    "&:hover": { backgroundColor: meaning.chalkGround },
    "&:focus-visible": { outline: `2px solid ${meaning.chalk}`, outlineOffset: "-2px" },
  },
  sign: { flexShrink: 0, width: "1em", textAlign: "center" },
  leaf: { color: meaning.leaf },
  brass: { color: meaning.brass },
  thread: { color: meaning.thread },
  quiet: { color: tokens.colorNeutralForeground3 },
  doubt: { marginLeft: "auto", alignSelf: "flex-start", color: meaning.brass },
  aside: { fontWeight: 400, color: tokens.colorNeutralForeground3 },
  pointed: { cursor: "pointer" },
  whole: { margin: 0, overflowWrap: "anywhere" },
  wholeName: { fontWeight: 600 },
});

/**
 * Patterns × figures with the verdict of each pair. Only what is in sight is drawn, so that a large wardrobe stays quick.
 * Arrow keys move from cell to cell; Enter opens the reasons. Below stands in full what the cell is about, since a name has two lines.
 */
export function MatrixGrid(props: {
  readonly match: Match;
  readonly part: MatrixPart;
  /** What rests on doubtful readings; not there while that is being looked for. */
  readonly sound: SoundRanks | undefined;
  /** Other verdicts are set back; `undefined` sets none back. */
  readonly wanted: Verdict | undefined;
  readonly at: GridCell;
  readonly onMove: (to: GridCell) => void;
  readonly onOpen: (pattern: number, figure: number) => void;
  /** Take the focus when it is shown: the user comes back to it. */
  readonly takesFocus: boolean;
}): ReactNode {
  const styles = useStyles();
  const { match, part, sound, wanted, onMove, onOpen, takesFocus } = props;
  const box = useRef<HTMLDivElement>(null);
  const sample = useRef<HTMLDivElement>(null);
  const cell = useCellSize(sample);
  const names = { width: Math.round(cell.width * nameShare), height: cell.height };
  const sight = useSight(box, names);
  const size = { rows: part.patterns.length, columns: part.figures.length };
  const at = {
    row: Math.min(props.at.row, size.rows - 1),
    column: Math.min(props.at.column, size.columns - 1),
  };
  const rows = placesOf(spanInSight(sight.top, sight.height, cell.height, size.rows), at.row);
  const columns = placesOf(spanInSight(sight.left, sight.width, cell.width, size.columns), at.column);
  const wantsFocus = useRef(takesFocus);

  useLayoutEffect(() => {
    const { current } = box;
    if (!wantsFocus.current || !current) return;
    wantsFocus.current = false;
    current.scrollTop = scrollTo(at.row, current.scrollTop, current.clientHeight - names.height, cell.height);
    current.scrollLeft = scrollTo(
      at.column,
      current.scrollLeft,
      current.clientWidth - names.width,
      cell.width,
    );
    current.querySelector<HTMLElement>("[tabindex='0']")?.focus({ preventScroll: true });
  });

  function onKeyDown(event: KeyboardEvent): void {
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      open(at);
      return;
    }
    const page = Math.max(1, Math.floor(sight.height / cell.height) - 1);
    const to = cellAfterKey(event.key, event.ctrlKey || event.metaKey, at, { ...size, page });
    if (!to) return;
    event.preventDefault();
    wantsFocus.current = true;
    onMove(to);
  }

  function open({ row, column }: GridCell): void {
    const pattern = part.patterns[row];
    const figure = part.figures[column];
    if (pattern === undefined || figure === undefined) return;
    onMove({ row, column });
    onOpen(pattern, figure);
  }

  const grid = (
    <div
      ref={box}
      className={styles.box}
      role="grid"
      aria-label="Verdict of every pattern on every figure"
      aria-rowcount={size.rows + 1}
      aria-colcount={size.columns + 1}
      aria-readonly
      onKeyDown={onKeyDown}
    >
      <div
        ref={sample}
        aria-hidden="true"
        className={mergeClasses(styles.each, styles.verdict, styles.sample)}
      >
        <span className={styles.sign}>✕</span>
        <span>{longest}</span>
      </div>
      <div
        role="presentation"
        className={styles.sheet}
        style={{
          width: names.width + size.columns * cell.width,
          height: names.height + size.rows * cell.height,
        }}
      >
        <div role="row" aria-rowindex={1} className={styles.headings} style={{ height: names.height }}>
          <div
            role="columnheader"
            aria-colindex={1}
            className={mergeClasses(styles.each, styles.name, styles.fixed)}
            style={{ width: names.width }}
          >
            Pattern
          </div>
          {columns.map((column) => {
            const name = match.figures[part.figures[column] ?? -1] ?? "";
            return (
              <div
                key={column}
                role="columnheader"
                aria-colindex={column + 2}
                className={mergeClasses(styles.each, styles.name, styles.placed, styles.pointed)}
                style={{ left: names.width + column * cell.width, width: cell.width }}
                title={name}
                onClick={() => {
                  onMove({ row: at.row, column });
                }}
              >
                <span className={styles.clipped}>{name}</span>
              </div>
            );
          })}
        </div>
        {rows.map((row) => {
          const p = part.patterns[row] ?? -1;
          const pattern = match.patterns[p];
          const name = pattern ? patternName(pattern) : "";
          return (
            <div
              key={row}
              role="row"
              aria-rowindex={row + 2}
              className={styles.row}
              style={{ top: names.height + row * cell.height, height: cell.height }}
            >
              <div
                role="rowheader"
                aria-colindex={1}
                className={mergeClasses(styles.each, styles.name, styles.fixed, styles.pointed)}
                style={{ width: names.width }}
                title={name}
                onClick={() => {
                  onMove({ row, column: at.column });
                }}
              >
                <span className={styles.clipped}>{name}</span>
              </div>
              {columns.map((column) => {
                const figure = part.figures[column] ?? -1;
                const verdict = match.verdict(p, figure);
                const doubt = sound && doubtWords(sound, p * match.figures.length + figure, verdict);
                const { sign, tone } = verdictLooks[verdict];
                const isAt = row === at.row && column === at.column;
                return (
                  <div
                    key={column}
                    role="gridcell"
                    aria-colindex={column + 2}
                    tabIndex={isAt ? 0 : -1}
                    aria-label={doubt}
                    title={doubt}
                    className={mergeClasses(
                      styles.each,
                      styles.placed,
                      styles.verdict,
                      styles[tone],
                      wanted !== undefined && verdict !== wanted && styles.aside,
                    )}
                    style={{ left: names.width + column * cell.width, width: cell.width }}
                    onClick={() => {
                      open({ row, column });
                    }}
                  >
                    <span className={styles.sign} aria-hidden="true">
                      {sign}
                    </span>
                    <span>{verdict}</span>
                    {doubt !== undefined && (
                      <span className={styles.doubt} aria-hidden="true">
                        {doubtSign}
                      </span>
                    )}
                  </div>
                );
              })}
            </div>
          );
        })}
      </div>
    </div>
  );
  const pattern = match.patterns[part.patterns[at.row] ?? -1];
  const figure = part.figures[at.column] ?? -1;
  return (
    <>
      {grid}
      {pattern && (
        <p className={styles.whole}>
          <span className={styles.wholeName}>{patternName(pattern)}</span> on{" "}
          <span className={styles.wholeName}>{match.figures[figure]}</span>:{" "}
          <VerdictWords verdict={match.verdict(part.patterns[at.row] ?? -1, figure)} />
        </p>
      )}
    </>
  );
}

/** “snug, doubtful: fits if mended”; nothing where the verdict rests on sound readings. */
function doubtWords({ rests, ranks }: SoundRanks, at: number, verdict: Verdict): string | undefined {
  if (!rests[at]) return undefined;
  const other = { verdict: verdictOf(ranks[at] ?? Number.NaN), isMended: rests[at] === 1 };
  return `${verdict}, doubtful: ${soundWords(other, verdict)}`;
}

interface Sight {
  readonly top: number;
  readonly left: number;
  /** Without the fixed names. */
  readonly width: number;
  readonly height: number;
}

/** How large a cell has to be for the longest verdict, in whole CSS pixels: letters may be larger, or farther apart, than usual. */
function useCellSize(sample: React.RefObject<HTMLElement | null>): {
  readonly width: number;
  readonly height: number;
} {
  const [size, setSize] = useState<{ readonly width: number; readonly height: number }>(leastCell);
  useLayoutEffect(() => {
    const { current } = sample;
    if (!current) return undefined;
    const measure = (): void => {
      const { width, height } = current.getBoundingClientRect();
      // Not shown at all, it has no size.
      if (width === 0) return;
      const next = {
        width: Math.max(leastCell.width, Math.ceil(width)),
        height: Math.max(leastCell.height, Math.ceil(height)),
      };
      setSize((before) => (before.width === next.width && before.height === next.height ? before : next));
    };
    measure();
    const resized = new ResizeObserver(measure);
    resized.observe(current);
    return () => {
      resized.disconnect();
    };
  }, [sample]);
  return size;
}

/** What of a box is in sight, kept up with scrolling and with its size. */
function useSight(
  box: React.RefObject<HTMLElement | null>,
  { width, height }: { readonly width: number; readonly height: number },
): Sight {
  const [sight, setSight] = useState<Sight>({ top: 0, left: 0, width: 640, height: 560 });
  useEffect(() => {
    const { current } = box;
    if (!current) return undefined;
    const look = (): void => {
      setSight({
        top: current.scrollTop,
        left: current.scrollLeft,
        width: Math.max(0, current.clientWidth - width),
        height: Math.max(0, current.clientHeight - height),
      });
    };
    look();
    const resized = new ResizeObserver(look);
    resized.observe(current);
    current.addEventListener("scroll", look, { passive: true });
    return () => {
      resized.disconnect();
      current.removeEventListener("scroll", look);
    };
  }, [box, width, height]);
  return sight;
}
