/**
 * Speed as a user meets it, side by side with other libraries where there are some. Times are processor time, so that other work on
 * the machine counts little, and the median of the runs. Fails when the answers differ.
 *
 *   npm run bench
 */
import { spawnSync } from "node:child_process";
import { cpus } from "node:os";
import { fileURLToPath } from "node:url";

console.log(
  `${cpus()[0]?.model ?? "processor"}, ${String(cpus().length)} cores, Node.js ${process.versions.node}`,
);
const parts = [
  "cells.ts",
  "similarity.ts",
  "exact.ts",
  "match.ts",
  "grade.ts",
  "flags.ts",
  "slips.ts",
  "sureness.ts",
  "opening.ts",
];
for (const part of parts) {
  const file = fileURLToPath(new URL(part, import.meta.url));
  const args = ["--expose-gc", "--import", "tsx", file];
  if (spawnSync(process.execPath, args, { stdio: "inherit" }).status !== 0) {
    throw new Error(`tests/bench/${part} failed`);
  }
}
