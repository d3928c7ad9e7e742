import { useEffect, useState } from "react";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { solveInWorker } from "../solver/solveInWorker.ts";
import type { AnswerTo, ExactTask, Solved } from "../solver/task.ts";

/** How far an exact search is. */
export interface Solving<T extends ExactTask> {
  /** The best answer so far; it may get better while the search goes on. */
  readonly answer: AnswerTo<T> | undefined;
  /** Why the search ended; `undefined` while it goes on. */
  readonly ended: Solved["ended"] | undefined;
  readonly failure: string | undefined;
  /** Ends the search and keeps the best answer so far. */
  stop(): void;
}

interface State<T extends ExactTask> {
  readonly task: T;
  readonly answer?: AnswerTo<T>;
  readonly ended?: Solved["ended"];
  readonly failure?: string;
}

/** Where the end of a search is kept, for all tasks of equal parts. */
interface Kept<T extends ExactTask> {
  solved?: Solved<AnswerTo<T>>;
}

function nothingYet<T extends ExactTask>(): Kept<T> {
  return {};
}

/**
 * Searches beside the page; begins anew with another task: give the same object as long as nothing has changed. What has been
 * searched to the end is not searched again.
 */
export function useSolve<T extends ExactTask>(task: T | undefined): Solving<T> {
  const { book } = useSession();
  const kept =
    task && book.once(nothingYet<T>, task.kind, task.figures, task.columns, task.reach, task.timeLimitMs);
  const isSolved = kept?.solved !== undefined;
  const [state, setState] = useState<State<T>>();
  const [stopping, setStopping] = useState<AbortController>();
  useEffect(() => {
    if (!task || !kept || isSolved) return undefined;
    const stop = new AbortController();
    let current = true;
    setStopping(stop);
    const show = (next: Omit<State<T>, "task">): void => {
      if (current) setState({ task, ...next });
    };
    solveInWorker(task, {
      onProgress: (answer) => {
        show({ answer });
      },
      signal: stop.signal,
    }).then(
      (solved) => {
        if (solved.ended !== "cancelled") kept.solved = solved;
        show(solved);
      },
      (error: unknown) => {
        const isStopped = error instanceof DOMException && error.name === "AbortError";
        show(isStopped ? { ended: "cancelled" } : { failure: failureText(error) });
      },
    );
    return () => {
      current = false;
      stop.abort();
    };
  }, [task, kept, isSolved]);
  const going = state?.task === task ? state : undefined;
  const known = kept?.solved ?? going;
  return {
    answer: known?.answer,
    ended: known?.ended,
    failure: going?.failure,
    stop: () => {
      stopping?.abort();
    },
  };
}
