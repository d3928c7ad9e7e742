import type { AnswerTo, ExactTask, Solved } from "./task.ts";

export interface SolveOptions<T extends ExactTask = ExactTask> {
  /** Called with every better answer or bound, the greedy answer first. */
  readonly onProgress?: (answer: AnswerTo<T>) => void;
  /** Aborting ends the work at once; the best answer so far is kept. */
  readonly signal?: AbortSignal;
}

/**
 * Works out the fewest groups or base figures beside the page, which stays responsive.
 *
 * @returns the best answer; also after a limit or when cancelled
 * @throws {InputError} when the figures are too many or the reach is not above 0
 * @throws {DOMException} `AbortError` when cancelled before there was any answer
 */
export function solveInWorker<const T extends ExactTask>(
  task: T,
  options: SolveOptions<T> = {},
): Promise<Solved<AnswerTo<T>>> {
  void task;
  void options;
  return Promise.reject(new Error("not built yet"));
}
