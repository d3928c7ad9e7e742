// What `npm start` and `npm test` need before any package is there. No dependencies.
import { spawn } from "node:child_process";
import { existsSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");

/** Says what went wrong and what to do, and stops. */
export function fail(message) {
  console.error(`\n${message}`);
  process.exit(1);
}

export function requireNode() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major > 20 || (major === 20 && minor >= 9)) return;
  fail(
    `Measure Book needs Node.js 20.9 or later; this is ${process.versions.node}. Install a newer one from nodejs.org.`,
  );
}

/** Installs the packages of package-lock.json unless they are there and up to date. */
export async function ensurePackages() {
  if (packagesAreCurrent()) return;
  console.log(
    "Fetching the packages that Measure Book is built with (about a minute, only the first time) …",
  );
  const code = await run("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"]);
  if (code !== 0)
    fail(
      "The packages could not be fetched. Check that this computer is on the internet (or that npm’s proxy and " +
        "registry settings are right: npm config list), then run the same command again.",
    );
}

function packagesAreCurrent() {
  const marker = path.join(root, "node_modules/.package-lock.json");
  if (!existsSync(marker)) return false;
  const lock = path.join(root, "package-lock.json");
  return statSync(marker).mtimeMs >= statSync(lock).mtimeMs || sameLock(lock, marker);
}

/** A fresh checkout touches package-lock.json without changing it, so compare what the two locks hold. */
function sameLock(lock, marker) {
  const versions = (file) =>
    Object.entries(JSON.parse(readFileSync(file, "utf8")).packages)
      .filter(([name, entry]) => name !== "" && !entry.optional)
      .map(([name, entry]) => `${name}@${entry.version}`)
      .sort()
      .join();
  return versions(lock) === versions(marker);
}

/** Runs a command in the project’s folder with its output shown; resolves with the exit code. */
export function run(command, args, options = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      cwd: root,
      stdio: "inherit",
      shell: process.platform === "win32",
      ...options,
    });
    child.on("error", () => resolve(127));
    child.on("close", (code) => resolve(code ?? 1));
  });
}
