import type { CheckAnswer, CheckJob } from "../check/checkJob.ts";
import { doCheckJob } from "../check/checkJob.ts";
import type { ExplainAnswer, ExplainJob } from "../explain/explainCell.ts";
import { doExplainJob } from "../explain/explainCell.ts";
import type { GroupAnswer, GroupJob } from "../groups/jobs.ts";
import { doGroupJob } from "../groups/jobs.ts";
import { failureText } from "../shell/notice.ts";

/** Work of a section that takes long for thousands of figures: plain data, so that it can be passed to a worker. */
export type Job = CheckJob | ExplainJob | GroupJob;
export type JobAnswer = CheckAnswer | ExplainAnswer | GroupAnswer;

/** What a job ends with: the answer, or why there is none, in words. */
export type JobMessage = JobAnswer | { readonly kind: "failed"; readonly why: string };

export function jobMessage(job: Job): JobMessage {
  try {
    if (job.kind === "check") return doCheckJob(job);
    return job.kind === "explain" ? doExplainJob(job) : doGroupJob(job);
  } catch (error) {
    return { kind: "failed", why: failureText(error) };
  }
}
