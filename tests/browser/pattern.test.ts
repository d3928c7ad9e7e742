import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { faults } from "./faults.ts";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { beginBook, newVisitor } from "./page.ts";

/** Six invented figures of two bodies, in inches. */
const list = [
  "Name\tBust (in)\tWaist (in)\tHips (in)\tHead (in)\tBack length (in)\tCuff",
  "Orla\t7 1/8\t5 1/4\t7 5/8\t7\t3 1/2\t",
  "Orsin\t7 1/8\t5 1/4\t7 5/8\t7\t3 1/2\t",
  "Orwen\t7 1/8\t5 1/4\t7 5/8\t7\t3 1/2\t",
  "Dorrit\t12\t9 1/8\t12 3/4\t8\t5\t",
  "Dunmow\t12\t9 1/8\t12 3/4\t8\t5\t",
  "Dansel\t12\t9 1/8\t12 3/4\t8\t5\t",
].join("\n");

describe("a pattern written down in the pane, with keys alone, in a new book in inches", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor({ width: 320, height: 720 });
    page = await visitor.open(inject("address"));
    await beginBook(page, "Small people", "inches");
    await page.getByRole("button", { name: "Import a list" }).click();
    await page.getByLabel("Or paste rows, headings first").fill(list);
    await page.getByRole("button", { name: "Read the pasted rows" }).click();
    await page.getByRole("button", { name: "Import 6 figures" }).click();
    // On a narrow page what was written is shown in the place of the pane.
    await page.getByLabel("Sections").waitFor({ state: "hidden" });
    await page.getByRole("button", { name: "Pane", exact: true }).click();
    await page.getByLabel("Sections").getByRole("button", { name: "Home" }).click();
  });

  afterAll(() => visitor.close());

  /** Goes on with Tab until the question of this name has the keyboard. */
  async function tabTo(label: string): Promise<void> {
    const wanted = page.getByLabel(label, { exact: true });
    for (let i = 0; i < 30; i++) {
      if (await wanted.evaluateAll((all) => all.some((each) => each === document.activeElement))) return;
      await page.keyboard.press("Tab");
    }
    throw new Error(`Tab does not come to “${label}”.`);
  }

  const verdict = () => page.getByRole("region", { name: "How it would fit" });
  const others = () => page.getByRole("region", { name: "Who could wear it" });

  it("is the next step of Home, and asks for the kind of garment first", async () => {
    await page.getByRole("region", { name: "Next" }).getByText("No patterns are written down yet").waitFor();
    await page.locator("#section-home header").getByRole("button", { name: "Add a pattern" }).press("Enter");
    await page.getByRole("heading", { name: "Add a pattern", level: 1 }).waitFor();
    const section = page.locator("#section-fit");
    // The question has the keyboard once the workbook is read.
    await section.locator("select:focus").waitFor();
    expect(await section.locator("input, select").count()).toBe(1);
    await page.keyboard.type("Fitted");
    await page.getByLabel("Where it opens").waitFor();
    expect(await section.getByLabel("Neck opening").count()).toBe(0);
    expect(await section.getByLabel("Sleeves").count()).toBe(0);
  });

  it("says in words beside the answer what is wrong with it", async () => {
    await tabTo("Drafted for");
    await page.keyboard.type("Orlla");
    await page.keyboard.press("Tab");
    await page.getByText("The chart has no figure “Orlla”.").waitFor();
    await page.keyboard.press("Shift+Tab");
    await page.keyboard.press("Control+A");
    await page.keyboard.type("Orla");
    await tabTo("Where it opens");
    await page.keyboard.type("at the back");
    await tabTo("How long that opening is");
    await page.keyboard.type("1.500.2");
    await page
      .getByText(/1\.500\.2/)
      .first()
      .waitFor();
    await page.keyboard.press("Control+A");
    await page.keyboard.type("1 1/2");
  });

  it("says while one types whether it fits, and how many others wear it", async () => {
    await verdict().getByText("On Orla:").waitFor();
    await verdict().getByText("fits", { exact: true }).waitFor();
    await verdict().getByText("2 of 5 others").waitFor();
    await others().getByText("2 of 5 other figures can wear it: Orsin, Orwen.").waitFor();
    await tabTo("Finished waist");
    await page.keyboard.type("9 1/2");
    await verdict().getByText("too loose", { exact: true }).waitFor();
    await page.keyboard.press("Control+A");
    await page.keyboard.press("Delete");
    await others().getByText("2 of 5 other figures can wear it: Orsin, Orwen.").waitFor();
    expect(await faults(page)).toEqual([]);
    const width = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(width).toBeLessThanOrEqual(0);
  });

  it("is written as one row that was shown before, and taken back as one step", async () => {
    await page.getByText("Into row 4 of the sheet “Patterns”.").waitFor();
    for (let i = 0; i < 20; i++) {
      await page.keyboard.press("Tab");
      if ((await page.evaluate(() => document.activeElement?.textContent)) === "Write this row") break;
    }
    await page.keyboard.press("Enter");
    await page.getByText("P1 stands in row 4 of the sheet “Patterns” now.").waitFor();
    const row = async () => {
      const { sheets } = await handsOn(page).saved();
      const cells = sheets.find(({ name }) => name === "Patterns")?.cells ?? [];
      const headings = (cells[2] ?? []).map((cell) => cell?.value);
      return (heading: string) => cells[3]?.[headings.indexOf(heading)]?.value;
    };
    const at = await row();
    expect([
      at("Pattern"),
      at("Garment class"),
      at("Drafted for"),
      at("Opens"),
      at("Opening length (in)"),
    ]).toEqual([...["P1", "Fitted skirt", "Orla", "back", "1 1/2"]]);
    await page.getByLabel("Sections").getByRole("button", { name: "Home" }).click();
    await page.getByText("1 pattern on 6 figures").waitFor();
    await page.getByText("Can be worn 3 times, 3 times not.").waitFor();
    await page.getByRole("button", { name: "Undo: Add the pattern P1" }).press("Enter");
    await page.getByText("No patterns yet").waitFor();
    expect((await row())("Pattern")).toBeUndefined();
  });
});
