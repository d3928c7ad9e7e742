import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import type { Cell } from "../../addin/chart/cell.ts";
import type { WorkbookContent } from "../../addin/workbook/content.ts";
import { faults } from "./faults.ts";
import { handsOn } from "./hands.ts";
import { keyTo } from "./keys.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

const book: WorkbookContent = {
  sheets: [
    {
      name: "Figures",
      cells: [
        ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
        ["Orla", 181, 134, 194],
        ["Brack", 127, 101, 140],
      ].map((row) => row.map((value) => ({ value }))),
      tables: [{ name: "Figures", row: 0, column: 0, rows: 3, columns: 4 }],
    },
  ],
};

/** Whether nothing lies over its upper edge, and it is on the screen. */
const inSight = (what: Locator): Promise<boolean> =>
  what.evaluate((element) => {
    const { left, top } = element.getBoundingClientRect();
    const seen = document.elementFromPoint(left + 8, top + 2);
    return seen !== null && (element.contains(seen) || seen.contains(element));
  });

describe("measuring a figure twice, with keys alone", () => {
  let visitor: Visitor;
  let page: Page;

  const open = async (): Promise<void> => {
    await page.getByRole("button", { name: "Pane", exact: true }).click();
    await page.getByLabel("Sections").getByRole("button", { name: "Measure" }).click();
  };
  /** Types what the tape says of the measure that is asked for, and waits for what comes then. */
  const take = async (measure: string, text: string, next: string | RegExp): Promise<void> => {
    await page.getByRole("heading", { level: 2, name: measure, exact: true }).waitFor();
    await page.keyboard.press("Control+A");
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
    await page.getByText(next).first().waitFor();
  };
  const cells = async (sheet: string): Promise<readonly (readonly Cell[])[]> => {
    const { sheets } = await handsOn(page).saved();
    return (sheets.find(({ name }) => name === sheet)?.cells ?? []).map((row) =>
      row.map((cell) => cell?.value),
    );
  };

  beforeAll(async () => {
    visitor = await newVisitor({ width: 320, height: 760 });
    page = await visitor.open(inject("address"));
    await handsOn(page).open(book);
    await open();
  });

  afterAll(() => visitor.close());

  it("keeps what was typed when the page is closed before it is written", async () => {
    await page.getByLabel("Which figure?").waitFor();
    await keyTo(page, "Which figure?");
    await page.keyboard.type("orla");
    await page.getByText("In the chart, with 3 of 3 measures taken.").waitFor();
    await keyTo(page, /^The tape says/);
    await take("Bust", "181.6", /^2 of 3$/);
    await take("Waist", "5 5/16 in", /^3 of 3$/);
    // What is asked for next stands above the field, both in sight.
    await expect.poll(() => inSight(page.getByText("The tape says now (Hip)"))).toBe(true);
    await expect.poll(() => inSight(page.getByLabel("The tape says now (Hip)"))).toBe(true);
    await page.getByText(/^Kept in this browser/).waitFor();
    await page.close({ runBeforeUnload: false });
    page = await visitor.open(inject("address"));
    await open();
    await page.getByText("2 readings of Orla are not written yet").waitFor();
    expect(await faults(page)).toEqual([]);
    await keyTo(page, "Go on measuring Orla");
    await page.keyboard.press("Enter");
    await page.getByText("3 of 3", { exact: true }).waitFor();
  });

  it("tells how a second round repeats, and asks about what does not", async () => {
    await keyTo(page, /^The tape says/);
    await take("Hip", "194", "That was the last measure.");
    await keyTo(page, "Measure all of it again");
    await page.keyboard.press("Enter");
    await page.getByText("1 of 3, round 2").waitFor();
    await keyTo(page, /^The tape says/);
    // The chart’s own reading is the first. 2.8 standard deviations of the usual half a millimetre are 1.4 mm.
    await take("Bust", "182", "Bust: First 181 mm, now 182 mm: 1 mm apart, which is usual (up to 1.4 mm).");
    await take("Waist", "140", "differs from the first reading");
    await take("Waist", "135", "Waist: First 134 mm, now 135 mm: 1 mm apart");
    await take("Hip", "", "That was the last measure.");
    await page.getByText("The chart gets 181.6 mm, the middle one of 3 readings.").waitFor();
    expect(await faults(page)).toEqual([]);
    const wide = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(wide).toBeLessThanOrEqual(0);
  });

  it("writes chart and Readings as one step, and takes it back as one", async () => {
    await keyTo(page, /^Write 5 readings$/);
    await page.keyboard.press("Enter");
    await page.getByText("5 readings of Orla stand in the chart now").waitFor();
    const waists = [134, 5.3125 * 25.4, 135].sort((a, b) => a - b);
    const orla = (await cells("Figures"))[1];
    expect(orla?.slice(0, 2)).toEqual(["Orla", 181.6]);
    expect(orla?.[2]).toBeCloseTo(waists[1] ?? 0, 3);
    expect(orla?.[3]).toBe(194);
    const kept = (await cells("Readings")).slice(3);
    expect(kept.map((row) => row.slice(0, 3))).toEqual([
      ["Orla", "Bust", 181],
      ["Orla", "Bust", 181.6],
      ["Orla", "Bust", 182],
      ["Orla", "Waist", 134],
      ["Orla", "Waist", 134.9375],
      ["Orla", "Waist", 135],
      ["Orla", "Hip", 194],
      ["Orla", "Hip", 194],
    ]);
    // The chart’s own has no day; those of now have that of the maker.
    expect(kept.map((row) => row[3] === undefined)).toEqual([
      true,
      false,
      false,
      true,
      false,
      false,
      true,
      false,
    ]);
    expect(kept[1]?.[3]).toMatch(/^\d{4}-\d\d-\d\d$/);
    await page.getByRole("button", { name: "Undo: Write 5 readings of Orla" }).press("Enter");
    await page.getByText("Undone: Write 5 readings of Orla.").waitFor();
    await page.getByText("They were written and taken back.").waitFor();
    expect((await cells("Figures"))[1]).toEqual(["Orla", 181, 134, 194]);
    expect(await cells("Readings")).toEqual([]);
  });
});

describe("the measuring guide", () => {
  let visitor: Visitor;
  let page: Page;
  const folder = mkdtempSync(path.join(os.tmpdir(), "measure-book-guide-"));

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
    await page.getByLabel("Sections").getByRole("button", { name: "Measure" }).click();
    await page.getByText("Measuring guide to print").click();
  });

  afterAll(async () => {
    await visitor.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it("is saved as a page that is read without a script and asks no address", async () => {
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save it as a page" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("how-to-measure.html");
    const file = path.join(folder, "guide.html");
    await download.saveAs(file);
    expect(readFileSync(file, "utf8")).not.toContain("<script");
    const guide = await visitor.context.newPage();
    const asked: string[] = [];
    const said: string[] = [];
    guide.on("request", (request) => asked.push(request.url()));
    guide.on("console", (message) => said.push(message.text()));
    await guide.goto(`file://${file}`);
    expect(await guide.getByRole("listitem").count()).toBe(26);
    expect(
      await guide.getByRole("img", { name: "Bust: the tape goes around here.", exact: true }).count(),
    ).toBe(1);
    // Two cards beside each other on the screen: the policy lets its own style count.
    const [first, second] = await guide
      .getByRole("listitem")
      .evaluateAll((items) => items.slice(0, 2).map((item) => item.getBoundingClientRect().top));
    expect(first).toBe(second);
    expect(asked).toEqual([`file://${file}`]);
    expect(said).toEqual([]);
    expect(await faults(guide, "main")).toEqual([]);
    await guide.close();
  });

  it("is printed alone, on as many pages as it needs", async () => {
    // A wide sheet beside it, which would be printed across.
    await handsOn(page).goTo("Figures!A4");
    // The browser of the test has no printer to ask; what it would send there is read back.
    await page.evaluate(() => {
      window.print = () => undefined;
    });
    await page.getByRole("button", { name: "Print the guide" }).click();
    const file = path.join(folder, "guide.pdf");
    await page.pdf({ path: file, preferCSSPageSize: true });
    const text = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
    expect(text).toContain("How to take the measures");
    for (const name of ["Head", "Bust", "Inside leg"]) expect(text).toContain(name);
    // Whose it is, who was measured, and which page of how many.
    expect(text).toMatch(/^Demo$/m);
    for (const word of ["Figure", "Date", "Measured by"]) expect(text).toContain(word);
    const pages = text.split("\f").filter((page) => page.trim() !== "");
    pages.forEach((page, at) => {
      expect(page).toMatch(new RegExp(`^.*\\b${String(at + 1)} ?/ ?${String(pages.length)}$`, "mu"));
    });
    expect(text).not.toContain("Save .xlsx");
    const info = execFileSync("pdfinfo", [file], { encoding: "utf8" });
    expect(info).toMatch(/Page size: +59\d\.?\d* x 84\d/);
    expect(Number(/Pages: +(\d+)/.exec(info)?.[1])).toBeGreaterThan(2);
    // It is gone when the printing is over.
    await page.locator(".printed-guide").waitFor({ state: "detached" });
  });
});
