import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo } from "react";
import type { Fitting } from "../../addin/fit/match.ts";
import { soundRanks } from "../../addin/fit/restsOn.ts";
import { verdicts } from "../../addin/fit/verdict.ts";
import { useDoubts } from "../check/useCheck.ts";
import { useSession } from "../shell/session.ts";
import { doubtSign } from "../ui/DoubtWords.tsx";
import { FailureBox } from "../ui/FailureBox.tsx";
import { count } from "../ui/words.ts";
import { classesOf } from "./classesOf.ts";
import { FilterChoices } from "./FilterChoices.tsx";
import type { GridCell } from "./gridKeys.ts";
import type { MatrixFilter } from "./matrix.ts";
import { countRanks, countDoubtful, filterMatrix } from "./matrix.ts";
import { MatrixGrid } from "./MatrixGrid.tsx";
import type { Fit } from "./readFit.ts";
import { useMatch } from "./useMatch.ts";
import { WriteMatrix } from "./WriteMatrix.tsx";

const useStyles = makeStyles({
  text: { margin: 0 },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
});

/** What is remembered of the matrix while another question is asked. */
export interface MatrixState {
  readonly filter: MatrixFilter;
  readonly at: GridCell;
}

/** The verdict of every pattern on every figure, and writing it to a sheet. */
export function MatrixView(props: {
  readonly fit: Fit;
  readonly fitting: Fitting;
  readonly state: MatrixState;
  readonly onState: (state: MatrixState) => void;
  readonly onOpen: (pattern: number, figure: number) => void;
  readonly comesBack: boolean;
  /** Counts up when the user asks to write; 0 while they have not. */
  readonly writing: number;
}): ReactNode {
  const styles = useStyles();
  const { fit, fitting, state, onState, onOpen, comesBack, writing } = props;
  const { filter, at } = state;
  const { match, share, failure } = useMatch(fitting);
  const part = useMemo(() => match && filterMatrix(match, filter), [match, filter]);
  const doubtful = useDoubts(fit.used.figures, fitting.view.chart);
  const { book } = useSession();
  // For a moment the match may be that of the tables before.
  const isOfFitting = match?.figures === fitting.view.chart.figures && share === 1;
  const sound = isOfFitting && doubtful && book.once(soundRanks, fitting, match, doubtful, fit.rules);
  const inDoubt = useMemo(
    () => (match && part && sound ? countDoubtful(match, part, sound) : undefined),
    [match, part, sound],
  );
  const counts = useMemo(() => (match && part ? countRanks(match, part) : []), [match, part]);
  const says = verdicts
    .map((verdict, i) => ({ verdict, n: counts[i] ?? 0 }))
    .filter(({ verdict, n }) => n > 0 && (filter.verdict === undefined || verdict === filter.verdict))
    .map(({ verdict, n }) => `${n.toLocaleString("en-GB")} ${verdict}`)
    .join(", ");
  return (
    <>
      <FilterChoices
        filter={filter}
        classes={classesOf(fitting)}
        onChange={(next) => {
          onState({ filter: next, at: { row: 0, column: 0 } });
        }}
      />
      {share < 1 && (
        <p className={styles.text}>
          Judging {count(fitting.patterns.length, "pattern")} on {count(fitting.view.size, "figure")} …{" "}
          {Math.round(share * 100)} %
        </p>
      )}
      {failure !== undefined && <FailureBox what="Cannot be judged." why={failure} />}
      {match && part && (
        <>
          {part.patterns.length === 0 || part.figures.length === 0 ? (
            <p className={styles.text}>No pair is like that. Choose other garments or verdicts.</p>
          ) : (
            <>
              <p className={styles.text}>
                {count(part.patterns.length, "pattern")} on {count(part.figures.length, "figure")}: {says}.
              </p>
              {inDoubt && inDoubt.resting > 0 && (
                <p className={styles.text}>
                  {doubtSign} {count(inDoubt.resting, "verdict rests", "verdicts rest")} on doubtful readings;{" "}
                  {inDoubt.changing === 0 ? "none" : inDoubt.changing.toLocaleString("en-GB")} would be{" "}
                  {inDoubt.changing > 1 ? "others" : "another one"} if they were mended. Open one to see
                  which.
                </p>
              )}
              <p className={styles.quiet}>Arrow keys move from cell to cell. Enter or a click says why.</p>
              <MatrixGrid
                key={`${filter.garmentClass ?? ""} ${filter.verdict ?? ""}`}
                match={match}
                part={part}
                sound={sound || undefined}
                wanted={filter.verdict}
                at={at}
                takesFocus={comesBack}
                onMove={(to) => {
                  onState({ filter, at: to });
                }}
                onOpen={onOpen}
              />
            </>
          )}
          <WriteMatrix fit={fit} match={match} part={part} asked={writing} />
        </>
      )}
    </>
  );
}
