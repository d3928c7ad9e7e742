import type { ExactAnswer } from "../../addin/similarity/fewest/fewestShared.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import type { SolverMessage } from "./message.ts";
import { solveTask } from "./solveTask.ts";
import type { AnswerTo, ExactTask, Solved } from "./task.ts";

export interface SolveOptions<T extends ExactTask = ExactTask> {
  /** Called with every better answer or bound, the greedy answer first. */
  readonly onProgress?: (answer: AnswerTo<T>) => void;
  /** Aborting ends the work at once; the best answer so far is kept. */
  readonly signal?: AbortSignal;
  /** Begins a worker; the usual one when omitted. Returns `undefined` where there are no workers. */
  readonly begin?: () => Worker | undefined;
}

/**
 * Works out the fewest groups or base figures beside the page, which stays responsive. Without workers the search of our own
 * answers on the page, within a second or two for hundreds of figures; its answer is proved for small charts only.
 *
 * @returns the best answer; also after a limit or when cancelled
 * @throws {InputError} when the figures are too many or the reach is not above 0
 * @throws {DOMException} `AbortError` when cancelled before there was any answer
 */
export async function solveInWorker<const T extends ExactTask>(
  task: T,
  { onProgress, signal, begin = beginWorker }: SolveOptions<T> = {},
): Promise<Solved<AnswerTo<T>>> {
  signal?.throwIfAborted();
  const tell = (answer: ExactAnswer): void => {
    if (isAnswerTo(task, answer)) onProgress?.(answer);
  };
  const worker = begin();
  const solved = worker ? await inWorker(worker, task, tell, signal) : await onPage(task, tell, signal);
  const { answer, ended } = solved;
  if (!isAnswerTo(task, answer)) throw new TypeError("The worker answered another question.");
  return { answer, ended };
}

function isAnswerTo<T extends ExactTask>(task: T, answer: ExactAnswer): answer is AnswerTo<T> & ExactAnswer {
  return answer.kind === task.kind;
}

function beginWorker(): Worker | undefined {
  if (typeof Worker === "undefined") return undefined;
  return new Worker(new URL("./solverWorker.ts", import.meta.url));
}

function inWorker(
  worker: Worker,
  task: ExactTask,
  tell: (answer: ExactAnswer) => void,
  signal: AbortSignal | undefined,
): Promise<Solved> {
  let best: ExactAnswer | undefined;
  return new Promise<Solved>((resolve, reject) => {
    signal?.addEventListener("abort", () => {
      worker.terminate();
      if (best) resolve({ answer: best, ended: "cancelled" });
      else reject(new DOMException("Stopped before there was any answer.", "AbortError"));
    });
    worker.onmessage = ({ data }: MessageEvent<SolverMessage>) => {
      switch (data.kind) {
        case "progress":
          best = data.answer;
          tell(data.answer);
          break;
        case "done":
          resolve(data.solved);
          break;
        case "failed":
          reject(data.isInput ? new InputError(data.message) : new Error(data.message));
      }
    };
    worker.onerror = (event) => {
      // Where the worker itself cannot be loaded, the page does the work.
      onPage(task, tell, signal).then(resolve, () => {
        reject(new Error(event.message));
      });
    };
    worker.postMessage(task);
  }).finally(() => {
    worker.terminate();
  });
}

/** After the page was drawn once more, so that it can say that it is working. */
async function onPage(
  task: ExactTask,
  tell: (answer: ExactAnswer) => void,
  signal: AbortSignal | undefined,
): Promise<Solved> {
  await new Promise((resolve) => setTimeout(resolve, 20));
  signal?.throwIfAborted();
  return solveTask(task, undefined, tell);
}
