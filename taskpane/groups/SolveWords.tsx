import { Button, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { doubtSign } from "../ui/DoubtWords.tsx";
import { FailureBox } from "../ui/FailureBox.tsx";
import type { ExactTask } from "../solver/task.ts";
import { count } from "../ui/words.ts";
import type { Solving } from "./useSolve.ts";

const useStyles = makeStyles({
  box: { display: "flex", flexWrap: "wrap", alignItems: "center", gap: "8px" },
  text: { margin: 0 },
});

/** How far the search for the fewest is, what it has proved, and a way to end it. */
export function SolveWords<T extends ExactTask>(props: {
  readonly solving: Solving<T>;
  /** What is looked for, one of them: “group”, “house model” */
  readonly what: string;
  /** “300 figures” */
  readonly many: string;
}): ReactNode {
  const styles = useStyles();
  const { solving, what, many } = props;
  const { answer, ended, failure, stop } = solving;
  if (failure !== undefined) return <FailureBox what="Could not be found." why={failure} />;
  const bounds = answer && boundsWords(answer, what);
  return (
    <div className={styles.box} role="status">
      <p className={styles.text}>
        {ended === undefined
          ? `Looking for the fewest ${what}s for ${many} … ${bounds === undefined ? "" : `So far ${bounds}.`}`
          : endWords(ended, bounds, what)}
      </p>
      {ended === undefined && (
        <Button size="small" onClick={stop}>
          {answer ? "Stop, this will do" : "Cancel"}
        </Button>
      )}
    </div>
  );
}

/** What comes of it with the doubtful readings mended; nothing where there is none. */
export function MendedWords<T extends ExactTask>(props: {
  readonly solving: Solving<T> | undefined;
  readonly what: string;
}): ReactNode {
  const styles = useStyles();
  const { solving, what } = props;
  if (!solving || solving.failure !== undefined) return null;
  const { answer, ended } = solving;
  return (
    <p className={styles.text} role="status">
      {doubtSign}{" "}
      {ended !== undefined && answer
        ? `With the doubtful readings mended: ${boundsWords(answer, what)}.`
        : `Looking for the fewest ${what}s with the doubtful readings mended …`}
    </p>
  );
}

interface Bounds {
  readonly count: number;
  readonly atLeast: number;
}

function boundsWords({ count: found, atLeast }: Bounds, what: string): string {
  return found === atLeast
    ? `${count(found, what)}, and fewer are impossible`
    : `${count(found, what)}; fewer than ${String(atLeast)} are impossible`;
}

function endWords(ended: "proved" | "limit" | "cancelled", bounds: string | undefined, what: string): string {
  if (bounds === undefined) return `Cancelled before any ${what} was found.`;
  switch (ended) {
    case "proved":
      return `✓ Proved: ${bounds}.`;
    case "limit":
      return `Stopped when the time was up, at ${bounds}. There may be a better answer in between.`;
    case "cancelled":
      return `Stopped at ${bounds}. There may be a better answer in between.`;
  }
}
