import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { cellText } from "../../addin/chart/cell.ts";
import { readXlsx } from "../../addin/workbook/xlsx/readXlsx.ts";
import { questionWords } from "../../taskpane/fit/questions.ts";
import { faults } from "./faults.ts";
import type { Visitor } from "./page.ts";
import { newVisitor, openFile, saveXlsx } from "./page.ts";

describe("which garment goes on which figure, on the page without Excel", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
    await page.getByLabel("Sections").getByRole("button", { name: "Fit" }).click();
  });

  afterAll(() => visitor.close());

  it("answers which figures wear a dress, best first", async () => {
    await ask(questionWords.wearers);
    await page.getByLabel("Pattern", { exact: true }).selectOption({ label: await optionLike("D-1 ") });
    const verdicts = await answers().allInnerTexts();
    expect(verdicts.length).toBeGreaterThan(10);
    expect(verdicts[0]).toContain("fits");
    expect(verdicts.slice(1).join("\n")).toMatch(/too (tight|loose)/);
  });

  it("opens the reasons of a figure that cannot wear it, with the amounts", async () => {
    await answers().filter({ hasText: "too tight" }).first().click();
    await page.getByRole("heading", { name: "Measures" }).waitFor();
    // A drawing is there once it is known how wide it may be.
    await expect.poll(() => page.locator("aside svg[role=img]").count()).toBeGreaterThan(2);
    await page.getByLabel("Show as table").check();
    await expect.poll(() => page.locator("aside table").count()).toBeGreaterThan(0);
  });

  it("says what to change, in all and at each seam edge", async () => {
    await ask(questionWords.change);
    await page.getByLabel("Pattern", { exact: true }).selectOption({ label: await optionLike("B-1 ") });
    await page
      .locator("#section-fit")
      .getByLabel("Figure", { exact: true })
      .selectOption({ label: "Isolmay" });
    await page
      .getByText(/^Each of \d+ seam edges$/)
      .first()
      .waitFor();
  });

  it("answers what a figure can wear", async () => {
    await ask(questionWords.wardrobe);
    const verdicts = await answers().allInnerTexts();
    expect(verdicts.length).toBeGreaterThan(10);
    expect(verdicts[0]).toContain("fits");
  });

  it("marks the verdicts that rest on doubtful readings, in the list and in the matrix, with what they would be", async () => {
    await ask(questionWords.wardrobe);
    await page
      .locator("#section-fit")
      .getByLabel("Figure", { exact: true })
      .selectOption({ label: "Esterby" });
    const marked = answers().filter({ hasText: /◆\s*doubtful\s*Rests on / });
    await marked.first().waitFor();
    expect(await marked.first().innerText()).toMatch(/The verdict: .+ (if mended|without)\.$/);
    await ask(questionWords.matrix);
    await page
      .getByText(/^◆ \d+ verdicts rest on doubtful readings; (none|\d+) would be (another one|others)/)
      .waitFor();
    const cells = page.getByRole("gridcell", { name: /^[a-z ]+, doubtful: [a-z ]+ (if mended|without)$/ });
    const grid = page.getByRole("grid", { name: "Verdict of every pattern on every figure" });
    // Only what is in sight is drawn, a little after it has come into sight.
    for (let to = 0; (await cells.count()) === 0 && to < 40; to++) {
      await grid.evaluate((box, left) => {
        box.scrollLeft = left;
      }, to * 168);
      await expect.poll(() => grid.evaluate(isDrawnToItsEdge)).toBe(true);
    }
    await cells.first().waitFor();
    expect(await cells.first().innerText()).toContain("◆");
    await cells.first().click();
    await page
      .getByText(/^Rests on a doubtful reading: /)
      .first()
      .waitFor();
    await page.getByRole("button", { name: "Look at it in Check" }).waitFor();
  });

  it("says the whole of a name that the matrix has no room for, by keyboard and by touch", async () => {
    const long = "D-8 Brook dress, from a box of old papers";
    await ask(questionWords.matrix);
    const grid = page.getByRole("grid", { name: "Verdict of every pattern on every figure" });
    const whole = page.locator("#section-fit p").filter({ hasText: `${long} on ` });
    await grid.locator("[role=gridcell][tabindex='0']").press("Control+Home");
    for (let rows = 0; rows < 20 && !(await whole.isVisible()); rows++)
      await page.keyboard.press("ArrowDown");
    const header = grid.getByRole("rowheader", { name: long });
    expect(await header.locator("span").evaluate((name) => name.scrollHeight > name.clientHeight)).toBe(true);
    expect(await whole.innerText()).toMatch(
      /^D-8 Brook dress, from a box of old papers on \w+:\s+\S+\s+[a-z ]+$/u,
    );
    expect(await whole.evaluate((line) => line.scrollWidth <= line.clientWidth)).toBe(true);
    await page.keyboard.press("Control+Home");
    await whole.waitFor({ state: "hidden" });
    await header.scrollIntoViewIfNeeded();
    await header.click();
    await whole.waitFor();
  });

  it.each([
    [questionWords.wardrobe, "WARDROBE", "Wardrobe 2"],
    [questionWords.matrix, "WHATFITS", "Fit"],
  ])(
    "writes what is on the screen under “%s” as a formula, goes there, and takes it back",
    async (question, name, sheet) => {
      await ask(question);
      await page.getByRole("button", { name: "Write to a sheet" }).first().click();
      await page.getByRole("button", { name: "Write it" }).click();
      await page
        .getByText(/✓ Done/)
        .first()
        .waitFor();
      await page.getByRole("tab", { name: sheet, exact: true, selected: true }).waitFor();
      const formulas = (await saved()).sheets.flatMap((each) =>
        each.cells.flat().map((cell) => cell?.formula ?? ""),
      );
      expect(formulas.filter((formula) => formula.startsWith(`=FIT.${name}(`))).toHaveLength(2);

      await page.getByRole("button", { name: /^Undo/ }).first().click();
      await page.getByText("Nothing to undo").waitFor();
      expect((await saved()).sheets.map((each) => each.name)).not.toContain(sheet);
    },
  );

  it("keeps rules and verdicts through an .xlsx file", async () => {
    const before = await save();
    await openFile(page, "again.xlsx", before);
    await page.getByText("“again.xlsx” is open.").waitFor();
    const [first, second] = await Promise.all([readXlsx(before), saved()]);
    for (const name of ["Match", "Ease rules", "Patterns", "Why"]) {
      expect(texts(second, name), name).toEqual(texts(first, name));
    }
    expect(texts(second, "Match").flat()).toContain("will not go on");
  });

  it("has no fault that axe finds", async () => {
    await page.getByLabel("Sections").getByRole("button", { name: "Fit" }).click();
    for (const question of Object.values(questionWords)) {
      await ask(question);
      expect(await faults(page), question).toEqual([]);
    }
  });

  async function ask(question: string): Promise<void> {
    await page
      .getByRole("navigation", { name: /^Question/ })
      .getByRole("button", { name: question, exact: true })
      .click();
  }

  function answers(): Locator {
    return page.locator("#section-fit ul[aria-label] > li > button");
  }

  async function optionLike(start: string): Promise<string> {
    const labels = await page.getByLabel("Pattern", { exact: true }).locator("option").allInnerTexts();
    const found = labels.find((label) => label.startsWith(start));
    if (found === undefined) throw new Error(`No pattern begins with “${start}”: ${labels.join(", ")}`);
    return found;
  }

  async function save(): Promise<Uint8Array> {
    const download = await saveXlsx(page);
    return readFileSync(await download.path());
  }

  async function saved(): ReturnType<typeof readXlsx> {
    return readXlsx(await save());
  }
});

/** Whether the grid of verdicts shows columns as far as it can be seen to the right. */
function isDrawnToItsEdge(grid: Element): boolean {
  const { left, width } = grid.getBoundingClientRect();
  const edge = left + width - 20;
  return [...grid.querySelectorAll("[role=columnheader]")].some((header) => {
    const box = header.getBoundingClientRect();
    return box.left <= edge && edge <= box.right;
  });
}

function texts(content: Awaited<ReturnType<typeof readXlsx>>, sheet: string): string[][] {
  const rows = content.sheets.find(({ name }) => name === sheet)?.cells ?? [];
  return rows.map((row) => row.map((cell) => cellText(cell?.value)));
}
