import { failureText } from "../notice.ts";
import type { Job, JobAnswer } from "./jobs.ts";
import { doJob } from "./jobs.ts";

/** What a job ends with: the answer, or why there is none, in words. */
export type JobMessage = JobAnswer | { readonly kind: "failed"; readonly why: string };

export function jobMessage(job: Job): JobMessage {
  try {
    return doJob(job);
  } catch (error) {
    return { kind: "failed", why: failureText(error) };
  }
}
