import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { newVisitor, ready } from "./page.ts";

/**
 * Twelve invented figures of four bodies, three each, as a list comes from a notebook: a title, blank rows, inches as
 * fractions and with a mark of their own, millimetres among them, an average at the end. Within a body readings differ by
 * less than a millimetre; between bodies by centimetres.
 */
const notebook = [
  "My small people\t\t\t\t",
  "\t\t\t\t",
  "Name\tBust (in)\tWaist (in)\tHips (in)\tNotes",
  "Orla\t7 1/8\t5 1/4\t7 5/8\tthe first",
  'Orsin\t7 1/8"\t5 1/4\t7 5/8\t',
  "Orwen\t181 mm\t5 1/4\t7 5/8\t",
  "Brack\t5\t4\t5 1/2\t",
  "Brunt\t5\t4\t5 1/2\t",
  "Brisk\t127 mm\t4\t5 1/2\t",
  "\t\t\t\t",
  "Culver\t9 1/2\t7 1/4\t10\t",
  "Cadder\t9 1/2\t7 1/4\t10\t",
  "Calder\t9 1/2\t7 1/4\t10\t",
  "Dorrit\t12\t9 1/8\t12 3/4\t",
  "Dunmow\t12\t9 1/8\t12 3/4\t",
  "Dansel\t12\t9 1/8\t12 3/4\t",
].join("\n");

describe("a book of one’s own, on the page without Excel", () => {
  let visitor: Visitor;
  let page: Page;
  let presses = 0;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
  });

  afterAll(() => visitor.close());

  const press = async (name: string | RegExp): Promise<void> => {
    presses++;
    await page.getByRole("button", { name }).first().click();
  };
  const home = async (): Promise<void> => {
    presses++;
    await page.getByLabel("Sections").getByRole("button", { name: "Home" }).click();
  };
  const facts = (): ReturnType<Page["locator"]> =>
    page.getByRole("list", { name: "What this workbook says" });

  it("says of the demo that it is one, and what comes next", async () => {
    await page.getByText("This is the demo").waitFor();
    await facts().getByText("37 figures, 26 measures").waitFor();
    await page.getByRole("region", { name: "Next" }).getByText("deserve a second look").waitFor();
  });

  it("begins empty, in the unit that was chosen, with nothing of the demo", async () => {
    await press("New book");
    await page.getByLabel("Name", { exact: true }).fill("Small people");
    await page.getByLabel("You measure in").selectOption("inches");
    await press("Begin this book");
    await page.getByText("headings and no figures yet").waitFor();
    await ready(page);
    const { sheets } = await handsOn(page).saved();
    const cells = sheets.find(({ name }) => name === "Figures")?.cells.flat() ?? [];
    expect(cells.map((cell) => cell?.value)).toContain("Bust (in)");
    expect(JSON.stringify(sheets)).not.toContain("Ardwen");
  });

  it("goes from a notebook’s list to the groups", async () => {
    await press("Import a list");
    await page.getByLabel("Or paste rows, headings first").fill(notebook);
    await press("Read the pasted rows");
    await press("Import 12 figures");
    await page.getByText("The table Figures holds the figures now.").waitFor();
    await home();
    await facts().getByText("12 figures, 26 measures").waitFor();
    await facts().getByText("4 bodies").waitFor();
    await facts().getByText("12 figures share with another; none is alone.").waitFor();
  });

  it("goes on to the first verdicts", async () => {
    const hands = handsOn(page);
    const { sheets } = await hands.saved();
    const table = sheets.find(({ name }) => name === "Patterns")?.tables?.[0];
    const row = String((table?.row ?? 0) + 2);
    for (const [column, text] of [
      ["A", "S1"],
      ["B", "Shift for Orla"],
      ["C", "dress"],
      ["D", "Orla"],
      ["H", "full length"],
    ] as const)
      await hands.typeInto(`Patterns!${column}${row}`, text);
    await facts().getByText("1 pattern on 12 figures").waitFor();
    // The other bodies are centimetres smaller or larger.
    await facts().getByText("Can be worn 3 times, 9 times not.").waitFor();
    expect(presses).toBe(6);
  });

  it("finds a figure by a part of its name, with who shares its body", async () => {
    await page.getByLabel("Find a figure").fill("orsi");
    await page
      .getByRole("region", { name: "Orsin" })
      .getByText("Shares its body with Orla, Orwen.")
      .waitFor();
    await page.getByRole("button", { name: "Show it in the chart" }).click();
    await page.getByRole("tab", { name: "Figures", exact: true, selected: true }).waitFor();
  });

  it("uses a chart that stands on a sheet of an opened workbook, moves nothing, and takes it back", async () => {
    const cells = [
      [{ value: "Figures of the autumn" }],
      [],
      [undefined, ...["Name", "Bust (mm)", "Waist (mm)"].map((value) => ({ value }))],
      [undefined, ...["Fenwick", 180, 140].map((value) => ({ value }))],
      [undefined, ...["Farrow", 230, 180].map((value) => ({ value }))],
      [undefined, ...["Average", 205, 160].map((value) => ({ value }))],
    ];
    const hands = handsOn(page);
    await hands.open({ sheets: [{ name: "List", cells }] });
    await page.getByText("2 figures and 2 measures, in B3:D5.").waitFor();
    await page.getByRole("button", { name: "Use it as my chart" }).click();
    await facts().getByText("2 figures, 2 measures").waitFor();
    await facts().getByText("Every figure has a body of its own.").waitFor();
    const used = await hands.saved();
    expect(used.sheets[0]?.tables).toMatchObject([
      { name: "Figures", row: 2, column: 1, rows: 3, columns: 3 },
    ]);
    expect(used.sheets[0]?.cells[5]?.[1]?.value).toBe("Average");
    await page.getByRole("button", { name: "Undo: Use the sheet “List” as your chart" }).click();
    await page.getByText("2 figures and 2 measures, in B3:D5.").waitFor();
  });
});
