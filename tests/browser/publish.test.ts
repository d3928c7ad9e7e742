import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import type { Page } from "playwright-core";
import { chromium } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { demoWorkbook } from "../../addin/demo/demoWorkbook.ts";
import { matchAll, prepareFitting } from "../../addin/fit/match.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { readPatterns } from "../../addin/chart/readPatterns.ts";
import { cellName } from "../../addin/workbook/address.ts";
import { findBrowser } from "../programs.mjs";
import { demo, demoTables } from "../publish/published.ts";
import { faults } from "./faults.ts";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { newVisitor, quiet, ready } from "./page.ts";

const folder = mkdtempSync(path.join(os.tmpdir(), "measure-book-published-"));
const file = path.join(folder, "published.html");

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

describe("the section Publish, on the page without Excel", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
    await page.getByLabel("Sections").getByRole("button", { name: "Publish" }).click();
    await page.getByRole("region", { name: "What buyers will read" }).waitFor();
  });

  afterAll(() => visitor.close());

  const pane = () => page.locator(".pane");

  it("saves a page from the demo in less than a minute of pressing", async () => {
    const began = Date.now();
    await pane().locator("summary", { hasText: "Title and maker" }).click();
    await pane().getByLabel("Title", { exact: true }).fill("Ottermere: who wears what");
    await pane().locator("summary", { hasText: "What buyers read" }).click();
    await page.getByLabel("Publish readings that Check doubts, with a mark").check();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save page" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("ottermere-who-wears-what.html");
    await download.saveAs(file);
    expect(Date.now() - began).toBeLessThan(60_000);
    await page.getByText(/The file ottermere-who-wears-what\.html is handed to your browser/).waitFor();
  });

  it("saves what is set when it is pressed, be what is shown a moment behind", async () => {
    const title = pane().getByLabel("Title", { exact: true });
    const set = await title.inputValue();
    await title.focus();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      // The page has no moment to itself between the last key and the press.
      page.evaluate(async () => {
        const field = document.activeElement;
        const save = [...document.querySelectorAll("button")].find(
          ({ textContent }) => textContent === "Save page",
        );
        if (!(field instanceof HTMLInputElement)) throw new Error("No field has the keyboard.");
        Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set?.call(field, "Set last");
        field.dispatchEvent(new InputEvent("input", { bubbles: true }));
        await Promise.resolve();
        save?.click();
      }),
    ]);
    expect(download.suggestedFilename()).toBe("set-last.html");
    await title.fill(set);
  });

  it("saves a PDF", async () => {
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save as PDF" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("ottermere-who-wears-what.pdf");
    await download.saveAs(path.join(folder, "published.pdf"));
    expect(readFileSync(path.join(folder, "published.pdf")).subarray(0, 5).toString()).toBe("%PDF-");
  });

  it("gives the words under a pattern", async () => {
    await pane().getByLabel("Pattern", { exact: true }).selectOption("D-1");
    const words = page.getByLabel("Words for D-1");
    await expect.poll(() => words.inputValue()).toMatch(/^Drafted for Ardwen\. Also fits .*\. Does not fit /);
    await pane().getByLabel("Form", { exact: true }).selectOption("table");
    await expect
      .poll(() => words.inputValue())
      .toMatch(/^Pattern\tFigure\tVerdict\tWhy, or what to change\nD-1\tArdwen\tfits/);
  });

  it("chooses figures by their body and by several columns", async () => {
    const shown = page.getByRole("region", { name: "What buyers will read" });
    await pane().locator("summary", { hasText: "Figures" }).first().click();
    await pane().getByLabel("Ardwen, Dovelle, Elmory, Fennick", { exact: true }).check();
    await shown.getByText(/^4 figures in 1 row/).waitFor();
    await pane().getByLabel("Ardwen, Dovelle, Elmory, Fennick", { exact: true }).uncheck();
    await pane().getByLabel("Only those of one kind").selectOption("Maker");
    await pane().getByText("Only of this Maker:").waitFor();
    await pane().getByLabel("And of another kind").selectOption("Line");
    await pane().getByText("Only of this Line:").waitFor();
    await shown.getByText(/^\d figures/).waitFor();
    for (const group of ["Only of this Maker:", "Only of this Line:"])
      for (const box of await pane()
        .getByRole("group", { name: group })
        .getByRole("checkbox", { checked: true })
        .all())
        await box.click();
    await shown.getByText(/^37 figures/).waitFor();
  });

  it("writes sheets as formulas, and takes them back", async () => {
    await pane().getByLabel("As formulas that follow the chart and the patterns").check();
    await page.getByRole("button", { name: "Write it" }).click();
    await page
      .getByText("The published chart is on the sheets “The chart” and “Pattern”, and follows")
      .waitFor();
    await pane().getByRole("button", { name: /^Undo/ }).click();
    await page.getByText("Nothing to undo").waitFor();
    await pane().getByLabel("As they are now, as on the page").check();
  });

  it("writes sheets, and takes them back", async () => {
    await page.getByRole("button", { name: "Write it" }).click();
    await page.getByText("The published chart is on the sheets “The chart” and “Pattern”.").waitFor();
    await pane().getByRole("button", { name: /^Undo/ }).click();
    await page.getByText("Nothing to undo").waitFor();
  });

  it("remembers what is published in the workbook", async () => {
    await page.getByRole("button", { name: "Remember for next time" }).click();
    await page.getByText("The workbook remembers these settings.").waitFor();
    await page.reload();
    // The pane is there before the sheet, which is typed into next.
    await ready(page);
    await page.getByLabel("Sections").getByRole("button", { name: "Publish" }).click();
    await page.getByRole("heading", { name: "Ottermere: who wears what" }).waitFor({ timeout: 90_000 });
    await page.getByText("The workbook remembers these settings.").waitFor();
  });

  it("tells what changed since, there and on Home", async () => {
    const changed = pane().getByRole("region", { name: "What changed" });
    await changed.getByText(/^Since you published on \d+ \p{L}+ nothing has changed\.$/u).waitFor();
    const hands = handsOn(page);
    const { figures } = demoTables;
    const row = figures.findIndex(([name]) => name === "Cattrin");
    const column = figures[0]!.findIndex((heading) => String(heading).startsWith("Bust"));
    const { name: sheet, tables = [] } = demoWorkbook().sheets.find(({ tables = [] }) =>
      tables.some(({ name }) => name === "Figures"),
    )!;
    const table = tables.find(({ name }) => name === "Figures")!;
    const at = cellName(table.row + row, table.column + column);
    await hands.typeInto(`${sheet}!${at}`, String(Math.round(Number(figures[row]![column]) * 1.1)));
    await changed
      .getByText(/: 1 reading changed, \d+ verdicts turned, among them .* on Cattrin fits → /)
      .waitFor();
    await changed.getByText("All that changed", { exact: true }).click();
    await changed
      .getByRole("group", { name: "Readings that changed" })
      .getByRole("row", { name: /^Cattrin, Bust girth/ })
      .waitFor();
    await pane()
      .getByRole("button", { name: /^Copy the \d+ that changed$/ })
      .waitFor();
    const changedPattern = pane()
      .locator("option", { hasText: / – changed$/ })
      .first();
    await pane()
      .getByLabel("Pattern", { exact: true })
      .selectOption((await changedPattern.getAttribute("value"))!);
    await pane()
      .getByText(/^Since \d+ \p{L}+: Cattrin fits → /u)
      .waitFor();
    await page.getByLabel("Sections").getByRole("button", { name: "Home" }).click();
    await pane()
      .getByRole("button", { name: /^Changed since you published/ })
      .waitFor();
    await pane()
      .getByRole("button", { name: /^Changed since you published/ })
      .click();
    await changed.waitFor();
  });

  it("has no fault that axe finds", async () => {
    expect(await faults(page)).toEqual([]);
  });
});

describe("the page that was saved, opened from the disk without a network", () => {
  let page: Page;
  let close: (() => Promise<void>) | undefined;
  const said: string[] = [];
  const asked: string[] = [];

  beforeAll(async () => {
    const browser = await chromium.launch({ executablePath: findBrowser()!, args: quiet });
    const context = await browser.newContext({ offline: true, viewport: { width: 320, height: 640 } });
    page = await context.newPage();
    page.on("console", (message) => said.push(message.text()));
    page.on("pageerror", (error) => said.push(error.message));
    page.on("request", (request) => asked.push(request.url()));
    await page.goto(pathToFileURL(file).href);
    close = () => browser.close();
  });

  afterAll(() => close?.());

  it("asks nobody for anything, and is as wide as a narrow screen", async () => {
    expect(asked).toEqual([pathToFileURL(file).href]);
    expect(said).toEqual([]);
    const wider = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(wider).toBe(0);
  });

  it("answers for a typed body as the fit engine does, pattern by pattern", async () => {
    const typed = {
      bustGirth: "7 1/8 in",
      waistGirth: "13,3 cm",
      hipGirth: "190mm",
      headGirth: "165",
    } as const;
    await page.locator("#unit").selectOption("mm");
    for (const [id, text] of Object.entries(typed)) await page.locator(`#m-${id}`).fill(text);

    // The same body as one more figure of the chart.
    const given: Readonly<Record<string, number>> = {
      bustGirth: 7.125 * 25.4,
      waistGirth: 133,
      hipGirth: 190,
      headGirth: 165,
    };
    const row = demoTables.figures[0]!.map((_, position) => {
      const column = demo.chart.measures.find((each) => each.position === position);
      const mm = given[column?.key ?? ""];
      return position === 0 ? "Typed" : mm === undefined ? undefined : column?.unit === "in" ? mm / 25.4 : mm;
    });
    const chart = readChart([...demoTables.figures, row]);
    const match = matchAll(
      prepareFitting(readPatterns(demoTables.patterns, chart), chart, { rules: demo.rules }),
    );
    const expected = Object.fromEntries(
      match.patterns.map(({ code }, p) => [code, match.verdict(p, chart.figures.length - 1)]),
    );
    expect(await told(page)).toEqual(expected);
    await page.getByRole("heading", { name: "To be sure, measure next" }).waitFor();
  });

  it("answers for a figure of the chart as the fit engine does", async () => {
    await page.locator("#figure").selectOption({ label: "Jorvie" });
    const { chart, patterns, rules } = demo;
    const match = matchAll(prepareFitting(patterns!.patterns, chart, { rules }));
    const figure = chart.figures.indexOf("Jorvie");
    expect(await told(page)).toEqual(
      Object.fromEntries(match.patterns.map(({ code }, p) => [code, match.verdict(p, figure)])),
    );
    await page.getByRole("button", { name: "Start again" }).click();
  });

  it("says beside its field what it cannot read, and judges nothing by it", async () => {
    await page.locator("#m-bustGirth").fill("about 5 to 6");
    await page.getByText("Not read: about 5 to 6").waitFor();
    expect(await page.locator("#m-bustGirth").getAttribute("aria-invalid")).toBe("true");
    expect(await page.locator("[data-verdict]").count()).toBe(0);
    await page.locator("#m-bustGirth").fill("");
  });

  it("finds a figure by a part of its name, and sorts by a measure", async () => {
    const shown = page.locator(".chart tbody tr:visible");
    const all = await shown.count();
    await page.getByLabel("Find a figure").fill("pomm");
    expect(await shown.count()).toBe(1);
    await page.getByLabel("Find a figure").fill("nobody");
    await page.getByText("No figure of that name is in this chart.").waitFor();
    await page.getByLabel("Find a figure").fill("");
    expect(await shown.count()).toBe(all);
    await page.getByRole("button", { name: "Bust girth" }).click();
    const column = page.locator(".chart tbody tr td:nth-child(4)[data-mm]");
    const mm = await column.evaluateAll((cells) => cells.map((cell) => Number(cell.getAttribute("data-mm"))));
    expect(mm.length).toBeGreaterThan(5);
    expect(mm).toEqual([...mm].sort((a, b) => a - b));
  });

  it("has no fault that axe finds, light and dark", async () => {
    await page.locator("#m-bustGirth").fill("180");
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await faults(page, "body"), colorScheme).toEqual([]);
    }
  });

  it("has its column headings whole on every page of paper", async () => {
    const printed = path.join(folder, "printed.pdf");
    await page.pdf({ path: printed, preferCSSPageSize: true });
    // Read by poppler, which shares no code with the browser.
    const pages = execFileSync("pdftotext", ["-layout", printed, "-"], { encoding: "utf8" }).split("\f");
    const ofChart = pages.filter((text) => /^ *Figure\b/mu.test(text));
    expect(ofChart.length).toBeGreaterThan(1);
    for (const text of ofChart) expect(text).toMatch(/\bWaist\b/u);
  });

  it("is read without a script", async () => {
    const text = readFileSync(file, "utf8");
    const withoutScript = await page
      .context()
      .browser()!
      .newContext({ javaScriptEnabled: false, offline: true });
    const plain = await withoutScript.newPage();
    await plain.goto(pathToFileURL(file).href);
    await plain.getByRole("heading", { name: "Which pattern fits whom" }).waitFor();
    expect(await plain.locator(".patterns article").count()).toBe(demo.patterns!.patterns.length);
    await plain.getByText("With scripts allowed, this page can also answer").waitFor();
    await withoutScript.close();
    const [, code = ""] = /<script>([\s\S]*?)<\/script>/u.exec(text) ?? [];
    expect(gzipSync(code).length).toBeLessThanOrEqual(60_000);
  });
});

/** The verdict beside each pattern that the page names. */
async function told(page: Page): Promise<Record<string, string>> {
  const lines = await page
    .locator("[data-verdict]")
    .evaluateAll((found) =>
      found.map(
        (line) => [line.getAttribute("data-pattern") ?? "", line.getAttribute("data-verdict") ?? ""] as const,
      ),
    );
  return Object.fromEntries(lines);
}
