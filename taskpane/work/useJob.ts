import { useEffect, useMemo, useState } from "react";
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

/**
 * Does a job, beside the page when there are many figures and only while the section is shown. Begins anew with another job:
 * give the same object as long as nothing has changed.
 *
 * @param pick what of the answer is wanted
 */
export function useJob<T>(job: Job | undefined, pick: (answer: JobAnswer) => T | undefined): Working<T> {
  const isSmall = job !== undefined && job.chart.figures.length <= mostAtOnce;
  const atOnce = useMemo(() => (isSmall ? jobMessage(job) : undefined), [isSmall, job]);
  const [later, setLater] = useState<{ readonly job: Job; readonly message: JobMessage }>();
  const [cancelled, setCancelled] = useState<Job>();
  const isCancelled = job !== undefined && cancelled === job;
  const isDone = later?.job === job;
  const { isShown } = useSession();

  useEffect(() => {
    if (!job || isSmall || isCancelled || isDone || !isShown) return undefined;
    const worker = new Worker(new URL("./jobWorker.ts", import.meta.url));
    worker.onmessage = ({ data }: MessageEvent<JobMessage>) => {
      setLater({ job, message: data });
      worker.terminate();
    };
    worker.onerror = () => {
      // Where the worker itself cannot be loaded, the page does the work.
      setLater({ job, message: jobMessage(job) });
    };
    worker.postMessage(job);
    return () => {
      worker.terminate();
    };
  }, [job, isSmall, isCancelled, isDone, isShown]);

  const message = isSmall ? atOnce : isDone ? later?.message : undefined;
  return {
    answer: message && message.kind !== "failed" ? pick(message) : undefined,
    isWorking: job !== undefined && !message && !isCancelled,
    isCancelled: !message && isCancelled,
    failure: message?.kind === "failed" ? message.why : undefined,
    cancel: () => {
      setCancelled(job);
    },
    again: () => {
      setCancelled(undefined);
    },
  };
}
