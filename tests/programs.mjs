// Programs that some tests drive: found where they are, fetched where they are not.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import process from "node:process";
import { fail, root, run } from "../addin/standalone/prepare.mjs";

const require = createRequire(import.meta.url);

const browserPlaces = [
  process.env.CHROMIUM_PATH,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

const officePlaces = [
  process.env.SOFFICE_PATH,
  "/usr/bin/soffice",
  "/usr/local/bin/soffice",
  "/Applications/LibreOffice.app/Contents/MacOS/soffice",
  "C:\\Program Files\\LibreOffice\\program\\soffice.exe",
];

/** The path of a Chromium-family browser, or `undefined`. */
export function findBrowser() {
  return firstThatExists(browserPlaces) ?? firstThatExists([downloadedBrowser()]);
}

/** The path of LibreOffice’s `soffice`, or `undefined`. */
export function findLibreOffice() {
  return firstThatExists(officePlaces);
}

export async function ensureBrowser() {
  if (findBrowser()) return;
  console.log("Fetching a browser for the browser tests …");
  await installDebian("chromium");
  if (findBrowser()) return;
  await run(process.execPath, [require.resolve("playwright-core/cli.js"), "install", "chromium"]);
  if (!findBrowser())
    fail(
      "The browser tests need Chromium, Chrome or Edge. Install one, or set CHROMIUM_PATH to it, and run npm test again.",
    );
}

export async function ensureLibreOffice() {
  if (findLibreOffice()) return;
  console.log("Fetching LibreOffice, which checks the saved .xlsx files …");
  await installDebian("libreoffice-calc");
  if (!findLibreOffice())
    fail(
      "The tests of saved .xlsx files need LibreOffice. Install it, or set SOFFICE_PATH to its soffice, and run npm test again.",
    );
}

/** Poppler reads saved PDFs back. */
export async function ensurePoppler() {
  if (hasPoppler()) return;
  console.log("Fetching Poppler, which reads saved PDFs back …");
  await installDebian("poppler-utils");
  if (!hasPoppler())
    fail(
      "The tests of saved PDFs need Poppler (pdftotext, pdffonts, pdfinfo). Install poppler-utils and run npm test again.",
    );
}

function hasPoppler() {
  return !spawnSync("pdftotext", ["-v"]).error;
}

function firstThatExists(places) {
  return places.find((place) => place && existsSync(place));
}

function downloadedBrowser() {
  try {
    return require("playwright-core").chromium.executablePath();
  } catch {
    return undefined;
  }
}

/** Installs a package on Debian and its kin when allowed to without asking; elsewhere does nothing. */
async function installDebian(name) {
  if (!existsSync("/usr/bin/apt-get")) return;
  const asRoot = process.getuid?.() === 0 ? [] : ["sudo", "-n"];
  const apt = (...args) => {
    const [command, ...rest] = [...asRoot, "apt-get", "-qq", "-y", ...args];
    return run(command, rest, { cwd: root, env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } });
  };
  await apt("update");
  await apt("install", "--no-install-recommends", name);
}
