import type { Job } from "./job.ts";
import { jobMessage } from "./job.ts";

/** Does one job beside the page. */
self.onmessage = ({ data }: MessageEvent<Job>) => {
  self.postMessage(jobMessage(data));
};
