import { mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { chromium } from "playwright-core";
import type { BrowserContext, Page } from "playwright-core";
import { findBrowser } from "../programs.mjs";

const quiet = [
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-gpu",
  "--disable-quic",
  "--disable-sync",
  "--no-first-run",
  "--no-sandbox",
];

export interface Visitor {
  readonly context: BrowserContext;
  /** Opens the page and waits until the first calculation has finished. */
  open(address: string): Promise<Page>;
  close(): Promise<void>;
}

/** A browser with a profile of its own, so that what the page keeps is found again after a reload. */
export async function newVisitor(size = { width: 1280, height: 800 }): Promise<Visitor> {
  const profile = mkdtempSync(path.join(os.tmpdir(), "measure-book-profile-"));
  const executablePath = findBrowser();
  if (!executablePath) throw new Error("No browser was found. Run npm test, which fetches one.");
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    args: quiet,
    viewport: size,
    acceptDownloads: true,
  });
  return {
    context,
    async open(address) {
      const page = await context.newPage();
      await page.goto(address);
      await page.locator("html[data-ready='true']").waitFor({ timeout: 90_000 });
      return page;
    },
    async close() {
      await context.close();
      rmSync(profile, { recursive: true, force: true });
    },
  };
}
