import { useEffect, useState } from "react";
import { useSession } from "../shell/session.ts";
import type { Job, JobAnswer, JobMessage } from "./job.ts";
import { jobMessage } from "./job.ts";

/** Up to so many figures the work is done before anybody could notice. */
const mostAtOnce = 300;

/** How far a job is. */
export interface Working<T> {
  /** What came out; `undefined` while the work goes on, and when it failed or was cancelled. */
  readonly answer: T | undefined;
  readonly isWorking: boolean;
  readonly isCancelled: boolean;
  /** Why it could not be done, in words. */
  readonly failure: string | undefined;
  cancel(): void;
  again(): void;
}

/** What came out of a job, once it is done; one for all jobs of equal parts. */
interface Outcome {
  /** The first of them. */
  job?: Job;
  message?: JobMessage;
}

/** A function a kind, so that each kind has its own jobs that are kept. */
const outcomeOf: Readonly<Record<Job["kind"], () => Outcome>> = {
  check: () => ({}),
  explain: () => ({}),
  tree: () => ({}),
  cards: () => ({}),
  seats: () => ({}),
  map: () => ({}),
  next: () => ({}),
  pairs: () => ({}),
  doubtfulPairs: () => ({}),
  marks: () => ({}),
  sharing: () => ({}),
  doubt: () => ({}),
};

/**
 * Does a job, beside the page when there are many figures and only while the section is shown. Begins anew with a job of other
 * parts; one whose parts are the same objects as those of a job that is done, is done.
 *
 * @param pick what of the answer is wanted
 */
export function useJob<T>(job: Job | undefined, pick: (answer: JobAnswer) => T | undefined): Working<T> {
  const { book, isShown } = useSession();
  const outcome = job && book.once(outcomeOf[job.kind], ...Object.values(job));
  if (outcome) outcome.job ??= job;
  if (outcome && job.chart.figures.length <= mostAtOnce) outcome.message ??= jobMessage(job);
  const message = outcome?.message;
  const isDone = message !== undefined;
  const [, setShown] = useState<JobMessage>();
  const [cancelled, setCancelled] = useState<Outcome>();
  const isCancelled = outcome !== undefined && cancelled === outcome;

  useEffect(() => {
    const given = outcome?.job;
    if (!given || isCancelled || isDone || !isShown) return undefined;
    const finish = (data: JobMessage): void => {
      outcome.message = data;
      setShown(data);
    };
    const worker = new Worker(new URL("./jobWorker.ts", import.meta.url));
    worker.onmessage = ({ data }: MessageEvent<JobMessage>) => {
      finish(data);
      worker.terminate();
    };
    worker.onerror = () => {
      // Where the worker itself cannot be loaded, the page does the work.
      finish(jobMessage(given));
    };
    worker.postMessage(given);
    return () => {
      worker.terminate();
    };
  }, [outcome, isCancelled, isDone, isShown]);

  return {
    answer: message && message.kind !== "failed" ? pick(message) : undefined,
    isWorking: job !== undefined && !isDone && !isCancelled,
    isCancelled: !isDone && isCancelled,
    failure: message?.kind === "failed" ? message.why : undefined,
    cancel: () => {
      setCancelled(outcome);
    },
    again: () => {
      setCancelled(undefined);
    },
  };
}
