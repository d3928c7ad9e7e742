import type { Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, inject, it } from "vitest";
import { workroom } from "../taskpane/rename/workroom.ts";
import { summary } from "../workbook/summary.ts";
import { faults } from "./faults.ts";
import type { Hands } from "./hands.ts";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

describe("a figure or pattern that gets another name", { timeout: 300_000 }, () => {
  let visitor: Visitor;
  let page: Page;
  let hands: Hands;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
    hands = handsOn(page);
  });

  beforeEach(() => hands.open(workroom()));

  afterAll(() => visitor.close());

  const offer = (name = "Ada") => page.getByRole("region", { name: `${name} was renamed` });
  const cells = async () =>
    Object.fromEntries(summary(await hands.saved()).map((sheet) => [sheet.sheet, sheet.cells]));

  /** Goes to the pane with F6, on with Tab until the keyboard is on a button, and presses it. */
  async function pressByKeyboard(name: string | RegExp): Promise<void> {
    const button = page.getByRole("button", { name }).first();
    const isInPane = () =>
      page.evaluate(() => document.activeElement?.closest("[data-region='pane']") !== null);
    for (let i = 0; i < 3 && !(await isInPane()); i++) await hands.press("F6");
    for (let i = 0; i < 60; i++) {
      if (await button.evaluate((element) => element === document.activeElement)) break;
      await hands.press("Tab");
    }
    expect(await button.evaluate((element) => element === document.activeElement)).toBe(true);
    await hands.press("Enter");
  }

  it("is followed by keys alone, and goes back in one step", async () => {
    const before = await cells();
    await hands.typeInto("Figures!A2", 'Ada "the Tall"');
    await offer()
      .getByText(
        'You renamed Ada to Ada "the Tall". 1 formula, 2 cells that formulas read it from, Drafted for of 2 patterns, ' +
          "1 confirmed reading, 1 row of second readings and 2 rows of the table Readings still say Ada.",
      )
      .waitFor();
    await pressByKeyboard("Change them too");
    await page.getByText(/Done\. Changed to Ada "the Tall"/).waitFor();
    await offer().waitFor({ state: "detached" });
    const after = await cells();
    expect(after.Patterns).toMatchObject({ C2: 'Ada "the Tall"', C3: "Bela", C4: 'Ada "the Tall"' });
    expect(after.Confirmed).toMatchObject({ A2: 'Ada "the Tall"' });
    expect(after.Ask).toMatchObject({
      B1: 'Ada "the Tall"',
      C1: "Ada",
      A2: '=FIT.APART(Figures[#All],"Ada ""the Tall""","Bela")',
      B3: '=COUNTIF(Figures[Figure],"Ada")',
    });
    await pressByKeyboard(/^Undo: Change “Ada” to/);
    await page.getByText(/Undone: Change “Ada” to/).waitFor();
    expect(await cells()).toEqual({
      ...before,
      Figures: { ...before.Figures, A2: 'Ada "the Tall"' },
    });
  });

  it("typed back or undone is offered no more; typed twice it is offered from the first name", async () => {
    await hands.typeInto("Figures!A2", "Adele");
    await offer().waitFor();
    expect(await faults(page)).toEqual([]);
    await hands.goTo("Figures!A2");
    await hands.press("Control+z");
    await offer().waitFor({ state: "detached" });
    await hands.typeInto("Figures!A2", "Adele");
    await offer().waitFor();
    await hands.typeInto("Figures!A2", "Adela");
    await offer("Ada or Adele").getByText("You renamed Ada or Adele to Adela.").waitFor();
    await page.getByRole("button", { name: "Leave them" }).click();
    await page.getByText("Ada or Adele stays as it is in 9 places.").waitFor();
    await offer("Ada or Adele").waitFor({ state: "detached" });
    expect((await cells()).Patterns).toMatchObject({ C2: "ada" });
  });

  it("of a pattern is followed under Worn over", async () => {
    await hands.typeInto("Patterns!A3", "U-2");
    await offer("U-1")
      .getByText(/1 cell that formulas read it from and Worn over of 2 patterns/)
      .waitFor();
    await page.getByRole("button", { name: "Change them too" }).click();
    await page.getByText(/Done\. Changed to U-2/).waitFor();
    const after = await cells();
    expect(after.Patterns).toMatchObject({ A3: "U-2", D2: "U-2, S-1", D4: "U-2" });
    expect(after.Ask).toMatchObject({
      D1: "U-2",
      A4: '=ROWS(FIT.WEARERS(Patterns[#All],Figures[#All],"U-2"))',
    });
  });

  it("can be renamed in the pane, after a look at what changes", async () => {
    const before = await cells();
    const section = page.getByRole("button", { name: "Check", exact: true });
    await section.focus();
    await hands.press("Enter");
    await page.getByText("Rename a figure or a pattern").click();
    const name = page.getByLabel("New name");
    await name.fill("bela");
    await hands.press("Enter");
    await page.getByText("“Bela” is the name of another figure already.").waitFor();
    await name.fill("Adele");
    await hands.press("Enter");
    await page.getByText(/^Ada becomes Adele in the table Figures\. What else says Ada: 1 formula/).waitFor();
    await pressByKeyboard("Rename");
    await page.getByText(/Done\. Ada is Adele now, in 1 formula/).waitFor();
    expect((await cells()).Figures).toMatchObject({ A2: "Adele" });
    await offer().waitFor({ state: "detached" });
    await page.getByRole("button", { name: "Undo: Rename “Ada” to “Adele”" }).click();
    await page.getByText("Undone: Rename “Ada” to “Adele”.").waitFor();
    expect(await cells()).toEqual(before);
  });
});
