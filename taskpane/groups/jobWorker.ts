import { jobMessage } from "./jobMessage.ts";
import type { Job } from "./jobs.ts";

/** Does one job beside the page. */
self.onmessage = ({ data }: MessageEvent<Job>) => {
  self.postMessage(jobMessage(data));
};
