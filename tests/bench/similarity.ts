/**
 * Which figures share a body, and the tree of all: complete linkage by the worst difference in tolerances. The peers get the
 * readings divided by the tolerances, in memory; we divide them, and look for gaps, within the time that is taken. “From cells to
 * cells” is the worksheet function GROUPS as a cell calls it, names, words and base figures included. Run through
 * `npm run bench`.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { agnes } from "ml-hclust";
import { randomFigures, tolerancesMm } from "./data.ts";
import { processorMs } from "./processorMs.ts";

/** What one library answered, and in what time. */
interface Answer {
  readonly name: string;
  readonly version?: string;
  readonly treeMs?: readonly number[];
  readonly groupsMs?: readonly number[];
  /** From cells to cells. */
  readonly cellsMs?: readonly number[];
  readonly heights?: readonly number[];
  readonly groups?: readonly number[];
  /** Peak memory of its process. */
  readonly peakMb?: number | undefined;
}

const here = fileURLToPath(new URL(".", import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), "measure-book-bench-"));
const width = tolerancesMm.length;

try {
  const sizes = [
    { count: 1000, repeats: 30, withTree: true, peers: [scipy, rLanguage, mlHclust] },
    { count: 5000, repeats: 7, withTree: true, peers: [scipy, rLanguage] },
    { count: 20_000, repeats: 3, withTree: false, peers: [scipy] },
    { count: 100_000, repeats: 1, withTree: false, peers: [] },
  ];
  const own = sizes.map(({ count, repeats, withTree, peers }) => compare(count, repeats, withTree, peers));
  sizes.slice(1).forEach(({ count }, i) => {
    const from = sizes[i]!.count;
    const power = (key: "treeMs" | "groupsMs" | "cellsMs"): string => {
      const [before, after] = [own[i]![key], own[i + 1]![key]];
      if (!before || !after) return "";
      return (Math.log(median(after) / median(before)) / Math.log(count / from)).toFixed(2);
    };
    const tree = power("treeMs");
    console.log(
      `From ${number(from)} to ${number(count)} figures our time grows with the power ${power("groupsMs")} for groups, ${power("cellsMs")} from cells to cells${tree && `, ${tree} for the tree`}.`,
    );
  });
  const percent = ours("groups", 5000, 3, 2);
  const percentTree = ours("tree", 5000, 3, 2);
  console.log(
    `With tolerances in percent too (no peer has them), 5,000 figures: groups ${ms(percent.times)}, tree ${ms(percentTree.times)}.`,
  );
} finally {
  rmSync(scratch, { recursive: true });
}

type Peer = (count: number, repeats: number, file: string) => Answer | string;

/** Runs the libraries one after another, prints their table and checks that all answers agree. Returns ours. */
function compare(count: number, repeats: number, withTree: boolean, peers: readonly Peer[]): Answer {
  const file = join(scratch, `${String(count)}.f64`);
  const scaled = randomFigures(count).flatMap((row) => row.map((mm, c) => mm / tolerancesMm[c]!));
  writeFileSync(file, Float64Array.from(scaled));
  console.log(`\n${number(count)} figures × ${String(width)} measures`);
  console.log(row("", "groups", "cells to cells", "tree", "peak memory", "runs"));
  const groups = ours("groups", count, repeats);
  const cells = ours("cells", count, repeats);
  const tree = withTree ? ours("tree", count, repeats) : undefined;
  const own: Answer = {
    name: "Measure Book",
    groupsMs: groups.times,
    cellsMs: cells.times,
    groups: groups.groups ?? [],
    ...(tree && { treeMs: tree.times, heights: tree.heights ?? [] }),
    peakMb: groups.peakMb,
  };
  if (partition(own.groups!) !== partition(cells.groups ?? [])) {
    throw new Error("The worksheet function gives other groups.");
  }
  print(own);
  for (const peer of peers) {
    const answer = peer(count, repeats, file);
    if (typeof answer === "string") {
      console.log(answer);
      continue;
    }
    print(answer);
    checkSame(own, answer);
  }
  return own;
}

function print({ name, version = "", groupsMs, cellsMs, treeMs, peakMb }: Answer): void {
  console.log(
    row(
      `${name} ${version}`,
      ms(groupsMs),
      ms(cellsMs),
      ms(treeMs),
      peakMb === undefined ? "" : `${peakMb.toFixed(0)} MB`,
      String((groupsMs ?? treeMs ?? []).length),
    ),
  );
}

interface OwnAnswer {
  readonly times: readonly number[];
  readonly heights?: readonly number[];
  readonly groups?: readonly number[];
  readonly peakMb: number;
}

function ours(what: string, count: number, repeats: number, percent = 0): OwnAnswer {
  const output = run(process.execPath, [
    "--import",
    "tsx",
    join(here, "ours.ts"),
    what,
    count,
    repeats,
    percent,
  ]);
  if (output === undefined) throw new Error("tests/bench/ours.ts failed");
  return JSON.parse(output);
}

function scipy(count: number, repeats: number, file: string): Answer | string {
  for (const python of ["python3", "/usr/bin/python3"]) {
    const output = run(python, [join(here, "peer.py"), file, count, width, repeats]);
    if (output !== undefined) return { ...JSON.parse(output), name: "SciPy" };
  }
  return "SciPy: not installed here";
}

function rLanguage(count: number, repeats: number, file: string): Answer | string {
  const output = run("Rscript", [join(here, "peer.R"), file, count, width, Math.min(repeats, 5)]);
  if (output === undefined) return "R: not installed here";
  const [version = "", ...lines] = output.trim().split("\n");
  const [treeMs = [], groupsMs = [], heights = [], groups = [], memory = []] = lines.map((line) =>
    line.trim().split(/\s+/).map(Number),
  );
  return { name: "R", version: version.trim(), treeMs, groupsMs, heights, groups, peakMb: memory[0] };
}

/** Its time grows with the cube of the number of figures, so it runs once. It is given the finished distances. */
function mlHclust(count: number): Answer {
  const rows = randomFigures(count).map((readings) => readings.map((mm, c) => mm / tolerancesMm[c]!));
  const begin = process.cpuUsage();
  const square = rows.map((a) =>
    rows.map((b) => a.reduce((worst, x, c) => Math.max(worst, Math.abs(x - b[c]!)), 0)),
  );
  const root = agnes(square, { method: "complete", isDistanceMatrix: true });
  const end = process.cpuUsage();
  const heights: number[] = [];
  root.traverse((cluster) => {
    if (!cluster.isLeaf) heights.push(cluster.height);
  });
  return {
    name: "ml-hclust",
    treeMs: [processorMs(begin, end)],
    heights: heights.sort((a, b) => a - b),
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

/** The same groups where both tell them, and the same heights where both tell those. */
function checkSame(one: Answer, other: Answer): void {
  if (one.groups && other.groups && partition(one.groups) !== partition(other.groups)) {
    throw new Error(`${one.name} and ${other.name} find other groups.`);
  }
  if (!one.heights || !other.heights) return;
  const worst = one.heights.reduce(
    (most, height, i) => Math.max(most, Math.abs(height - other.heights![i]!)),
    0,
  );
  if (one.heights.length === other.heights.length && worst < 1e-9) return;
  throw new Error(`The heights of ${one.name} and ${other.name} differ by up to ${String(worst)}.`);
}

/** The groups, numbered anew in the order of their first members. */
function partition(groups: readonly number[]): string {
  const numbers = new Map<number, number>();
  return groups
    .map((group) => {
      const known = numbers.get(group) ?? numbers.size;
      numbers.set(group, known);
      return known;
    })
    .join();
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return (sorted[Math.floor(middle)]! + sorted[Math.ceil(middle) - 1]!) / 2;
}

function ms(values: readonly number[] | undefined): string {
  if (!values) return "";
  const value = median(values);
  return `${value.toFixed(value < 100 ? 1 : 0)} ms`;
}

function number(value: number): string {
  return value.toLocaleString("en");
}

function row(name: string, ...cells: readonly string[]): string {
  return name.padEnd(16) + cells.map((cell) => cell.padStart(16)).join("");
}
