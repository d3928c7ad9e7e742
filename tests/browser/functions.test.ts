import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { readXlsx } from "../../addin/workbook/xlsx/readXlsx.ts";
import { faults } from "./faults.ts";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

describe("the functions in the pane, on this workbook", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
    await page.getByLabel("Sections").getByRole("button", { name: "Functions" }).click();
  });

  afterAll(() => visitor.close());

  const section = () => page.locator("#section-functions");
  const found = () => section().getByRole("list", { name: "Functions found" }).locator("> li");
  const named = (name: string) =>
    found()
      .locator("summary")
      .filter({ hasText: new RegExp(`^${name}`) });

  it("are found by a question in the user’s words", async () => {
    await section().getByRole("heading", { name: "Which garment goes on which figure?" }).waitFor();
    await page.getByLabel("What do you want to know?").focus();
    await page.keyboard.type("will it fit");
    await named("WHATFITS").waitFor();
    expect(await found().first().innerText()).toMatch(/^WHATFITS/);
    await page.keyboard.press("Control+A");
    await page.keyboard.type("same body");
    await named("GROUPS").waitFor();
    expect(await named("WHATFITS").count()).toBe(0);
  });

  it("give their result for what is chosen, on this chart", async () => {
    await page.getByLabel("What do you want to know?").fill("side by side");
    await named("COMPARE").press("Enter");
    const example = section().getByRole("region", { name: "On this workbook" });
    await example.getByLabel("base").selectOption("Ardwen");
    await example.getByLabel("target").selectOption("Isolmay");
    await example.getByText('=FIT.COMPARE(Figures[#All], "Ardwen", "Isolmay", Tolerances[#All])').waitFor();
    const table = example.getByRole("group", { name: "What COMPARE gives" });
    await table.getByRole("rowheader", { name: "Bust (mm)", exact: true }).waitFor();
    expect(await faults(page)).toEqual([]);
  });

  it("go into the selected cell as a formula, shown before, and are taken back as one step", async () => {
    const hands = handsOn(page);
    await hands.addSheet();
    await hands.goTo("B2");
    await section().getByRole("button", { name: "Insert into the selected cell" }).click();
    const place = section().getByRole("group", { name: "Where it goes" });
    await place.getByText(/^Fills B2:[A-Z]\d+ of the sheet “/).waitFor();
    await place.getByRole("button", { name: "Write it" }).press("Enter");
    await page.getByText(/B2 of the sheet “.+” holds the formula now\./).waitFor();
    const compared = async () =>
      (await hands.saved()).sheets
        .at(-1)
        ?.cells.flat()
        .find((cell) => cell?.formula?.startsWith("=FIT.COMPARE("));
    expect((await compared())?.value).toBe("Measure");

    // A second one over it would hide what stands there.
    await hands.goTo("A2");
    await section().getByRole("button", { name: "Insert into the selected cell" }).click();
    await place.getByText(/something stands there already/).waitFor();
    expect(await place.getByRole("button", { name: "Write it" }).count()).toBe(0);

    await page.getByRole("button", { name: "Undo: Insert COMPARE into B2" }).click();
    await page.getByText("Nothing to undo").waitFor();
    expect(await compared()).toBeUndefined();
  });

  it("typed into a cell, say beside their answers which doubtful readings these rest on", async () => {
    const hands = handsOn(page);
    await hands.typeInto("B2", '=FIT.NEAREST(Figures[#All], "Belsory", 2)');
    await hands.typeInto("H2", "=F2");
    await hands.typeInto("H3", "=F3");
    const cells = (await hands.saved()).sheets.at(-1)?.cells;
    expect(cells?.[1]?.[7]?.value).toBe("Doubtful");
    // The demo’s own slip: the waist of Belsory was read in inches (tests/demo/plantedErrors.test.ts).
    expect(cells?.[2]?.[7]?.value).toMatch(
      /^Rests on a doubtful reading: Belsory, Waist 5\.25 mm \(wrong unit\)\. Mended: .*Distance [\d.]+.*\.$/,
    );
    expect(await faults(page)).toEqual([]);
  });

  it("explain the selected cell: an error with its message, a verdict with its meaning", async () => {
    const hands = handsOn(page);
    await hands.typeInto("B2", '=FIT.NEAREST(Figures[#All], "Ardwin")');
    await hands.goTo("B2");
    // Before it is calculated, there is no error to explain.
    await hands.spoken.filter({ hasText: /^B2: #/ }).waitFor();
    await page.getByRole("button", { name: "Explain the selected cell" }).click();
    const box = page.getByRole("region", { name: "The selected cell" });
    await box.getByText(/no figure “Ardwin”.*Ardwen/).waitFor();
    await hands.goTo("Match!B4");
    await box.getByRole("button", { name: "Explain the cell selected now" }).click();
    await box.getByText(/It is filled from .+, which holds =FIT\.WHATFITS\(/).waitFor();
  });

  it("have their results in a file that is saved the moment they are typed", async () => {
    const hands = handsOn(page);
    await hands.addSheet();
    await hands.typeInto("B2", "=6*7");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      // Sooner than hands could; the grid begins to calculate 100 ms after the last change.
      page.evaluate(async () => {
        for (const name of ["Save .xlsx", "With formulas, for Excel"]) {
          const buttons = [...document.querySelectorAll("button")];
          buttons.find(({ textContent }) => textContent.startsWith(name))?.click();
          await new Promise((drawn) => setTimeout(drawn));
        }
      }),
    ]);
    const { sheets } = await readXlsx(readFileSync(await download.path()));
    const found = sheets.flatMap((sheet) => sheet.cells.flat()).find((cell) => cell?.formula === "=6*7");
    expect(found?.value).toBe(42);
  });
});
