import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { cellText } from "../../addin/chart/cell.ts";
import { readXlsx } from "../../addin/workbook/xlsx/readXlsx.ts";
import { groupQuestionWords } from "../../taskpane/groups/questions.ts";
import { faults } from "./faults.ts";
import type { Visitor } from "./page.ts";
import { newVisitor, saveXlsx } from "./page.ts";

describe("who shares a body, on the page without Excel", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
    await openGroups(page);
  });

  afterAll(() => visitor.close());

  it("answers who shares a body, with what binds each group and who is nearest outside", async () => {
    const cards = page.locator("[data-group]");
    await cards.first().waitFor();
    const texts = await cards.allInnerTexts();
    expect(texts.length).toBeGreaterThan(4);
    for (const text of texts) {
      expect(text).toMatch(/Draft for: \S/);
      expect(text).toMatch(/Differ most: \S/);
      expect(text).toMatch(/Nearest outside: \S/);
      expect(text).toMatch(/How sure: \S/);
    }
    await page.getByRole("heading", { name: /^Alone: \d+ figures$/ }).waitFor();
  });

  it("marks what rests on doubtful readings, on the cards and with the pairs, and what becomes of it", async () => {
    await page.getByText(/^◆ For \d+ figures? the group rests on doubtful readings/).waitFor();
    const marks = page
      .getByRole("list", { name: /^Doubtful (in group \d+|among those alone)$/ })
      .getByRole("listitem");
    const texts = await marks.allInnerTexts();
    expect(texts.join("\n")).toMatch(
      /^◆\s*doubtful\s*\S+: Rests on a doubtful reading: .+\. Mended, (it would|its group stays)/m,
    );
    await ask(page, groupQuestionWords.pairs);
    await page.getByText(/◆ \d+ pairs? rests? on doubtful readings\.$/).waitFor();
    await ask(page, groupQuestionWords.models);
    const ofModels = page.getByRole("list", { name: /^Doubtful (with|among)/ }).getByRole("listitem");
    // Until the search with the readings mended has ended, the list tells what each figure would be near to.
    await page.getByText(/^◆ With the doubtful readings mended: \d+ house models/).waitFor();
    expect((await ofModels.allInnerTexts()).join("\n")).toMatch(/: Rests on .+ Mended: \S+ serves it\.$/m);
    await ask(page, groupQuestionWords.shares);
    await page.locator("[data-group]").first().waitFor();
  });

  it("moves the cut line of the tree by keyboard and by hand, and the groups follow", async () => {
    await show(page, "As a tree");
    await page.locator("summary").getByText("What counts").click();
    const line = page.getByRole("slider", { name: "Cut line" });
    const said = (): Promise<string | null> => line.getAttribute("aria-valuetext");
    const before = await said();
    expect(before).toMatch(/^1 tolerance: \d+ groups/);
    await line.focus();
    for (let times = 0; times < 16; times++) await page.keyboard.press("ArrowRight");
    await page.getByText(groupsIn(before)).waitFor({ state: "detached" });
    expect(await said()).toMatch(/^1\.8 tolerances: /);
    expect(groupsIn(await said())).not.toBe(groupsIn(before));
    expect(await page.getByLabel("How far two figures may differ").last().inputValue()).toBe("1.8");

    // What stands above moves it while the groups follow: the hand goes there when it is still.
    await line.locator("span").hover();
    const box = await line.locator("span").boundingBox();
    if (!box) throw new Error("The cut line is not in sight.");
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 40, box.y + box.height / 2, { steps: 4 });
    await page.mouse.up();
    await expect.poll(async () => Number(await line.getAttribute("aria-valuenow"))).toBeGreaterThan(1.9);

    await page.getByLabel("How far two figures may differ").last().fill("1");
    await page.getByText(groupsIn(before)).first().waitFor();
  });

  it("has a table behind each drawing", async () => {
    for (const view of ["As a tree", "As a map"]) {
      await show(page, view);
      await page.getByLabel("Show as table").check();
      expect(await page.locator("figure table tbody tr").count(), view).toBeGreaterThan(5);
      await page.getByLabel("Show as table").uncheck();
      await page.locator("figure svg[role=img]").waitFor();
    }
  });

  it("says how well each figure sits in its group, when it is asked", async () => {
    const table = page.getByRole("group", { name: "How well each figure sits in its group" });
    expect(await table.count()).toBe(0);
    await page.locator("summary").getByText("How well each figure sits in its group").click();
    await table.waitFor();
    const rows = await table.locator("tbody tr").allInnerTexts();
    expect(rows.length).toBeGreaterThan(5);
    for (const row of rows)
      expect(row).toMatch(/(sits well|between its group and .+|nearer to .+)\s+-?[\d.]+$/);
    await page.locator("summary").getByText("How well each figure sits in its group").click();
  });

  it("adds a table for second readings, and takes it back", async () => {
    await page.locator("summary").getByText("Tables").click();
    await page
      .getByText(/^You can add such a table, with the \d+ figures and \d+ measures of the chart/)
      .waitFor();
    await page.getByRole("button", { name: "Add a table for second readings" }).click();
    await page.getByText("The table SecondReadings has no reading yet.").waitFor();
    expect(await page.getByLabel("Second readings").inputValue()).toBe("SecondReadings");
    expect((await columnOf(page, "Second readings", "Figure")).length).toBeGreaterThan(20);
    await page.getByRole("button", { name: /^Undo/ }).first().click();
    await page.getByRole("button", { name: "Add a table for second readings" }).waitFor();
    await page.locator("summary").getByText("Tables").click();
  });

  it("finds the fewest groups, and proves them", async () => {
    await page.getByLabel("What makes a group").selectOption({ label: "The same, in the fewest groups" });
    await page.getByText(/^✓ Proved: \d+ groups, and fewer are impossible\.$/).waitFor();
    await page.getByLabel("What makes a group").selectOption({ label: "Every two within tolerance" });
  });

  it("writes the groups into a column of the chart, brings it up to date, and takes it back", async () => {
    await show(page, "As cards");
    await page.getByRole("button", { name: "Write the groups" }).click();
    await page.getByText(/^Adds the column “Group” at the right of the table Figures/).waitFor();
    await page.getByRole("button", { name: "Write it" }).click();
    await page.getByText("The groups stand in the column “Group” of the table Figures already.").waitFor();
    const column = await columnOf(page, "Figures", "Group");
    expect(column.filter((word) => word === "Group 1").length).toBeGreaterThan(1);
    expect(column).toContain("alone");

    await page.getByRole("button", { name: /^Undo/ }).first().click();
    await page.getByText(/^Adds the column “Group”/).waitFor();
    expect(await columnOf(page, "Figures", "Group")).toEqual([]);
  });

  it("writes the groups to a sheet as a formula that gives the same groups, also with wider tolerances", async () => {
    await page.getByLabel("How far two figures may differ").last().fill("1.5");
    await page.getByLabel("To a new sheet, as a formula that follows every change").check();
    await page.getByText(/with 1\.5 times your tolerances/).waitFor();
    const said = await page
      .getByText(/^\d+ groups, holding/)
      .first()
      .innerText();
    await page.getByRole("button", { name: "Write it" }).click();
    await page.getByText("are on the sheet “Shared bodies”").waitFor();
    await page.getByRole("tab", { name: "Shared bodies", exact: true, selected: true }).waitFor();
    const groups = (await columnOf(page, "Shared bodies", "Group")).filter((text) => /^\d+$/.test(text));
    const sizes = new Map<string, number>();
    for (const group of groups) sizes.set(group, (sizes.get(group) ?? 0) + 1);
    const shared = [...sizes.values()].filter((size) => size > 1).length;
    expect(said.startsWith(`${String(shared)} groups`)).toBe(true);
    await page.getByRole("button", { name: /^Undo/ }).first().click();
    await page.getByText("Nothing to undo").waitFor();
    await page.getByLabel("How far two figures may differ").last().fill("1");
  });

  it("answers who only shares loose clothes, and draws two figures over each other", async () => {
    await ask(page, groupQuestionWords.loose);
    await page.getByLabel("Figure", { exact: true }).selectOption({ label: "Ardwen" });
    const loose = page.getByRole("list", { name: "Figures that share some clothes" }).getByRole("button");
    const texts = await loose.allInnerTexts();
    expect(texts.length).toBeGreaterThan(0);
    expect(texts.join("\n")).toMatch(/Fitted clothes no, .+ (smaller|larger).*Loose clothes yes/);
    await loose.first().click();
    await page.getByText("This is a diagram, not a likeness").waitFor();
    await page.locator("figure svg[role=img]").waitFor();
    await page.getByRole("heading", { name: "Loose clothes" }).waitFor();
    await page.getByRole("button", { name: "Back to all figures" }).click();
    await loose.first().waitFor();
  });

  it("writes who shares loose clothes to a sheet, as a formula that names the same figures", async () => {
    await ask(page, groupQuestionWords.loose);
    await page.getByLabel("Figure", { exact: true }).selectOption({ label: "Ardwen" });
    const shares = page.getByRole("list", { name: "Figures that share some clothes" }).getByRole("button");
    await shares.first().waitFor();
    const count = await shares.count();
    await page.getByRole("button", { name: "Write to a sheet" }).click();
    await page.getByText('=FIT.SHARES(Figures[#All], "Ardwen", , Tolerances[#All])').waitFor();
    await page.getByRole("button", { name: "Write it" }).click();
    await page.getByText("are on the sheet “Loose clothes 2”").waitFor();
    const said = await columnOf(page, "Loose clothes 2", "Shares");
    expect(said.filter((text) => text === "only some clothes")).toHaveLength(count);
    await page.getByRole("button", { name: /^Undo/ }).first().click();
    await page.getByText("Nothing to undo").waitFor();
  });

  it("answers which figures to keep as house models, proved to be the fewest", async () => {
    await ask(page, groupQuestionWords.models);
    await page.getByText(/^✓ Proved: \d+ house models, and fewer are impossible\.$/).waitFor();
    await page
      .getByText(/^◆ With the doubtful readings mended: \d+ house models, and fewer are impossible\.$/)
      .waitFor();
    const models = page.getByRole("list", { name: /^House models/ }).getByRole("listitem");
    expect(await models.count()).toBeGreaterThan(3);
    expect(await models.first().innerText()).toMatch(/serves \d+ others\n+.+\n+(Most|Nothing) to alter/);
  });

  it("answers what to measure next, and goes to the cell", async () => {
    await ask(page, groupQuestionWords.next);
    await page
      .getByText(/^Settles \d+ pairs? of figures/)
      .first()
      .waitFor();
    await page.getByRole("button", { name: "Go to the cell" }).first().click();
    await page.getByRole("heading", { name: "Readings to take again" }).waitFor();
  });

  it("answers which verdicts wait for a reading, and leads to where it is measured", async () => {
    await ask(page, groupQuestionWords.next);
    const waiting = page.getByRole("list", { name: "Readings that verdicts wait for, best first" });
    const first = waiting.getByRole("listitem").first();
    const [heading = ""] = (await first.innerText()).split("\n");
    const [figure = "", measure = ""] = heading.split(": ");
    expect(await first.innerText()).toMatch(/(Settles \d+ verdicts?: \S+-\d|\d+ verdicts? waits? for)/);
    await first.getByRole("button", { name: "Measure it" }).click();
    await expect.poll(() => page.getByLabel("Which figure?").inputValue()).toBe(figure);
    await page.getByRole("heading", { name: measure, exact: true, level: 2 }).waitFor();
    await page.getByLabel("Sections").getByRole("button", { name: "Groups" }).click();
    await page.getByRole("heading", { name: "Readings to take again" }).waitFor();
  });

  it("has no fault that axe finds", async () => {
    for (const question of Object.values(groupQuestionWords)) {
      await ask(page, question);
      expect(await faults(page), question).toEqual([]);
    }
  });
});

describe("who shares a body, on a narrow screen of 320 px", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor({ width: 320, height: 640 });
    page = await visitor.open(inject("address"));
    await page.getByRole("button", { name: "Pane", exact: true }).click();
    await openGroups(page);
  });

  afterAll(() => visitor.close());

  it("cuts nothing off at the side and has no fault that axe finds", async () => {
    for (const view of ["As cards", "As a tree", "As a map"]) {
      await show(page, view);
      expect(await overflow(page), view).toBeLessThanOrEqual(0);
      expect(await faults(page), view).toEqual([]);
    }
    for (const question of Object.values(groupQuestionWords)) {
      await ask(page, question);
      expect(await overflow(page), question).toBeLessThanOrEqual(0);
      expect(await faults(page), question).toEqual([]);
    }
    await ask(page, groupQuestionWords.loose);
    await page
      .getByRole("list", { name: /^Figures that share/ })
      .getByRole("button")
      .first()
      .click();
    await page.locator("figure svg[role=img]").waitFor();
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    expect(await faults(page)).toEqual([]);
  });
});

async function openGroups(page: Page): Promise<void> {
  await page.getByLabel("Sections").getByRole("button", { name: "Groups" }).click();
  await page.getByText(/^\d+ groups, holding/).waitFor();
}

async function ask(page: Page, question: string): Promise<void> {
  await page
    .getByRole("navigation", { name: "Questions about groups" })
    .getByRole("button", { name: question, exact: true })
    .click();
}

async function show(page: Page, view: string): Promise<void> {
  await page
    .getByRole("navigation", { name: "How to show the groups" })
    .getByRole("button", { name: view, exact: true })
    .click();
}

/** “8 groups, holding 21 figures; 16 figures are in none.” */
function groupsIn(said: string | null): string {
  return said?.replace(/^[^:]*: /, "") ?? "";
}

/** How many pixels section or page are wider than what is seen of them. */
function overflow(page: Page): Promise<number> {
  return page.evaluate(() =>
    Math.max(
      ...[document.documentElement, ...document.querySelectorAll("#section-groups")].map(
        (each) => each.scrollWidth - each.clientWidth,
      ),
    ),
  );
}

/** What stands below a heading on a sheet of the saved file; empty without that heading. */
async function columnOf(page: Page, sheet: string, heading: string): Promise<readonly string[]> {
  const download = await saveXlsx(page);
  const { sheets } = await readXlsx(readFileSync(await download.path()));
  const rows = sheets.find(({ name }) => name === sheet)?.cells ?? [];
  const texts = rows.map((row) => row.map((cell) => cellText(cell?.value)));
  const top = texts.findIndex((row) => row.includes(heading));
  const at = texts[top]?.indexOf(heading) ?? -1;
  return at < 0 ? [] : texts.slice(top + 1).map((row) => row[at] ?? "");
}
