import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterEach, beforeEach, describe, expect, inject, it } from "vitest";
import type { WorkbookContent } from "../../addin/workbook/content.ts";
import type { Hands } from "./hands.ts";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

/** `=FIT.…` in backquotes; for the figures of an ellipsis any two of the demo will do. */
const formulasOfReadme = [...readFileSync("README.md", "utf8").matchAll(/`(=FIT\.[^`]+)`/g)].map((found) =>
  (found[1] ?? "").replace('"…"', '"Ardwen"').replace('"…"', '"Dovelle"'),
);

describe("typed key by key", { timeout: 300_000 }, () => {
  let visitor: Visitor;
  let page: Page;
  let hands: Hands;

  beforeEach(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
    hands = handsOn(page);
  });

  afterEach(() => visitor.close());

  it("formulas of the README give an answer in the demo, and the same one after a reload", async () => {
    expect(formulasOfReadme.length).toBeGreaterThanOrEqual(5);
    for (const formula of formulasOfReadme) {
      await hands.addSheet();
      await hands.typeInto("A1", formula);
    }
    const typedSheets = (content: WorkbookContent) => content.sheets.slice(-formulasOfReadme.length);
    const firstCells = async () => typedSheets(await hands.saved()).map((sheet) => sheet.cells[0]?.[0]);
    await expect.poll(firstCells, { timeout: 30_000 }).toEqual(
      formulasOfReadme.map((formula) =>
        expect.objectContaining({
          formula,
          value: expect.stringMatching(/^(Pattern|Figure|Piece|Measure)$/),
        }),
      ),
    );
    const typed = await hands.saved();
    await hands.reload();
    await expect.poll(() => hands.saved(), { timeout: 30_000 }).toEqual(typed);
  });

  it("a formula typed on past the list of completions stands as it was typed", async () => {
    await hands.addSheet();
    await hands.goTo("A1");
    await hands.type("=SUM");
    await hands.completions.first().waitFor();
    await hands.type("(1,2)");
    await hands.press("Enter");
    const firstCell = async () => (await hands.saved()).sheets.at(-1)?.cells[0]?.[0];
    await expect.poll(firstCell, { timeout: 30_000 }).toMatchObject({ formula: "=SUM(1,2)", value: 3 });
  });
});
