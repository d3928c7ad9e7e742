import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import type { WorkbookContent } from "../../addin/workbook/content.ts";
import { writeXlsx } from "../../addin/workbook/xlsx/writeXlsx.ts";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { beginBook, newVisitor } from "./page.ts";

/** As it comes out of a printed list: spaces alone between the cells and in names and fractions, a sum at the end. */
const printed = [
  "Name Bust Waist Hips",
  "Orla 7 1/8 5 1/4 7 5/8",
  "Little Brack 5 4 5 1/2",
  "Average 6 4 5/8 6 1/2",
].join("\n");

describe("lists of every shape, into a new book", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
    await beginBook(page, "Lists", "millimetres");
    await page.getByRole("button", { name: "Import a list" }).click();
  });

  afterAll(() => visitor.close());

  const figures = async (content?: WorkbookContent) => {
    const { sheets } = content ?? (await handsOn(page).saved());
    const cells = sheets
      .find(({ name }) => name === "Figures")
      ?.cells.map((row) => row.map((cell) => cell?.value));
    const headings = cells?.find((row) => row[0] === "Figure") ?? [];
    return (figure: string, heading: string) =>
      cells?.find((row) => row[0] === figure)?.[headings.indexOf(heading)];
  };

  it("takes a printed list, leaves the sum out and says so, and notes where it came from", async () => {
    await page.getByLabel("Or paste rows, headings first").focus();
    await page.keyboard.insertText(printed);
    await page.getByRole("button", { name: "Read the pasted rows" }).press("Enter");
    await page.getByText("1 row is left out, as it is no figure: “Average” (row 4).").waitFor();
    await page.getByLabel("Note in the table Imports what came from where").check();
    await page.getByRole("button", { name: "Import 2 figures", exact: true }).press("Enter");
    await page.getByText("The table Figures holds the figures now.").waitFor();
    const saved = await handsOn(page).saved();
    const at = await figures(saved);
    // An inch is 25.4 mm (SI Brochure): 7 1/8 in are 180.975 mm.
    expect(at("Orla", "Bust (mm)")).toBeCloseTo(180.975, 6);
    expect(at("Little Brack", "Hip (mm)")).toBeCloseTo(139.7, 6);
    const log = saved.sheets.find(({ name }) => name === "Imports");
    expect(
      log?.cells
        .at(-1)
        ?.map((cell) => cell?.value)
        .slice(1),
    ).toEqual(["The pasted text", "Figures", 2, 0, 6, 0, 0]);
  });

  it("takes the chart out of a workbook of several tables, with units in a row of their own, as letters of Windows", async () => {
    await page.getByLabel("Sections").getByRole("button", { name: "Import" }).click();
    const cells = [
      ["Figure", "Bust", "Waist"],
      [undefined, "cm", "mm"],
      ["Elodie", 18.2, 134],
    ].map((row) => row.map((value) => ({ value })));
    const prices = [
      ["Article", "Price"],
      ["Skirt", 12],
    ].map((row) => row.map((value) => ({ value })));
    const table = (name: string, rows: number, columns: number) => ({
      name,
      row: 0,
      column: 0,
      rows,
      columns,
    });
    const { bytes } = await writeXlsx({
      sheets: [
        { name: "Prices", cells: prices, tables: [table("Prices", 2, 2)] },
        { name: "Bodies", cells, tables: [table("Bodies", 3, 3)] },
      ],
    });
    const file = page.locator("input[type=file][aria-label='Chart file']");
    await file.setInputFiles({ name: "several.xlsx", mimeType: "", buffer: Buffer.from(bytes) });
    await page.getByRole("button", { name: "Import 1 figure", exact: true }).click();
    await page.getByText("The table Figures holds the figures now.").waitFor();
    const at = await figures();
    expect([at("Elodie", "Bust (mm)"), at("Elodie", "Waist (mm)")]).toEqual([182, 134]);

    // “Zoë;18,5” in Windows-1252: ë is the byte EB (WHATWG Encoding Standard, index windows-1252).
    const windows = Buffer.from("Name;Bust (cm)\nZo\xeb;18,5\n", "latin1");
    await page.getByLabel("Sections").getByRole("button", { name: "Import" }).click();
    await file.setInputFiles({ name: "windows.csv", mimeType: "text/csv", buffer: windows });
    await page.getByRole("button", { name: "Import 1 figure", exact: true }).click();
    await page.getByText("The table Figures holds the figures now.").waitFor();
    expect((await figures())("Zoë", "Bust (mm)")).toBe(185);
  });

  it("merges a figure that is there, old and new side by side, and takes it back as one step", async () => {
    await page.getByLabel("Sections").getByRole("button", { name: "Import" }).click();
    const wide = "Name\tOrla\tUna\nBust (mm)\t181\t150\nWaist (mm)\t134\t120";
    await page.getByLabel("Or paste rows, headings first").fill(wide);
    await page.getByRole("button", { name: "Read the pasted rows" }).click();
    await page.getByLabel("1 figure is in the chart already").selectOption("update");
    const row = page.getByRole("region", { name: "Preview" }).getByRole("row").filter({ hasText: "Orla" });
    await row.getByText("180.975 → 181").waitFor();
    await page.getByRole("button", { name: "Import 2 figures", exact: true }).click();
    await page.getByText("The table Figures holds the figures now.").waitFor();
    expect((await figures())("Orla", "Bust (mm)")).toBe(181);
    await page.getByRole("button", { name: "Undo: Import 2 figures" }).click();
    await page.getByText("Undone: Import 2 figures.").waitFor();
    expect((await figures())("Orla", "Bust (mm)")).toBeCloseTo(180.975, 6);
  });
});
