import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import type { Page } from "playwright-core";
import type { WorkbookContent } from "../../addin/workbook/content.ts";
import { faults } from "./faults.ts";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";
import { workbooks } from "./oddBooks.ts";
import { openSection, shownSection } from "./tour.ts";

/** What a section says of such a workbook, and the one thing that it offers to do at its head; none where it answers. */
interface Said {
  readonly says: string | RegExp;
  readonly offers: string | undefined;
}

const noChart = (says: string): Said => ({
  says: `There is no chart in the workbook yet. With one, ${says}`,
  offers: "Begin on Home",
});
const noFigures = (says: string): Said => ({
  says: `Your chart on the sheet “Figures” has no figures yet. With them, ${says}`,
  offers: "Measure a figure",
});
const alone = (says: string): Said => ({
  says: `Quillon is the only figure of your chart so far. With a second one, ${says}`,
  offers: "Measure a figure",
});
const unknown: Said = {
  says: "Measure Book knows no measure among the headings of your chart: “Wibble”, “Wobble”.",
  offers: "Go to the headings",
};
const nothingYet = {
  Import: { says: "Bring your measurement chart", offers: "Choose a file" },
  Measure: { says: "There is no chart", offers: "Begin a chart" },
  Check: noChart("readings that cannot be right are found."),
  Groups: noChart("you see who shares a body."),
  Fit: noChart("you see which pattern goes on whom."),
  Grade: noChart("you see how far each point of a pattern moves"),
  Publish: noChart("a page for your buyers is made of it."),
};
const threeFigures = { says: "3 figures and 3 measures of the table Figures checked. Nothing looks wrong." };

const expected: Readonly<Record<keyof typeof workbooks, Readonly<Record<string, Said>>>> = {
  empty: {
    Home: { says: "No measurement chart was found on the sheet “Sheet1”", offers: "Begin a chart" },
    ...nothingYet,
  },
  anotherKind: {
    Home: { says: "No measurement chart was found on the sheet “Fabric”", offers: "Begin a chart" },
    ...nothingYet,
  },
  headingsOnly: {
    Home: { says: "Your chart has its headings and no figures yet.", offers: "Measure a figure" },
    Measure: { says: "One of your chart, or the name of a new one.", offers: "Write the readings" },
    Check: noFigures("readings that cannot be right are found."),
    Groups: noFigures("you see who shares a body."),
    Fit: noFigures("you see which pattern goes on whom."),
    Grade: noFigures("you see how far each point"),
    Publish: noFigures("a page for your buyers"),
  },
  oneFigure: {
    Home: { says: "There is one figure. With a second one", offers: "Add figures" },
    Check: { says: "1 figure and 3 measures of the table Figures checked.", offers: undefined },
    Groups: alone("you see who shares a body."),
    Fit: { says: "No patterns are written down yet. Add the first", offers: "Add a pattern" },
    Grade: alone("you see how far each point"),
    Publish: { says: "1 figure with 3 measures", offers: "Save page" },
  },
  noPatterns: {
    Home: { says: "No patterns are written down yet.", offers: "Add a pattern" },
    Measure: { says: "One of your chart, or the name of a new one.", offers: "Write the readings" },
    Check: { ...threeFigures, offers: undefined },
    Groups: { says: "1 group, holding 2 figures; 1 figure is in none.", offers: "Write the groups" },
    Fit: { says: "No patterns are written down yet. Add the first", offers: "Add a pattern" },
    Publish: { says: "No pattern is published: the page holds the chart alone.", offers: "Save page" },
  },
  unknownColumns: {
    Home: unknown,
    Check: unknown,
    Groups: unknown,
    Fit: unknown,
    Grade: unknown,
    Publish: unknown,
  },
  twoCharts: {
    Home: {
      says: "There is another chart in this workbook, LargeOnes on the sheet “Large”.",
      offers: "Add a pattern",
    },
    Measure: { says: "There are 2 charts in this workbook. Which one holds", offers: undefined },
    Check: { says: "2 figures and 3 measures of the table SmallOnes checked.", offers: undefined },
    Groups: { says: "1 group, holding 2 figures; no figure is left over.", offers: "Write the groups" },
    Fit: { says: "No patterns are written down yet. Add the first", offers: "Add a pattern" },
  },
  oneInTheFirst: {
    Groups: { says: "The table SmallOnes has one figure. Add a second one", offers: undefined },
    Grade: { says: "The table SmallOnes has one figure. Add another", offers: undefined },
  },
  otherTableFirst: {
    Measure: { says: "One of your chart, or the name of a new one.", offers: "Write the readings" },
    Check: { says: "2 figures and 3 measures of the table Dolls checked.", offers: undefined },
    Groups: { says: "1 group, holding 2 figures; no figure is left over.", offers: "Write the groups" },
    Fit: { says: "No patterns are written down yet. Add the first", offers: "Add a pattern" },
    Publish: { says: "No pattern is published: the page holds the chart alone.", offers: "Save page" },
  },
};

/** What nobody who sews can do anything about. */
const raw =
  /undefined|NaN|\[object|TypeError|Something went wrong|cannot be (checked|grouped|judged|graded)/i;

/** Opens a workbook and waits until the pane has begun anew with it, on Home. */
async function openBook(page: Page, content: WorkbookContent): Promise<void> {
  // What is said of the book before must not be taken for this one.
  await openSection(page, "Import");
  await handsOn(page).open(content);
  await page.locator("#section-home").getByRole("heading", { name: "Home", level: 1 }).waitFor();
}

describe("workbooks that are opened in good faith", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
  });

  afterAll(() => visitor.close());

  it.each(Object.entries(workbooks))(
    "like “%s” are met with what they lack and the one thing to do",
    async (name, content) => {
      await openBook(page, content);
      for (const [section, { says, offers }] of Object.entries(expected[name as keyof typeof workbooks])) {
        await openSection(page, section);
        const shown = shownSection(page, section);
        await shown.getByText(says).filter({ visible: true }).first().waitFor();
        const head = shown.locator("header").getByRole("button");
        await expect
          .poll(() => head.allInnerTexts(), { message: section })
          .toEqual(offers === undefined ? [] : [offers]);
        expect(await shown.innerText(), section).not.toMatch(raw);
        expect(await faults(page), section).toEqual([]);
      }
    },
  );
});

describe("the one thing to do", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
  });

  afterAll(() => visitor.close());

  it("leads from a section without a chart to Home, and from there to empty sheets", async () => {
    await openBook(page, workbooks.empty);
    await openSection(page, "Groups");
    await page.getByRole("button", { name: "Begin on Home" }).filter({ visible: true }).click();
    await page.getByRole("button", { name: "Begin a chart" }).filter({ visible: true }).click();
    await page.getByRole("heading", { name: "Import", level: 1 }).filter({ visible: true }).waitFor();
  });

  it("asks into which of two charts one measures, remembers it, and writes there", async () => {
    const hands = handsOn(page);
    await openBook(page, workbooks.twoCharts);
    await openSection(page, "Measure");
    await page.getByRole("button", { name: "LargeOnes on the sheet “Large”" }).click();
    await page.getByLabel("Which figure?").fill("Tobias");
    await page.getByLabel(/^The tape says/).fill("405.5");
    await page.getByRole("button", { name: "Next", exact: true }).click();
    await page.getByText("Into the chart LargeOnes on the sheet “Large”.").waitFor();
    await page.getByRole("button", { name: "Write 1 reading" }).click();
    await page.getByText("stands in the chart now, on the sheet “Large”").waitFor();
    const { sheets } = await hands.saved();
    const busts = (name: string) =>
      sheets
        .find((each) => each.name === name)
        ?.cells.slice(1)
        .map((row) => row[1]?.value);
    expect([busts("Large"), busts("Small")]).toEqual([
      [401, 380, 405.5],
      [201, 201],
    ]);
    await hands.reload();
    await openSection(page, "Measure");
    const chart = page.getByLabel("Chart", { exact: true }).filter({ visible: true });
    await expect.poll(() => chart.inputValue()).toBe("LargeOnes");
    await chart.selectOption("SmallOnes");
    // The other chart is read first, and begins with no name.
    await expect.poll(() => chart.inputValue()).toBe("SmallOnes");
    await page.getByLabel("Which figure?").fill("Quillon");
    await page.getByText("In the chart, with 3 of 3 measures taken.").waitFor();
  });

  it("imports into the only chart, whatever its name, unless a new one is asked for", async () => {
    const hands = handsOn(page);
    await openBook(page, workbooks.otherTableFirst);
    await openSection(page, "Check");
    await page.getByText("2 figures and 3 measures of the table Dolls checked.").waitFor();
    await openSection(page, "Import");
    await page.getByLabel("Or paste rows, headings first").fill("Figure,Bust (mm)\nQuorn,140\n");
    await page.getByRole("button", { name: "Read the pasted rows" }).click();
    const into = page.getByLabel("Import into");
    // It shows where the list goes once that is read.
    await expect.poll(() => into.inputValue()).toBe("Dolls");
    await into.selectOption("");
    await expect.poll(() => into.inputValue()).toBe("");
    await into.selectOption("Dolls");
    await expect.poll(() => into.inputValue()).toBe("Dolls");
    await page.getByRole("button", { name: "Import 1 figure" }).click();
    await page.getByText("The table Dolls holds the figures now.").waitFor();
    const { sheets } = await hands.saved();
    expect(sheets.map(({ name }) => name)).toEqual(["Fabric", "Dolls"]);
    expect(sheets[1]?.cells[3]?.slice(0, 2).map((cell) => cell?.value)).toEqual(["Quorn", 140]);
  });

  it("leads from headings that nobody knows to the headings, and to the answer once they are mended", async () => {
    const hands = handsOn(page);
    await openBook(page, workbooks.unknownColumns);
    await openSection(page, "Groups");
    await page.getByRole("button", { name: "Go to the headings" }).filter({ visible: true }).click();
    await hands.spoken.getByText(/Figure/).waitFor();
    await hands.typeInto("Figures!B1", "Bust (mm)");
    await hands.typeInto("Figures!C1", "Waist (mm)");
    await shownSection(page, "Groups").getByText("1 group, holding 2 figures").waitFor();
  });
});
