/**
 * Speed of the main calculation, side by side with other libraries on the same input: worst difference in tolerances of
 * every pair, and complete linkage. Times are processor time, so that other work on the machine counts little, and the
 * median of the runs. All work on the same task, absolute tolerances and no reading missing: the peers get the readings
 * divided by the tolerances, we divide them and look for gaps within the time that is taken. Fails when the answers differ. Peers that are not installed are said so.
 *
 *   npm run bench
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { agnes } from "ml-hclust";
import { randomFigures, tolerancesMm } from "./data.ts";
import { processorMs } from "./processorMs.ts";

/** What one library answered, and in what time. */
interface Answer {
  readonly name: string;
  readonly distancesMs: readonly number[];
  readonly linkageMs: readonly number[];
  readonly heights: readonly number[];
  /** Peak memory of its process. */
  readonly peakMb: number | undefined;
}

const here = fileURLToPath(new URL(".", import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), "measure-book-bench-"));
const width = tolerancesMm.length;

try {
  console.log(
    `${cpus()[0]?.model ?? "processor"}, ${String(cpus().length)} cores, Node.js ${process.versions.node}`,
  );
  const small = compare(1000, 50, [ours, scipy, rLanguage, mlHclust]);
  const large = compare(5000, 5, [ours, scipy, rLanguage]);
  const fromSmall = small.find(({ name }) => name === "Measure Book");
  const fromLarge = large.find(({ name }) => name === "Measure Book");
  if (fromSmall && fromLarge) {
    const twice = ourAnswer(10_000, 3, 0);
    console.log(
      `\nMeasure Book alone, 10,000 figures: distances ${ms(twice.distancesMs)}, linkage ${ms(twice.linkageMs)}, together ${ms([total(twice)])}.`,
    );
    console.log(
      `Its time grows with the power ${growth(fromLarge, twice, 2)} from 5,000 to 10,000 figures, and ${growth(fromSmall, fromLarge, 5)} from 1,000 to 5,000: ` +
        "up to 2,500 the groups are joined by vector instructions in memory that is kept, above that by plain loops in memory that is new.",
    );
  }
  const percentages = ourAnswer(5000, 3, 2);
  console.log(
    `With tolerances in percent too (no peer has them), 5,000 figures: distances ${ms(percentages.distancesMs)}, ` +
      `linkage ${ms(percentages.linkageMs)}.`,
  );
  for (const own of ["exact.ts", "match.ts", "grade.ts", "flags.ts"]) {
    const args = ["--expose-gc", "--import", "tsx", join(here, own)];
    if (spawnSync(process.execPath, args, { stdio: "inherit" }).status !== 0) {
      throw new Error(`tests/bench/${own} failed`);
    }
  }
} finally {
  rmSync(scratch, { recursive: true });
}

/** The power of the number of figures with which the time grows. */
function growth(from: Answer, to: Answer, times: number): string {
  return (Math.log(total(to) / total(from)) / Math.log(times)).toFixed(2);
}

/** Runs the libraries one after another, prints their table and checks that the heights agree. */
function compare(
  count: number,
  repeats: number,
  libraries: readonly ((count: number, repeats: number, file: string) => Answer | string)[],
): readonly Answer[] {
  const file = join(scratch, `${String(count)}.f64`);
  const scaled = randomFigures(count).map((row) => row.map((mm, c) => mm / tolerancesMm[c]!));
  writeFileSync(file, Float64Array.from(scaled.flat()));
  const answers: Answer[] = [];
  console.log(
    `\n${count.toLocaleString("en")} figures × ${String(width)} measures, processor time, median of the runs`,
  );
  console.log(row("", "distances", "linkage", "together", "times ours", "peak memory", "runs"));
  for (const library of libraries) {
    const answer = library(count, repeats, file);
    if (typeof answer === "string") {
      console.log(answer);
      continue;
    }
    answers.push(answer);
    const ratio = total(answer) / total(answers[0]!);
    console.log(
      row(
        answer.name,
        ms(answer.distancesMs),
        ms(answer.linkageMs),
        ms([total(answer)]),
        ratio.toFixed(2),
        answer.peakMb === undefined ? "" : `${answer.peakMb.toFixed(0)} MB`,
        String(answer.linkageMs.length),
      ),
    );
    checkHeights(answers[0]!, answer);
  }
  return answers;
}

function ours(count: number, repeats: number): Answer {
  return ourAnswer(count, repeats, 0);
}

function ourAnswer(count: number, repeats: number, percent: number): Answer {
  const output = run(process.execPath, ["--import", "tsx", join(here, "ours.ts"), count, repeats, percent]);
  if (output === undefined) throw new Error("tests/bench/ours.ts failed");
  return { ...readAnswer(output), name: "Measure Book" };
}

function scipy(count: number, repeats: number, file: string): Answer | string {
  for (const python of ["python3", "/usr/bin/python3"]) {
    const output = run(python, [join(here, "peer.py"), file, count, width, repeats]);
    if (output !== undefined) {
      const { version, ...answer } = readAnswer(output);
      return { ...answer, name: `SciPy ${version}` };
    }
  }
  return "SciPy: not installed here";
}

function rLanguage(count: number, repeats: number, file: string): Answer | string {
  const output = run("Rscript", [join(here, "peer.R"), file, count, width, Math.min(repeats, 5)]);
  if (output === undefined) return "R: not installed here";
  const [version = "", ...lines] = output.trim().split("\n");
  const [distancesMs = [], linkageMs = [], heights = [], memory = []] = lines.map((line) =>
    line.trim().split(/\s+/).map(Number),
  );
  return { name: `R ${version.trim()}`, distancesMs, linkageMs, heights, peakMb: memory[0] };
}

/** Its time grows with the cube of the number of figures, so it runs once. It is given the finished distances. */
function mlHclust(count: number): Answer {
  const rows = randomFigures(count).map((readings) => readings.map((mm, c) => mm / tolerancesMm[c]!));
  const begin = process.cpuUsage();
  const square = rows.map((a) =>
    rows.map((b) => a.reduce((worst, x, c) => Math.max(worst, Math.abs(x - b[c]!)), 0)),
  );
  const middle = process.cpuUsage();
  const root = agnes(square, { method: "complete", isDistanceMatrix: true });
  const end = process.cpuUsage();
  const heights: number[] = [];
  root.traverse((cluster) => {
    if (!cluster.isLeaf) heights.push(cluster.height);
  });
  return {
    name: "ml-hclust",
    distancesMs: [processorMs(begin, middle)],
    linkageMs: [processorMs(middle, end)],
    heights: heights.sort((a, b) => a - b),
    peakMb: undefined,
  };
}

/** The output of a program, or `undefined` when it is not there or fails. */
function run(program: string, args: readonly (string | number)[]): string | undefined {
  const { status, stdout } = spawnSync(program, args.map(String), {
    encoding: "utf8",
    maxBuffer: 2 ** 28,
    stdio: ["ignore", "pipe", "ignore"],
  });
  return status === 0 ? stdout : undefined;
}

function readAnswer(json: string): Omit<Answer, "name"> & { readonly version: string } {
  return JSON.parse(json);
}

function checkHeights(one: Answer, other: Answer): void {
  const worst = one.heights.reduce(
    (most, height, i) => Math.max(most, Math.abs(height - other.heights[i]!)),
    0,
  );
  if (one.heights.length === other.heights.length && worst < 1e-9) return;
  throw new Error(`The heights of ${one.name} and ${other.name} differ by up to ${String(worst)}.`);
}

function total(answer: Answer): number {
  return median(answer.distancesMs) + median(answer.linkageMs);
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return (sorted[Math.floor(middle)]! + sorted[Math.ceil(middle) - 1]!) / 2;
}

function ms(values: readonly number[]): string {
  const value = median(values);
  return `${value.toFixed(value < 100 ? 1 : 0)} ms`;
}

function row(name: string, ...cells: readonly string[]): string {
  return name.padEnd(16) + cells.map((cell) => cell.padStart(13)).join("");
}
