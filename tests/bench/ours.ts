/**
 * Our answer, in a process of its own so that its processor time and peak memory are its own.
 * Arguments: number of figures, repeats, percent of the tolerances. Prints JSON like peer.py.
 */
import { linkageInPlace } from "../../addin/similarity/linkage.ts";
import { toleranceDistances } from "../../addin/similarity/matrix.ts";
import { columnsOf, randomFigures } from "./data.ts";
import { processorMs } from "./processorMs.ts";

const [count = 0, repeats = 1, percent = 0] = process.argv.slice(2).map(Number);
const columns = columnsOf(randomFigures(count), percent);
const runs = Array.from({ length: repeats }, () => {
  const begin = process.cpuUsage();
  const distances = toleranceDistances(columns, count);
  const middle = process.cpuUsage();
  const merges = linkageInPlace(distances, "complete");
  const end = process.cpuUsage();
  return {
    distancesMs: processorMs(begin, middle),
    linkageMs: processorMs(middle, end),
    heights: merges.map(({ height }) => height),
  };
});
console.log(
  JSON.stringify({
    version: process.versions.node,
    distancesMs: runs.map((run) => run.distancesMs),
    linkageMs: runs.map((run) => run.linkageMs),
    heights: runs.at(-1)?.heights ?? [],
    peakMb: process.resourceUsage().maxRSS / 1024,
  }),
);
