// `npm test`: fetches what the tests need, then runs all of them and closes with one line of counts.
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { ensurePackages, requireNode, run } from "../addin/standalone/prepare.mjs";
import { ensureBrowser, ensureLibreOffice, ensurePoppler } from "./programs.mjs";

requireNode();
await ensurePackages();
await ensureBrowser();
await ensureLibreOffice();
await ensurePoppler();

const steps = {
  "Types agree (tsc)": () => run("npx", ["tsc"]),
  "Lint rules hold (eslint)": () => run("npx", ["eslint", "."]),
  "Format is even (prettier)": () => run("npx", ["prettier", "--check", "--log-level=warn", "."]),
};

const failedSteps = [];
for (const [name, step] of Object.entries(steps)) {
  const held = (await step()) === 0;
  console.log(`${held ? "✓" : "✗"} ${name}`);
  if (!held) failedSteps.push(name);
}

const folder = mkdtempSync(path.join(os.tmpdir(), "measure-book-tests-"));
const report = path.join(folder, "report.json");
const code = await run("npx", [
  "vitest",
  "run",
  "--reporter=default",
  "--reporter=json",
  `--outputFile.json=${report}`,
]);
const { passed, failed, skipped } = counts(report);
rmSync(folder, { recursive: true, force: true });

const allPassed = passed + Object.keys(steps).length - failedSteps.length;
const allFailed = failed + failedSteps.length;
console.log(`\n${allPassed} passed, ${allFailed} failed, ${skipped} skipped`);
process.exit(code === 0 && allFailed === 0 && passed > 0 ? 0 : 1);

function counts(file) {
  try {
    const result = JSON.parse(readFileSync(file, "utf8"));
    const unread = result.testResults.filter(
      (each) => each.status === "failed" && each.assertionResults.length === 0,
    );
    return {
      passed: result.numPassedTests,
      failed: result.numFailedTests + unread.length,
      skipped: result.numPendingTests + result.numTodoTests,
    };
  } catch {
    return { passed: 0, failed: 1, skipped: 0 };
  }
}
