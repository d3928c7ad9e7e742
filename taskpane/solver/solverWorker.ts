import { InputError } from "../../addin/measures/inputError.ts";
import { loadSolver } from "./loadSolver.ts";
import type { SolverMessage } from "./message.ts";
import { solveTask } from "./solveTask.ts";
import type { ExactTask } from "./task.ts";

/** Does one task beside the page and tells of every better answer. The page ends the worker to cancel. */
self.onmessage = async ({ data }: MessageEvent<ExactTask>) => {
  const tell = (message: SolverMessage): void => {
    self.postMessage(message);
  };
  try {
    const solver = await loadSolver();
    const solved = solveTask(data, solver, (answer) => {
      tell({ kind: "progress", answer });
    });
    tell({ kind: "done", solved });
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    tell({ kind: "failed", message, isInput: error instanceof InputError });
  }
};
