import type { ChildProcess } from "node:child_process";
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import type { Page } from "playwright-core";
import { chromium } from "playwright-core";
import { afterEach, beforeEach, describe, expect, inject, it } from "vitest";
import { cellsField } from "../../addin/standalone/grid/cellsField.ts";
import { writeXlsx } from "../../addin/workbook/xlsx/writeXlsx.ts";
import { findBrowser } from "../programs.mjs";
import { openFile, quiet, ready } from "./page.ts";

/** Each takes some seconds: a few in every run, all with MEASURE_BOOK_CRASHES=50. */
const crashes = Number(process.env.MEASURE_BOOK_CRASHES ?? 6);

interface Killable {
  readonly page: Page;
  /** Ends the browser with all its processes, at once and without a word. */
  kill(): Promise<void>;
}

describe("a browser that is killed while one types", () => {
  let profile: string;
  let running: ChildProcess | undefined;

  beforeEach(() => {
    profile = mkdtempSync(path.join(os.tmpdir(), "measure-book-crash-"));
  });

  afterEach(async () => {
    await end(running);
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  });

  it(
    `loses nothing that was said to be kept, ${String(crashes)} times`,
    async () => {
      let said = await inBrowser(async ({ page }) => {
        await openSmallBook(page);
        return "first";
      });
      for (let i = 1; i <= crashes; i++) {
        const before = said;
        said = await inBrowser(async ({ page, kill }) => {
          await ready(page);
          expect(await newestText(page), `what was kept before crash ${String(i)}`).toContain(`"${before}"`);
          return typeUntilKilled(page, kill, i, before);
        });
      }
      await inBrowser(async ({ page }) => {
        await ready(page);
        expect(await newestText(page)).toContain(`"${said}"`);
      });
    },
    60_000 + crashes * 30_000,
  );

  async function inBrowser<T>(work: (browser: Killable) => Promise<T>): Promise<T> {
    const executable = findBrowser();
    if (!executable) throw new Error("No browser was found. Run npm test, which fetches one.");
    const port = path.join(profile, "DevToolsActivePort");
    rmSync(port, { force: true });
    running = spawn(
      executable,
      ["--headless=new", "--remote-debugging-port=0", `--user-data-dir=${profile}`, ...quiet, "about:blank"],
      { detached: true, stdio: "ignore" },
    );
    await expect
      .poll(() => existsSync(port) && readFileSync(port, "utf8").includes("\n"), { timeout: 30_000 })
      .toBe(true);
    const [number = ""] = readFileSync(port, "utf8").split("\n");
    const browser = await chromium.connectOverCDP(`http://127.0.0.1:${number}`);
    const context = browser.contexts()[0]!;
    context.setDefaultTimeout(90_000);
    const page = await context.newPage();
    await page.goto(inject("address"));
    try {
      return await work({ page, kill: () => end(running) });
    } finally {
      await end(running);
    }
  }
});

function end(process: ChildProcess | undefined): Promise<void> {
  return new Promise((resolve) => {
    if (process?.pid === undefined || process.exitCode !== null || process.signalCode !== null) {
      resolve();
      return;
    }
    process.once("exit", () => {
      resolve();
    });
    // The group that it leads, by its own number.
    globalThis.process.kill(-process.pid, "SIGKILL");
  });
}

async function openSmallBook(page: Page): Promise<void> {
  await ready(page);
  const { bytes } = await writeXlsx({ sheets: [{ name: "Sheet1", cells: [[{ value: "first" }]] }] });
  await openFile(page, "Small.xlsx", bytes);
  await page.getByText("“Small.xlsx” is open.").waitFor();
  await page.getByText(/^Kept in this browser/).waitFor();
}

/** Types one text after the other until the browser is gone; gives the last one that the page said is kept. */
async function typeUntilKilled(
  page: Page,
  kill: () => Promise<void>,
  round: number,
  before: string,
): Promise<string> {
  await page.evaluate(() => {
    const place = document.querySelector(".saved")!;
    const heard: string[] = [];
    (window as unknown as { heard: string[] }).heard = heard;
    new MutationObserver(() => heard.push(place.textContent)).observe(place, {
      childList: true,
      characterData: true,
      subtree: true,
    });
  });
  await page.getByRole("link", { name: "Skip to the sheet" }).focus();
  await page.keyboard.press("Enter");
  await page.waitForFunction((field) => document.activeElement?.matches(field), cellsField);
  // When it happens is by chance, between the first key and the third save.
  const killed = new Promise<void>((resolve, reject) => {
    setTimeout(() => {
      kill().then(resolve, reject);
    }, Math.random() * 3000);
  });
  let said = before;
  try {
    for (let i = 0; ; i++) {
      const text = `round ${String(round)}, text ${String(i)}`;
      const heard = await page.evaluate(() => (window as unknown as { heard: string[] }).heard.length);
      await page.keyboard.type(text);
      await page.keyboard.press("Enter");
      await page.waitForFunction(
        (from) => {
          const news = (window as unknown as { heard: string[] }).heard.slice(from);
          const keeping = news.findIndex((words) => words.startsWith("Keeping"));
          return keeping >= 0 && news.slice(keeping).some((words) => words.startsWith("Kept"));
        },
        heard,
        { polling: 20 },
      );
      said = text;
    }
  } catch {
    // The browser is gone.
  }
  await killed;
  return said;
}

/** The newest save of the book that was opened last. */
function newestText(page: Page): Promise<string> {
  return page.evaluate(
    () =>
      new Promise<string>((resolve, reject) => {
        const opening = indexedDB.open("measure-book");
        opening.onerror = () => {
          reject(new Error("The database did not open."));
        };
        opening.onsuccess = () => {
          const step = opening.result.transaction(["books", "versions"]);
          const books = step.objectStore("books").getAll();
          books.onsuccess = () => {
            const all = books.result as { openedAt: number; versions: { id: string }[] }[];
            const [last] = all.sort((a, b) => b.openedAt - a.openedAt);
            const save = step.objectStore("versions").get(last?.versions[0]?.id ?? "");
            save.onsuccess = () => {
              opening.result.close();
              resolve((save.result as { text: string }).text);
            };
          };
        };
      }),
  );
}
