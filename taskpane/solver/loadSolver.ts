import { highsSolver } from "../../addin/similarity/fewest/highsSolver.ts";
import type { ProvingSolver } from "../../addin/similarity/fewest/provingSolver.ts";

/**
 * Loads HiGHS, which is large, on first use.
 *
 * @returns `undefined` where it cannot be loaded, for example without WebAssembly
 */
export async function loadSolver(): Promise<ProvingSolver | undefined> {
  try {
    const { default: loadHighs } = await import("highs");
    const file = new URL("highs/runtime", import.meta.url).href;
    return highsSolver(await loadHighs({ locateFile: () => file }));
  } catch {
    // The search of our own answers instead, and says when an answer is not proved.
    return undefined;
  }
}
