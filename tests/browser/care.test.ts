import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterEach, beforeEach, describe, expect, inject, it } from "vitest";
import { faults } from "./faults.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

describe("a narrow screen of 320 px", () => {
  let visitor: Visitor;
  let page: Page;

  beforeEach(async () => {
    visitor = await newVisitor({ width: 320, height: 640 });
    page = await visitor.open(inject("address"));
  });

  afterEach(() => visitor.close());

  it("shows sheet and pane in turn, and nothing is cut off at the side", async () => {
    await page.getByRole("button", { name: "Pane", exact: true }).click();
    for (const section of ["Home", "Import", "Measure", "Check", "Functions"]) {
      await openSection(page, section);
      expect(await overflow(page), section).toBeLessThanOrEqual(0);
    }
    await page.getByRole("button", { name: "Sheet", exact: true }).click();
    await page.locator("canvas").first().waitFor();
  });

  it("goes to the sheet when a flag is chosen in the pane", async () => {
    await page.getByRole("button", { name: "Pane", exact: true }).click();
    await openSection(page, "Check");
    await page.locator("[data-flag]").first().click();
    await page.locator("canvas").first().waitFor({ state: "visible" });
    expect(await page.getByRole("button", { name: "Sheet", exact: true }).getAttribute("aria-pressed")).toBe(
      "true",
    );
  });

  it("has a pane that axe finds no fault with", async () => {
    await page.getByRole("button", { name: "Pane", exact: true }).click();
    for (const section of ["Home", "Import", "Measure", "Check", "Functions"]) {
      await openSection(page, section);
      expect(await faults(page), section).toEqual([]);
    }
  });
});

describe("what can go wrong, on the page without Excel", () => {
  let visitor: Visitor;
  let page: Page;

  beforeEach(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
  });

  afterEach(() => visitor.close());

  it("says of a picture renamed .csv what it is, and imports nothing", async () => {
    await openSection(page, "Import");
    await page.locator("input[type=file]").setInputFiles({
      name: "chart.csv",
      mimeType: "text/csv",
      buffer: readFileSync("manifest/icons/icon-32.png"),
    });
    await page
      .getByText(/picture/i)
      .first()
      .waitFor();
    expect(await page.getByRole("button", { name: /^Import \d/ }).count()).toBe(0);
  });

  it("keeps what was typed when the page is closed without a word", async () => {
    await pasteChart(page, "Name,Bust (mm)\nQuillon,201\n");
    await page.close({ runBeforeUnload: false });
    page = await visitor.open(inject("address"));
    await openSection(page, "Import");
    await page.getByLabel("Or paste rows, headings first").fill("Name,Bust (mm)\nQuillon,201\n");
    await page.getByRole("button", { name: "Read the pasted rows" }).click();
    await page.getByText("1 figure is in the chart already").waitFor();
  });
});

async function openSection(page: Page, name: string): Promise<void> {
  await page.getByLabel("Sections").getByRole("button", { name }).click();
  await page.getByRole("heading", { name, level: 1 }).last().waitFor();
}

async function pasteChart(page: Page, text: string): Promise<void> {
  await openSection(page, "Import");
  await page.getByLabel("Or paste rows, headings first").fill(text);
  await page.getByRole("button", { name: "Read the pasted rows" }).click();
  await page.getByRole("button", { name: /^Import \d/ }).click();
  await page.getByText("The table Figures holds the figures now.").waitFor();
}

/** How many pixels the page is wider than its window. */
function overflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}
