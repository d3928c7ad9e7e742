import loadHighs from "highs";
import { highsSolver } from "../../addin/similarity/fewest/highsSolver.ts";

/** HiGHS as the tests under Node.js load it: the package finds its own files. */
export const highs = highsSolver(await loadHighs());
