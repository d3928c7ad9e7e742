import { fewestBaseFigures, fewestSharedGroups } from "../../addin/similarity/fewest/fewestShared.ts";
import type { ExactAnswer } from "../../addin/similarity/fewest/fewestShared.ts";
import type { ProvingSolver } from "../../addin/similarity/fewest/provingSolver.ts";
import type { ExactTask, Solved } from "./task.ts";

const usualTimeLimitMs = 30_000;

/**
 * Does one task.
 *
 * @param solver without one the search of our own is used, which is proved for small charts only
 * @param onProgress called with every better answer or bound, the greedy answer first
 * @throws {InputError} when the figures are too many or the reach is not above 0
 */
export function solveTask(
  task: ExactTask,
  solver: ProvingSolver | undefined,
  onProgress: (answer: ExactAnswer) => void,
): Solved {
  const { figures, columns, reach = 1, timeLimitMs = usualTimeLimitMs } = task;
  const end = performance.now() + timeLimitMs;
  const options = { ...(solver && { solver }), leftMs: () => end - performance.now(), onProgress };
  const answer =
    task.kind === "groups"
      ? fewestSharedGroups({ figures }, columns, reach, options)
      : fewestBaseFigures({ figures }, columns, reach, options);
  return { answer, ended: isDone(answer) ? "proved" : "limit" };
}

function isDone(answer: ExactAnswer): boolean {
  return answer.isProved && (answer.kind === "groups" || answer.isLeastAlteration);
}
