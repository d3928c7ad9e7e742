import { useEffect, useState } from "react";
import { failureText } from "../shell/notice.ts";
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

/** Searches beside the page; begins anew with another task: give the same object as long as nothing has changed. */
export function useSolve<T extends ExactTask>(task: T | undefined): Solving<T> {
  const [state, setState] = useState<State<T>>();
  const [stopping, setStopping] = useState<AbortController>();
  useEffect(() => {
    if (!task) return undefined;
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
    }).then(show, (error: unknown) => {
      const isStopped = error instanceof DOMException && error.name === "AbortError";
      show(isStopped ? { ended: "cancelled" } : { failure: failureText(error) });
    });
    return () => {
      current = false;
      stop.abort();
    };
  }, [task]);
  const known = state?.task === task ? state : undefined;
  return {
    answer: known?.answer,
    ended: known?.ended,
    failure: known?.failure,
    stop: () => {
      stopping?.abort();
    },
  };
}
