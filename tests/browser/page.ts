import { mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { chromium } from "playwright-core";
import type { BrowserContext, Download, Page } from "playwright-core";
import { findBrowser } from "../programs.mjs";

export const quiet = [
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

/** Presses “Save .xlsx”, says for whom, and gives the download. */
export async function saveXlsx(page: Page, form: "formulas" | "values" = "formulas"): Promise<Download> {
  await page.getByRole("button", { name: "Save .xlsx" }).click();
  const name = form === "formulas" ? "With formulas, for Excel" : "Values, for every program";
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name }).click(),
  ]);
  return download;
}

/**
 * Presses what asks for a file, and chooses one. The browser is told before that its dialog will be answered, and has said that it
 * heard: a key that is pressed in the same moment can be quicker on a busy machine, and the dialog is then shown to nobody.
 */
export async function chooseFile(
  page: Page,
  name: string,
  bytes: Uint8Array,
  press: () => Promise<void>,
): Promise<void> {
  const asked = page.waitForEvent("filechooser");
  await page.evaluate(() => document.readyState);
  const [chooser] = await Promise.all([asked, press()]);
  await chooser.setFiles({ name, mimeType: "", buffer: Buffer.from(bytes) });
}

/** Opens a workbook with the button above the sheet. */
export function openFile(page: Page, name: string, bytes: Uint8Array): Promise<void> {
  return chooseFile(page, name, bytes, () => page.getByRole("button", { name: "Open .xlsx" }).click());
}

/** Waits until the first calculation has finished. */
export function ready(page: Page): Promise<void> {
  return page.locator("html[data-ready='true']").waitFor({ timeout: 90_000 });
}

/** Begins a book of one’s own, with empty sheets, and waits until Home tells of it; on a narrow page the pane is gone back to. */
export async function beginBook(
  page: Page,
  name: string,
  unit: "millimetres" | "centimetres" | "inches",
): Promise<void> {
  await page.getByRole("button", { name: "New book" }).click();
  await page.getByLabel("Name", { exact: true }).fill(name);
  await page.getByLabel("You measure in").selectOption(unit);
  await page.getByRole("button", { name: "Begin this book" }).click();
  // The pane shows the new book before it is calculated and kept, and what is said at the end takes the keyboard.
  await page.getByRole("button", { name: "New book", disabled: false }).waitFor();
  await page.getByText("Your new book is open.").waitFor();
  const pane = page.getByRole("button", { name: "Pane", exact: true });
  if (await pane.isVisible()) await pane.click();
  await page.getByText("headings and no figures yet").waitFor();
}

/**
 * A browser with a profile of its own, so that what the page keeps is found again after a reload.
 *
 * @param keepsPage whether the browser may keep the page itself for opening it without a network, megabytes that few tests need
 */
export async function newVisitor(
  size = { width: 1280, height: 800 },
  { keepsPage = false } = {},
): Promise<Visitor> {
  const profile = mkdtempSync(path.join(os.tmpdir(), "measure-book-profile-"));
  const executablePath = findBrowser();
  if (!executablePath) throw new Error("No browser was found. Run npm test, which fetches one.");
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    args: quiet,
    viewport: size,
    acceptDownloads: true,
    serviceWorkers: keepsPage ? "allow" : "block",
  });
  context.setDefaultTimeout(90_000);
  return {
    context,
    async open(address) {
      const page = await context.newPage();
      await page.goto(address);
      await ready(page);
      return page;
    },
    async close() {
      await context.close();
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
