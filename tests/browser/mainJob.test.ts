import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { cellText } from "../../addin/chart/cell.ts";
import type { WorkbookContent } from "../../addin/workbook/content.ts";
import { readXlsx } from "../../addin/workbook/xlsx/readXlsx.ts";
import { allSheetsAsCsv, convert } from "../workbook/xlsx/libreOffice.ts";
import type { Visitor } from "./page.ts";
import { newVisitor, saveXlsx } from "./page.ts";

/**
 * A chart as such files arrive: semicolons, decimal commas, old encoding, readings in several writings, a waist read
 * in inches, a formula, a reading that is none, and a figure that the demo has already.
 */
const messyCsv = [
  "Name;Bust (cm);Waist circumference (cm);Hips (cm);Upper arm (cm);Thigh (cm);Maker",
  "Séraphe;18,2;13,4;19,4;5,0;10,8;=HYPERLINK(1)",
  "Tamsel;18,25;5,28;19,4;5,0;10,85;Ottermere",
  "Undrey; 18.2 ;134 mm;7 5/8 in;?;12 or 13;Ottermere",
  "Ardwen;18,2;13,45;19,45;5,0;10,85;someone else",
].join("\r\n");

describe("the main job, on the page without Excel", () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), "measure-book-files-"));
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
  });

  afterAll(async () => {
    await visitor.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it("opens the demo with computed comparison, groups and flags", async () => {
    const saved = await readXlsx(readFileSync(await save("demo.xlsx")));
    expect(texts(saved, "Compare")).toContainEqual(
      expect.arrayContaining(["Measure", "Delta", "Of tolerance"]),
    );
    expect(rowsOf(saved, "Compare", "Bust (mm)").length).toBeGreaterThan(0);
    const groups = texts(saved, "Groups").filter((row) => row[0] === "Ardwen" || row[0] === "Elmory");
    expect(groups).toHaveLength(2);
    expect(groups[0]?.[1]).toBe(groups[1]?.[1]);
    expect(rowsOf(saved, "Flags", "Belsory")[0]).toEqual(
      expect.arrayContaining(["Belsory", "Waist", "5.25", "wrong unit"]),
    );
  });

  it("imports a messy CSV after a preview, and takes text that looks like a formula as text", async () => {
    const file = path.join(folder, "messy.csv");
    writeFileSync(file, Buffer.from(messyCsv, "latin1"));
    await tab("Import");
    await page.locator("input[type=file]").setInputFiles(file);
    await page
      .getByText(/“12 or 13”/)
      .first()
      .waitFor();
    await page.getByRole("row", { name: /^Séraphe 182 134 194/ }).waitFor();
    await page.getByRole("row", { name: /^Ardwen skipped/ }).waitFor();
    await page.getByRole("button", { name: "Import 3 figures" }).click();
    await expectText("The table Figures holds the figures now.");

    const saved = await readXlsx(readFileSync(await save("imported.xlsx")));
    expect(rowsOf(saved, "Figures", "Séraphe")[0]).toEqual(
      expect.arrayContaining(["Séraphe", "182", "134", "194", "=HYPERLINK(1)"]),
    );
    expect(rowsOf(saved, "Figures", "Ardwen")[0]).toContain("134.5");
    expect(rowsOf(saved, "Figures", "Ardwen")[0]).not.toContain("someone else");
  });

  it("shows the flag of the waist read in inches, and mends it on request", async () => {
    await tab("Check");
    const tamsel = page.locator("section").filter({ has: page.getByRole("heading", { name: "Tamsel" }) });
    await tamsel.getByText("wrong unit").first().waitFor();
    await tamsel.getByRole("button", { name: /^Use 134\.1\d* mm$/ }).click();
    await expectText(/Tamsel, Waist.*use 134\.1/i);
    await page.getByRole("heading", { name: "Tamsel" }).waitFor({ state: "detached" });
  });

  it("finds all of it kept after a reload, and saves it as .xlsx with values that LibreOffice reads", async () => {
    await page.getByText(/^Kept in this browser/).waitFor();
    await page.reload();
    await page.locator("html[data-ready='true']").waitFor({ timeout: 90_000 });

    const file = await save("kept.xlsx");
    const kept = await readXlsx(readFileSync(file));
    expect(Number(rowsOf(kept, "Figures", "Tamsel")[0]?.[waistColumn(kept)])).toBeCloseTo(134.1, 1);

    const sheets = await convert([file], allSheetsAsCsv);
    const figures = new TextDecoder().decode(sheets.get("kept-Figures.csv"));
    const tamsel = figures.split("\n").find((line) => line.startsWith("Tamsel,"));
    expect(Number(tamsel?.split(",")[waistColumn(kept)])).toBeCloseTo(134.1, 1);
    expect(figures).toContain("Séraphe");
  });

  it("takes the last action back as a whole", async () => {
    await tab("Import");
    await page.getByLabel("Or paste rows, headings first").fill("Name,Bust (mm)\nVexley,180\nWystan,181\n");
    await page.getByRole("button", { name: "Read the pasted rows" }).click();
    await page.getByRole("button", { name: "Import 2 figures" }).click();
    await expectText("The table Figures holds the figures now.");
    await page.getByRole("button", { name: /^Undo/ }).first().click();
    await page.getByText("Nothing to undo").waitFor();
    const undone = await readXlsx(readFileSync(await save("undone.xlsx")));
    expect(rowsOf(undone, "Figures", "Vexley")).toEqual([]);
    expect(rowsOf(undone, "Figures", "Tamsel")).toHaveLength(1);
  });

  async function tab(name: string): Promise<void> {
    await page.getByLabel("Sections").getByRole("button", { name }).click();
  }

  async function expectText(text: string | RegExp): Promise<void> {
    await page.getByText(text).first().waitFor();
  }

  async function save(name: string): Promise<string> {
    const download = await saveXlsx(page);
    const file = path.join(folder, name);
    await download.saveAs(file);
    return file;
  }
});

function texts(content: WorkbookContent, sheet: string): string[][] {
  const found = content.sheets.find((each) => each.name === sheet);
  return (found?.cells ?? []).map((row) => row.map((cell) => cellText(cell?.value)));
}

function rowsOf(content: WorkbookContent, sheet: string, first: string): string[][] {
  return texts(content, sheet).filter((row) => row[0] === first);
}

function waistColumn(content: WorkbookContent): number {
  const headings = texts(content, "Figures").find((row) => row[0] === "Figure") ?? [];
  return headings.findIndex((heading) => heading.startsWith("Waist (") || heading === "Waist");
}
