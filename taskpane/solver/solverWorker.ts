import { InputError } from "../../addin/measures/inputError.ts";
import { highsSolver } from "../../addin/similarity/fewest/highsSolver.ts";
import type { ProvingSolver } from "../../addin/similarity/fewest/provingSolver.ts";
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

/**
 * Loads HiGHS, which is large, on first use.
 *
 * @returns `undefined` where it cannot be loaded, for example without WebAssembly
 */
async function loadSolver(): Promise<ProvingSolver | undefined> {
  try {
    const { default: loadHighs } = await import("highs");
    const file = new URL("highs/runtime", import.meta.url).href;
    return highsSolver(await loadHighs({ locateFile: () => file }));
  } catch {
    // The search of our own answers instead, and says when an answer is not proved.
    return undefined;
  }
}
