// `npm test`: fetches what the tests need, then runs all of them and closes with one line of counts.
import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { ensurePackages, requireNode, root, run } from "../addin/standalone/prepare.mjs";
import { ensureBrowser, ensureLibreOffice, ensurePoppler } from "./programs.mjs";

requireNode();
await ensurePackages();
await ensureBrowser();
await ensureLibreOffice();
await ensurePoppler();

const folder = mkdtempSync(path.join(os.tmpdir(), "measure-book-tests-"));
const [aside, browser] = await Promise.all([besideTheBrowser(), vitest(run, "browser")]);
rmSync(folder, { recursive: true, force: true });

const all = [...aside, browser];
const sum = (key) => all.reduce((total, each) => total + each[key], 0);
// Last, so that whoever reads only the end sees what to mend.
for (const each of all.flatMap(({ failures }) => failures)) console.log(`\n✗ ${each}`);
console.log(`\n${sum("passed")} passed, ${sum("failed")} failed, ${sum("skipped")} skipped`);
process.exit(all.every(({ held }) => held) && sum("failed") === 0 ? 0 : 1);

/** What needs no browser, one after the other in what the browser’s tests leave of the processor, and shown as it ends. */
async function besideTheBrowser() {
  return [
    await step("Types agree (tsc)", ["tsc"]),
    await step("Lint rules hold (eslint)", ["eslint", "."]),
    await step("Format is even (prettier)", ["prettier", "--check", "--log-level=warn", "."]),
    await vitest(runAside, "engine", "unit"),
  ];
}

async function step(name, args) {
  const held = (await runAside("npx", args)) === 0;
  console.log(`${held ? "✓" : "✗"} ${name}`);
  return { held, passed: Number(held), failed: Number(!held), skipped: 0, failures: held ? [] : [name] };
}

async function vitest(runIt, ...projects) {
  const report = path.join(folder, `${projects.join("-")}.json`);
  const named = projects.map((name) => `--project=${name}`);
  const code = await runIt("npx", [
    "vitest",
    "run",
    ...named,
    "--reporter=default",
    "--reporter=json",
    `--outputFile.json=${report}`,
  ]);
  const counted = counts(report);
  const held = code === 0 && counted.passed > 0;
  if (!held && !counted.failures.length)
    counted.failures.push(`${projects.join(" and ")}: ended with ${code}`);
  return { held, ...counted };
}

/** Runs a command that gives way to others; what it says is shown at once when it ends. Resolves with the exit code. */
function runAside(command, args) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: root, shell: process.platform === "win32" });
    if (child.pid) os.setPriority(child.pid, os.constants.priority.PRIORITY_LOW);
    let said = "";
    for (const stream of [child.stdout, child.stderr])
      stream.setEncoding("utf8").on("data", (text) => (said += text));
    child.on("error", () => resolve(127));
    child.on("close", (code) => {
      process.stdout.write(said);
      resolve(code ?? 1);
    });
  });
}

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
      failures: [
        ...result.testResults.flatMap((file) =>
          file.assertionResults
            .filter(({ status }) => status === "failed")
            .map((test) => said(file.name, test.fullName, test.failureMessages.join("\n"))),
        ),
        ...unread.map((file) => said(file.name, "could not be run", file.message)),
      ],
    };
  } catch (error) {
    return { passed: 0, failed: 1, skipped: 0, failures: [`No report could be read: ${error.message}`] };
  }
}

/** A failure in few lines: where it stands in the project, not the way through the packages. */
function said(file, test, why) {
  const lines = why.split("\n").filter((line) => !/^\s+at .*node_modules/.test(line));
  return [`${path.relative(root, file)}: ${test}`, ...lines].join("\n").trimEnd();
}
