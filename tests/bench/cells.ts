/**
 * Every worksheet function from the cells that it is given to the cells that it gives, as a cell calls it: first with a chart in
 * which one name has just changed, then again with the same one, as the next formula of a workbook does. Times are processor
 * time, the median of the runs; the power is that with which the first time grows with the number of figures.
 *
 *   node --import tsx tests/bench/cells.ts
 */
import { descriptors } from "../../functions/all.ts";
import { cellCalls, rangeCalls } from "./calls.ts";
import { processorMs } from "./processorMs.ts";

const [few, many] = [500, 2000];
const runs = 7;

function timed(work: () => unknown): number {
  const begin = process.cpuUsage();
  work();
  return processorMs(begin, process.cpuUsage());
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}

const ms = (value: number): string => `${value.toFixed(value < 10 ? 2 : value < 100 ? 1 : 0)} ms`;
const line = (name: string, ...cells: readonly string[]): string =>
  name.padEnd(14) + cells.map((cell) => cell.padStart(14)).join("");

console.log(
  `\nFunctions of ranges, from cells to cells: ${String(few)} and ${String(many)} figures (columns of as many readings)`,
);
console.log(line("", String(few), String(many), "again", "power"));
for (const { name, compute } of descriptors) {
  const callOf = rangeCalls[name];
  if (!callOf) {
    if (!cellCalls[name]) throw new Error(`${name} has no line.`);
    continue;
  }
  const times = [few, many].map((count) => {
    const each = Array.from({ length: runs }, (_, run) => {
      const args = callOf(count, run);
      const same = structuredClone(args);
      return { first: timed(() => compute(args)), again: timed(() => compute(same)) };
    });
    return { first: median(each.map(({ first }) => first)), again: median(each.map(({ again }) => again)) };
  });
  const [small, large] = [times[0]!, times[1]!];
  const power = Math.log(large.first / small.first) / Math.log(many / few);
  console.log(line(name, ms(small.first), ms(large.first), ms(large.again), power.toFixed(2)));
}

const calls = 20_000;
console.log(`\nFunctions of single cells: ${calls.toLocaleString("en")} formulas in a column`);
for (const { name, compute } of descriptors) {
  const callOf = cellCalls[name];
  if (!callOf) continue;
  const column = () => {
    for (let i = 0; i < calls; i++) compute(callOf(i));
  };
  const each = median(Array.from({ length: runs }, () => timed(column)));
  console.log(line(name, ms(each), `${((1000 * each) / calls).toFixed(2)} µs each`));
}
