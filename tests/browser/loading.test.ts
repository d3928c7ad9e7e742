import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { descriptors } from "../../functions/all.ts";
import type { FunctionsJson } from "../../functions/metadata.ts";
import { openExcelPage } from "./excel/excelPage.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

const address = inject("address");

describe("the built page, loaded as Excel loads it", () => {
  let visitor: Visitor;
  let metadata: FunctionsJson;
  beforeAll(async () => {
    visitor = await newVisitor({ width: 320, height: 640 });
    metadata = (await (await fetch(`${address}functions.json`)).json()) as FunctionsJson;
  });
  afterAll(() => visitor.close());

  // Microsoft, “Configure your Office Add-in to use a shared runtime”: the task pane’s page loads the code of the
  // functions into the shared runtime. “Troubleshoot custom functions”: a function whose id of the metadata is not
  // associated does not work.
  it.each([
    ["with the pane open", true],
    ["in the background, with the pane closed", false],
  ])("registers every function of functions.json, %s", async (_, paneOpen) => {
    const page = await openExcelPage(visitor, address, { settings: { paneOpen } });
    expect(metadata.functions.length).toBe(descriptors.length);
    await expect
      .poll(() => page.evaluate(() => [...window.standIn.associated.keys()].sort()))
      .toEqual(metadata.functions.map(({ id }) => id).sort());
    expect(await page.evaluate(() => window.standIn.paneOpen)).toBe(paneOpen);
    await page.close();
  });

  it("answers a function, and gives its error as Excel’s own, before the pane was ever opened", async () => {
    const page = await openExcelPage(visitor, address, { settings: { paneOpen: false } });
    // 5 3/8 in × 25.4 mm: the international inch (NIST Special Publication 811, appendix B).
    expect(await page.evaluate(() => window.standIn.call("LENGTH", "5 3/8 in", null, null))).toBeCloseTo(
      136.525,
      6,
    );
    const refused = await page.evaluate(() => {
      try {
        return window.standIn.call("LENGTH", "abc", null, null);
      } catch (error) {
        return error instanceof window.CustomFunctions.Error && [error.code, error.message];
      }
    });
    expect(refused).toEqual(["#VALUE!", expect.stringContaining("“abc”")]);
    await page.close();
  });

  it("opens the pane on the workbook, and nothing goes wrong in the page", async () => {
    const wrong: string[] = [];
    visitor.context.on("weberror", (error) => wrong.push(error.error().message));
    const page = await openExcelPage(visitor, address);
    await page.getByRole("navigation", { name: "Sections" }).waitFor();
    await page.getByRole("button", { name: "Check", exact: true }).click();
    await page.getByRole("heading", { name: "Check", exact: true }).waitFor();
    expect(wrong).toEqual([]);
    await page.close();
  });
});
