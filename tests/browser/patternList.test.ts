import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { faults } from "./faults.ts";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { beginBook, newVisitor } from "./page.ts";

/** Seven invented figures of three bodies. */
const chart = [
  "Name\tBust (mm)\tWaist (mm)\tHips (mm)\tHead (mm)\tBack length (mm)\tThigh (mm)\tCalf (mm)\tAnkle (mm)\tFoot length (mm)",
  "Orla\t181\t134\t190\t178\t89\t108\t82\t54\t60",
  "Orsin\t181\t134\t190\t178\t89\t108\t82\t54\t60",
  "Orwen\t181\t134\t190\t178\t89\t108\t82\t54\t60",
  "Dorrit\t305\t232\t324\t204\t127\t180\t130\t86\t92",
  "Dunmow\t305\t232\t324\t204\t127\t180\t130\t86\t92",
  "Dansel\t305\t232\t324\t204\t127\t180\t130\t86\t92",
  "Quill\t240\t180\t255\t196\t105\t142\t104\t70\t76",
].join("\n");

/** As it is kept: a title, units in a row of their own, a line that heads others, everyday names, a row that is wrong, a note. */
const list = [
  "What I sell\t\t\t\t\t\t\t",
  "Name\tWhat is it\tFor\tStretch\tFastening\tZip length\tWaist\tPrice",
  "\t\t\t%\t\tcm\tcm\t",
  "Below the waist\t\t\t\t\t\t\t",
  "Rose\tpencil skirt\torla\t\tzip at the back\t4\t13.8\t12",
  "Run\tleggings\tDorrit\t40\telastic\t\t\t9",
  "Rain\train hood\tOrsin\t\tnone\t\t\t7",
  "Odd\tthingamajig\tOrlla\t\tnone\t\t\t5",
  "* prices in pounds\t\t\t\t\t\t\t",
].join("\n");

/** No figure is named, but the body that each is to fit. */
const toFit = [
  "Name\tWhat is it\tTo fit bust (mm)\tfor waist (cm)",
  "Quiet\tpencil skirt\t240\t17.9",
  "Rose\tpencil skirt\t181\t13.4",
].join("\n");

describe("a list of patterns, pasted into a new book by keyboard", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor({ width: 320, height: 720 });
    page = await visitor.open(inject("address"));
    await beginBook(page, "Small people", "millimetres");
    await page.getByRole("button", { name: "Import a list" }).click();
    await page.getByLabel("Or paste rows, headings first").fill(chart);
    await page.getByRole("button", { name: "Read the pasted rows" }).click();
    await page.getByRole("button", { name: "Import 7 figures" }).click();
    await backToPane();
    await page.getByLabel("Sections").getByRole("button", { name: "Home" }).click();
  });

  afterAll(() => visitor.close());

  /** On a narrow page what was written is shown in the place of the pane. */
  async function backToPane(): Promise<void> {
    await page.getByLabel("Sections").waitFor({ state: "hidden" });
    await page.getByRole("button", { name: "Pane", exact: true }).press("Enter");
  }

  const section = () => page.locator("#section-import");

  /** Goes on with Tab until what has this name has the keyboard. */
  async function tabTo(name: string | RegExp): Promise<void> {
    const wanted = section().getByLabel(name).or(section().getByRole("button", { name }));
    for (let i = 0; i < 80; i++) {
      if (await wanted.evaluateAll((all) => all.some((each) => each === document.activeElement))) return;
      await page.keyboard.press("Tab");
    }
    throw new Error(`Tab does not come to “${String(name)}”.`);
  }

  async function readPasted(text: string): Promise<void> {
    await page.getByLabel("Sections").getByRole("button", { name: "Import" }).press("Enter");
    await section().getByLabel("Or paste rows, headings first").waitFor();
    await tabTo("Or paste rows, headings first");
    await page.keyboard.insertText(text);
    await tabTo("Read the pasted rows");
    await page.keyboard.press("Enter");
  }

  const written = async () => {
    const { sheets } = await handsOn(page).saved();
    const cells = sheets.find(({ name }) => name === "Patterns")?.cells ?? [];
    const headings = (cells[2] ?? []).map((cell) => cell?.value);
    const at = (row: number) => (heading: string) => cells[row]?.[headings.indexOf(heading)]?.value;
    return { sheets, at, lists: sheets.find(({ name }) => name === "Patterns")?.pickLists };
  };

  it("is known for one, and shows what was understood of it and what was left out", async () => {
    await readPasted(list);
    await page.getByText("2 rows are left out, as they are no patterns").waitFor();
    await expect.poll(() => page.getByLabel("The list holds").inputValue()).toBe("patterns");
    await section().getByText("◆ 2 to choose").waitFor();
    await section().getByText("The chart has no figure “Orlla”. Did you mean “Orla”?").waitFor();
    const preview = page.getByRole("region", { name: "Preview" });
    await preview.getByRole("row").filter({ hasText: "Rose" }).getByText("Fitted skirt").waitFor();
    expect(await faults(page)).toEqual([]);
    const width = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(width).toBeLessThanOrEqual(0);
  });

  it("asks what no word tells, and takes the answer", async () => {
    await tabTo("What “thingamajig” means (Garment class)");
    await page.keyboard.type("Cape");
    await section().getByText("◆ 1 to choose").waitFor();
    await tabTo("What “Orlla” means (Drafted for)");
    await page.keyboard.type("Orla");
    await section()
      .getByText(/words understood/)
      .waitFor();
    await page.getByLabel("Note in the table Imports what came from where").check();
  });

  it("is one action, after which Fit has verdicts", async () => {
    await section().getByRole("button", { name: "Import 4 patterns" }).press("Enter");
    await backToPane();
    await page.getByText("The table Patterns holds the patterns now.").waitFor();
    await page.getByLabel("Sections").getByRole("button", { name: "Fit" }).press("Enter");
    const fit = page.locator("#section-fit");
    await fit.getByRole("heading", { name: "Fit", level: 1 }).waitFor();
    await fit.getByRole("button", { name: "Which figures wear this?" }).click();
    await fit.getByLabel("Pattern", { exact: true }).selectOption("Rose");
    await fit.getByText("Orwen").first().waitFor();
    await fit.getByText("fits", { exact: true }).first().waitFor();
    const { at, sheets, lists } = await written();
    expect(
      [3, 4, 5, 6].map((row) => ["Pattern", "Garment class", "Drafted for", "Opens"].map(at(row))),
    ).toEqual([
      ["Rose", "Fitted skirt", "Orla", "back"],
      ["Run", "Leggings", "Dorrit", "none"],
      ["Rain", "Hood", "Orsin", "none"],
      ["Odd", "Cape", "Orla", "none"],
    ]);
    // 4 cm are 40 mm, 13.8 cm are 138 mm (SI Brochure).
    expect(["Opening length (mm)", "Finished waist (mm)", "Price"].map(at(3))).toEqual([40, 138, "12"]);
    expect(at(4)("Stretch")).toBe("40%");
    expect(lists?.length).toBeGreaterThan(4);
    const log = sheets.find(({ name }) => name === "Imports")?.cells.at(-1);
    expect(log?.map((cell) => cell?.value).slice(1, 4)).toEqual(["The pasted text", "Patterns", 4]);
  });

  it("is taken back as one step", async () => {
    await page.getByRole("button", { name: "Undo: Import 4 patterns" }).press("Enter");
    await page.getByText("Undone: Import 4 patterns.").waitFor();
    const { at, sheets } = await written();
    expect([at(3)("Pattern"), at(3)("Price")]).toEqual([undefined, undefined]);
    expect(sheets.some(({ name }) => name === "Imports")).toBe(false);
  });

  it("finds for whom a pattern is, where it only says what body it is to fit, and asks where several can be it", async () => {
    await readPasted(toFit);
    await section().getByText("2 patterns say what body to fit, and not which figure.").waitFor();
    const preview = page.getByRole("region", { name: "Preview" });
    const row = (name: string) => preview.getByRole("row").filter({ hasText: name });
    await row("Quiet").getByText("Quill (Waist 1 mm larger, the rest nearer)").waitFor();
    await row("Rose").getByText("◆ 3 figures can be it").waitFor();
    await section().getByText("◆ 1 to choose").waitFor();
    expect(await faults(page)).toEqual([]);
    await tabTo("Drafted for, to fit bust 181 mm, waist 13.4 cm");
    await page.keyboard.type("Orsin");
    await row("Rose").getByText("Orsin (the same in 2 measures)").waitFor();
    await section().getByRole("button", { name: "Import 2 patterns" }).press("Enter");
    await backToPane();
    await page.getByText("The table Patterns holds the patterns now.").waitFor();
    const { at } = await written();
    expect(
      [3, 4].map((r) => ["Pattern", "Drafted for", "To fit bust (mm)", "Finished waist (mm)"].map(at(r))),
    ).toEqual([
      ["Quiet", "Quill", 240, undefined],
      ["Rose", "Orsin", 181, undefined],
    ]);
  });
});
