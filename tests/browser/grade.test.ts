import { readFileSync } from "node:fs";
import type { Download, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { readXlsx } from "../../addin/workbook/xlsx/readXlsx.ts";
import { writeXlsx } from "../../addin/workbook/xlsx/writeXlsx.ts";
import { faults } from "./faults.ts";
import type { Visitor } from "./page.ts";
import { newVisitor, openFile, saveXlsx } from "./page.ts";

describe("from the demo’s base figure to a taller, slimmer one, on the page without Excel", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
    await openGrade(page);
  });

  afterAll(() => visitor.close());

  it("says at which scale to print, and what to let out then, by the measures of the bodice alone", async () => {
    const verdict = await page.getByRole("group", { name: "Verdict" }).innerText();
    expect(verdict).toMatch(/Print at [\d.]+ %, then let out Shoulder width by [\d.]+ mm/);
    expect(verdict).not.toMatch(/Hip|Inside leg/);
    const worst = await page
      .locator("[aria-label='What the print leaves, worst first'] tbody tr")
      .first()
      .innerText();
    expect(worst).toMatch(/^Shoulder width\s+▲\s*out\s*, [\d.]+ mm too small/);
  });

  it("says where every point goes, draws the pieces, and shows the same as a table", async () => {
    const points = await page
      .getByRole("list", { name: "Where the points of the bodice front go" })
      .getByRole("listitem")
      .allInnerTexts();
    expect(points).toHaveLength(6);
    expect(points[0]).toBe("Waist at centre: stays");
    expect(points[1]).toMatch(/^Waist at side: [\d.]+ mm out$/);
    const drawing = page.getByRole("img", { name: "Bodice front" });
    expect(await drawing.locator("path").count()).toBeGreaterThan(8);
    await page.getByRole("switch", { name: "Show as table" }).first().check();
    expect(await page.getByRole("group", { name: "Bodice front" }).locator("tbody tr").count()).toBe(6);
    await page.getByRole("switch", { name: "Show as table" }).first().uncheck();
    await drawing.waitFor();
  });

  it("saves an SVG whose test square measures 50 mm when it is opened", async () => {
    const download = await saved(page, page.getByRole("button", { name: "Save the pieces true to size" }));
    expect(download.suggestedFilename()).toBe("grade-bodice-ardwen-isolmay.svg");
    const svg = await visitor.context.newPage();
    await svg.setContent(readFileSync(await download.path(), "utf8").replace(/^<\?xml[^>]*>/, ""));
    const size = await svg.locator("#test-square").evaluate((square) => {
      const { width, height } = square.getBoundingClientRect();
      return [width, height];
    });
    // CSS Values and Units 3, section 6.2: 96 px are 1 in, 25.4 mm.
    for (const px of size) expect(Math.abs((px * 25.4) / 96 - 50)).toBeLessThan(0.1);
    expect(await svg.locator("svg").textContent()).toContain("must be 50 mm");
    await svg.close();
  });

  it("saves a drawing as a picture at twice its size", async () => {
    const drawn = await page.getByRole("img", { name: "Bodice front" }).boundingBox();
    const download = await saved(page, page.getByRole("button", { name: "Save as picture" }).first());
    const png = readFileSync(await download.path());
    // PNG, section 11.2.2: width and height stand in bytes 16 to 23.
    expect(png.subarray(1, 4).toString("latin1")).toBe("PNG");
    expect(png.readUInt32BE(16)).toBeGreaterThan(2 * (drawn?.width ?? Infinity) - 2);
    expect(png.readUInt32BE(20)).toBeGreaterThan(2 * (drawn?.height ?? Infinity) - 2);
  });

  it("shows a run of figures in one table once there are several targets", async () => {
    await page.getByText("More targets").click();
    await page.getByLabel("Another target").selectOption({ label: "Gwendry" });
    await page.getByRole("button", { name: "Add this target" }).click();
    const run = page.getByRole("group", { name: "From the base to each target" });
    expect(await run.innerText()).toMatch(/Ardwen to Isolmay[\s\S]*print and alter[\s\S]*Ardwen to Gwendry/);
    expect(await page.getByRole("group", { name: "Step by step" }).innerText()).toContain("uneven");
    await page.getByRole("button", { name: "Leave out Gwendry" }).click();
    await run.waitFor({ state: "detached" });
  });

  it("writes grade and print scale to a sheet as one action, and takes it back", async () => {
    await page.getByRole("button", { name: "Write to a sheet" }).click();
    const box = page.getByRole("region", { name: "Write to a sheet" });
    expect(await box.innerText()).toContain('=FIT.GRADE(Figures[#All], "Ardwen", "Isolmay"');
    const before = (await workbook()).sheets.map(({ name }) => name);
    await box.getByRole("button", { name: "Write it" }).click();
    await page
      .getByText(/✓ Done/)
      .first()
      .waitFor();
    const written = await workbook();
    const added = written.sheets.filter(({ name }) => !before.includes(name));
    expect(added).toHaveLength(1);
    const formulas = added[0]?.cells[3]?.flatMap((cell) => cell?.formula ?? []);
    expect(formulas?.map((formula) => formula.split("(")[0])).toEqual(["=FIT.GRADE", "=FIT.RESIZE"]);
    expect(formulas?.[1]).toContain('"Neck, Shoulder width, Bust, Waist, Back waist length"');
    await page.getByRole("button", { name: /^Undo/ }).first().click();
    await page.getByText("Nothing to undo").waitFor();
    expect((await workbook()).sheets.map(({ name }) => name)).toEqual(before);
  });

  async function workbook(): ReturnType<typeof readXlsx> {
    const file = await saveXlsx(page);
    return readXlsx(readFileSync(await file.path()));
  }
});

describe("an empty workbook", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
    const { bytes } = await writeXlsx({ sheets: [{ name: "Mine", cells: [[{ value: "Notes" }]] }] });
    await openFile(page, "empty.xlsx", bytes);
    await page.getByText("“empty.xlsx” is open.").waitFor();
  });

  afterAll(() => visitor.close());

  it("is offered the demo, which can be graded at once and taken back as a whole", async () => {
    await page.getByLabel("Sections").getByRole("button", { name: "Grade" }).click();
    await page.getByText("There is no chart in the workbook yet.").first().waitFor();
    await page.getByRole("button", { name: "Add the demo" }).first().click();
    await page.getByRole("img", { name: "Bodice front" }).waitFor();
    await page.getByRole("button", { name: "Undo: Add the demo" }).click();
    await page.getByText("Undone: Add the demo.").waitFor();
    await page.getByText("There is no chart in the workbook yet.").first().waitFor();
    const file = await saveXlsx(page);
    const { sheets } = await readXlsx(readFileSync(await file.path()));
    expect(sheets.map(({ name }) => name)).toEqual(["Mine"]);
  });
});

describe("the section Grade at 320 px", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor({ width: 320, height: 640 });
    page = await visitor.open(inject("address"));
    await page.getByRole("button", { name: "Pane", exact: true }).click();
    await openGrade(page);
  });

  afterAll(() => visitor.close());

  it("has no fault that axe finds, and nothing stands out at the side, for every garment", async () => {
    const garments = page.getByLabel("Garment or piece");
    for (const garment of ["Bodice", "Flared skirt", "Trousers"]) {
      await garments.selectOption({ label: garment });
      await page.getByRole("img").first().waitFor();
      expect(await faults(page), garment).toEqual([]);
      expect(await overflow(page), garment).toBeLessThanOrEqual(0);
    }
  });

  it("can be used with the keyboard alone", async () => {
    await page.getByLabel("Garment or piece").focus();
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.getByRole("checkbox", { name: "Hip", exact: true }).waitFor();
    const shows = page.getByRole("switch", { name: "Show as table" }).first();
    for (let presses = 0; presses < 60 && !(await isFocused(shows)); presses++) {
      await page.keyboard.press("Tab");
    }
    await page.keyboard.press("Space");
    expect(await shows.isChecked()).toBe(true);
    await page.keyboard.press("Tab");
    expect(await isFocused(page.locator("figure [role=group]").first())).toBe(true);
  });
});

async function openGrade(page: Page): Promise<void> {
  await page.getByLabel("Sections").getByRole("button", { name: "Grade" }).click();
  await page.getByLabel("Drafted for (base figure)").selectOption({ label: "Ardwen" });
  await page.getByLabel("To be worn by (target figure)").selectOption({ label: "Isolmay" });
  await page.getByRole("img", { name: "Bodice front" }).waitFor();
}

async function saved(page: Page, button: Locator): Promise<Download> {
  const [download] = await Promise.all([page.waitForEvent("download"), button.click()]);
  return download;
}

function isFocused(of: Locator): Promise<boolean> {
  return of.evaluate((element) => element === document.activeElement);
}

/** How many pixels pane or page are wider than their room. */
function overflow(page: Page): Promise<number> {
  return page.evaluate(() => {
    const wider = (element: Element | null) => (element ? element.scrollWidth - element.clientWidth : 0);
    return Math.max(wider(document.documentElement), wider(document.querySelector("#section-grade")));
  });
}
