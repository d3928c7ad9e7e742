// Builds the pages for `npm start`, unless they were built from the same sources before. Needs the packages.
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";
import { root } from "./prepare.mjs";

const sources = ["addin", "functions", "taskpane", "manifest", "package-lock.json", "webpack.config.js"];

/** The folder that holds the built pages. Rejects with what the build says when it fails. */
export async function buildPage() {
  const folder = path.join(root, "node_modules/.cache/measure-book-page");
  const stampFile = path.join(folder, "built-from");
  const stamp = stampOf(sources.map((name) => path.join(root, name)));
  if (existsSync(stampFile) && readFileSync(stampFile, "utf8") === stamp) return folder;

  console.log("Building the page (about a minute, only after a change) …");
  await build(folder);
  mkdirSync(folder, { recursive: true });
  writeFileSync(stampFile, stamp);
  return folder;
}

/** One hash over the names and contents of all files; pictures for readers are no part of the page. */
function stampOf(places) {
  const hash = createHash("sha256");
  const pictures = path.join(root, "manifest/screenshots");
  for (const file of places.flatMap(filesIn).filter((each) => !each.startsWith(pictures))) {
    hash.update(path.relative(root, file));
    hash.update(readFileSync(file));
  }
  return hash.digest("hex");
}

function filesIn(place) {
  if (statSync(place).isFile()) return [place];
  // Before Node.js 20.12 an entry calls its folder `path`.
  return readdirSync(place, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath ?? entry.path, entry.name))
    .sort();
}

async function build(folder) {
  const { default: webpack } = await import("webpack");
  const { default: config } = await import("../../webpack.config.js");
  const configs = await config({}, { mode: "production" });
  const compiler = webpack(configs.map((each) => ({ ...each, output: { ...each.output, path: folder } })));
  const stats = await new Promise((resolve, reject) => {
    compiler.run((error, result) => (error ? reject(error) : resolve(result)));
  });
  // The cache for the next build is written while closing.
  await new Promise((resolve) => compiler.close(resolve));
  if (stats.hasErrors()) throw new Error(stats.toString("errors-only"));
}
