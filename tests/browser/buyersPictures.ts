import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { newVisitor } from "./page.ts";
import { smallPng } from "./smallPng.ts";

/**
 * Pictures of what buyers read, from the page that is served: the saved file opened from the disk, the first page of the saved
 * PDF, drawn by poppler, and the sheet in the workbook. Prints how large the files are.
 *
 * @param keep gets each picture with its name
 */
export async function takeBuyersPictures(
  address: string,
  keep: (name: string, picture: Buffer) => Promise<void>,
): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), "measure-book-pictures-"));
  const visitor = await newVisitor({ width: 1280, height: 800 });
  try {
    const page = await visitor.open(address);
    await page.getByLabel("Sections").getByRole("button", { name: "Publish", exact: true }).click();
    await page.getByRole("region", { name: "What buyers will read" }).waitFor();
    await page.locator(".pane summary", { hasText: "Title and maker" }).click();
    await page.getByLabel("Title", { exact: true }).fill("Who wears what");
    await page.getByLabel("Maker’s line", { exact: true }).fill("The workshop at Ottermere");

    const html = await saved(page, folder, "Save page");
    const pdf = await saved(page, folder, "Save as PDF");
    await page.getByRole("button", { name: "Write it" }).click();
    await page.getByText("The published chart is on the sheets").waitFor();
    await page.locator(".place").getByText("The chart", { exact: true }).last().click();
    // The grid draws on a canvas, which no locator can wait for: two frames later it stands.
    await page.evaluate(
      () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
    );
    await keep("published-sheet.png", await smallPng(visitor.context, await page.screenshot()));

    const reader = await visitor.context.newPage();
    await reader.goto(pathToFileURL(html).href);
    await reader.locator("#unit").selectOption("mm");
    const typed = { bustGirth: "182", waistGirth: "134", hipGirth: "194", headGirth: "165" };
    for (const [id, text] of Object.entries(typed)) await reader.locator(`#m-${id}`).fill(text);
    await reader.locator("#buyer").scrollIntoViewIfNeeded();
    await reader.evaluate(() => {
      document.querySelector("#buyer")?.scrollIntoView();
    });
    await keep("published-page.png", await smallPng(visitor.context, await reader.screenshot()));

    const drawn = path.join(folder, "page");
    execFileSync("pdftoppm", ["-r", "96", "-png", "-f", "1", "-l", "1", "-singlefile", pdf, drawn]);
    await keep("published-pdf.png", await smallPng(visitor.context, readFileSync(`${drawn}.png`)));
    for (const file of [html, pdf])
      console.log(`${path.basename(file)}: ${String(Math.round(statSync(file).size / 1000))} kB`);
  } finally {
    await visitor.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function saved(page: Page, folder: string, button: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: button }).click(),
  ]);
  const file = path.join(folder, download.suggestedFilename());
  await download.saveAs(file);
  await page.getByText(`The file ${download.suggestedFilename()} is handed to your browser`).waitFor();
  return file;
}
