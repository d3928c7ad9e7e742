import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import type { CellContent, WorkbookContent } from "../../addin/workbook/content.ts";
import { summary } from "../workbook/summary.ts";
import { openExcelPage } from "./excel/excelPage.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

/** The built pane as Excel loads it, on the strict double of Excel, with the demo open and no network. */
describe("the whole pane in Excel", () => {
  let visitor: Visitor;
  let page: Page;
  const wrong: string[] = [];

  beforeAll(async () => {
    visitor = await newVisitor({ width: 360, height: 900 });
    visitor.context.on("weberror", (error) => wrong.push(error.error().message));
    page = await openExcelPage(visitor, inject("address"));
    await page.getByRole("navigation", { name: "Sections" }).waitFor();
  });
  afterAll(() => visitor.close());

  it("imports a figure below the chart, and takes it back", async () => {
    await openSection("Import");
    const written = await writesAndTakesBack(async () => {
      await page.getByLabel("Or paste rows, headings first").fill("Name,Bust (mm)\nQuillon,201\n");
      await page.getByRole("button", { name: "Read the pasted rows" }).click();
      await page.getByRole("button", { name: /^Import \d/ }).click();
    });
    const before = table(await content(), "Figures");
    expect(table(written, "Figures").rows).toBe(before.rows + 1);
    const cells = written.sheets.flatMap((sheet) => sheet.cells.flat());
    expect(cells.map((cell) => cell?.value)).toContain("Quillon");
  });

  it("says that an import is done where Excel only does not go there, and takes it back", async () => {
    const refuse = (word: string | undefined) =>
      page.evaluate((member) => {
        window.excelDouble.host.beforeOperation = member
          ? (label) => {
              if (label.includes(member))
                throw Object.assign(new Error("The sheet is not active."), { code: "InvalidOperation" });
            }
          : undefined;
      }, word);
    await openSection("Import");
    const written = await writesAndTakesBack(async () => {
      await page.getByLabel("Or paste rows, headings first").fill("Name,Bust (mm)\nQuillon,201\n");
      await page.getByRole("button", { name: "Read the pasted rows" }).click();
      await refuse("activate");
      await page.getByRole("button", { name: /^Import \d/ }).click();
      const said = page.getByRole("status").filter({ hasText: "The table Figures holds the figures now." });
      await said.getByText(/It could not be shown: .*The sheet is not active\./).waitFor();
      await refuse(undefined);
      expect(await said.innerText()).toMatch(/Done/);
      expect(await said.innerText()).not.toMatch(/Nothing was changed|Not done/);
      // What was brought is put away, so that nobody brings it twice.
      await page.getByLabel("Or paste rows, headings first").waitFor();
    });
    expect(table(written, "Figures").rows).toBe(table(await content(), "Figures").rows + 1);
    expect(JSON.stringify(written)).toContain("Quillon");
  });

  it("marks what Check finds, on the readings themselves when the chart is sorted, and takes the marks back", async () => {
    await openSection("Check");
    await page.locator("[data-flag]").first().waitFor();
    const marked = await writesAndTakesBack(async () => {
      await page.getByRole("button", { name: /^Mark \d+ cells?$/ }).click();
    });
    const marks = marksIn(marked);
    expect(marks.length).toBeGreaterThan(5);

    await page.getByRole("button", { name: /^Mark \d+ cells?$/ }).click();
    await undoButton().waitFor();
    await page.evaluate(() => {
      window.excelDouble.sort("Figures", 0);
    });
    const sorted = await content();
    expect(table(sorted, "Figures")).toEqual(table(marked, "Figures"));
    // On its reading, or gone where two rows hold the same name and reading.
    const isTwice = (mark: string) => readingsIn(sorted).filter((reading) => reading === mark).length > 1;
    const left = marksIn(sorted);
    expect(left.filter((mark) => !marks.includes(mark))).toEqual([]);
    expect(marks.filter((mark) => !left.includes(mark) && !isTwice(mark))).toEqual([]);
  });

  it("offers to follow another name that is typed over a figure’s, and takes it back as one", async () => {
    const row = (await content()).sheets
      .find(({ name }) => name === "Figures")!
      .cells.findIndex(([name]) => name?.value === "Ardwen");
    const type = (name: string) =>
      page.evaluate(
        ([at, text]) => {
          window.excelDouble.type({ sheet: "Figures", row: at, column: 0 }, text);
        },
        [row, name] as const,
      );
    await type("Ardwen II");
    await page
      .getByText(/You renamed Ardwen to Ardwen II\. .*Drafted for of 17 patterns still say/)
      .waitFor();
    const followed = await writesAndTakesBack(async () => {
      await page.getByRole("button", { name: "Change them too" }).click();
    });
    const cellsOf = (name: string) => followed.sheets.find((sheet) => sheet.name === name)?.cells;
    expect(cellsOf("Compare")?.[2]?.[1]?.value).toBe("Ardwen II");
    expect(cellsOf("Patterns")?.filter((row) => row[3]?.value === "Ardwen II")).toHaveLength(17);
    await type("Ardwen");
    await page.getByText("You renamed").waitFor({ state: "detached" });
  });

  it("takes a suggestion of Check, and takes it back", async () => {
    await openSection("Check");
    await writesAndTakesBack(async () => {
      await page.getByRole("button", { name: /^Use / }).first().click();
    });
  });

  it("writes groups as a column and as a sheet, and takes each back", async () => {
    await openSection("Groups");
    await page.getByText(/^\d+ groups, holding/).waitFor();
    await page.getByRole("button", { name: "Write the groups" }).click();
    await page.getByText(/^Adds the column “Group”/).waitFor();
    const column = await writesAndTakesBack(async () => {
      await page.getByRole("button", { name: "Write it" }).click();
    });
    expect(table(column, "Figures").columns).toBe(table(await content(), "Figures").columns + 1);

    await page.getByLabel("To a new sheet, as a formula that follows every change").check();
    const sheet = await writesAndTakesBack(async () => {
      await page.getByRole("button", { name: "Write it" }).click();
    });
    expect(newFormulas(sheet, await content())).toEqual([
      expect.stringMatching(/^=FIT\.GROUPS\(Figures\[#All\]/),
    ]);
  });

  it("writes which garment goes on which figure, and takes it back", async () => {
    await openSection("Fit");
    await page.getByRole("button", { name: "All patterns on all figures" }).click();
    await page.getByRole("button", { name: "Write to a sheet" }).first().click();
    const sheet = await writesAndTakesBack(async () => {
      await calculate("Manual");
      await page.getByRole("button", { name: "Write it" }).click();
      await page
        .getByRole("status")
        .getByText(/press F9 to see the results/)
        .waitFor();
      await calculate("Automatic");
    });
    expect(newFormulas(sheet, await content())).toEqual([
      expect.stringMatching(/^=FIT\.WHATFITS\(Patterns\[#All\]/),
    ]);
  });

  it("writes a grade, and takes it back", async () => {
    await openSection("Grade");
    await page.getByLabel("Drafted for (base figure)").selectOption({ label: "Ardwen" });
    await page.getByLabel("To be worn by (target figure)").selectOption({ label: "Isolmay" });
    await page.getByRole("button", { name: "Write to a sheet" }).click();
    const sheet = await writesAndTakesBack(async () => {
      await page
        .getByRole("region", { name: "Write to a sheet" })
        .getByRole("button", { name: "Write it" })
        .click();
    });
    expect(newFormulas(sheet, await content()).length).toBeGreaterThan(0);
  });

  it("says in words what is in the way, and writes nothing", async () => {
    await openSection("Import");
    const before = summary(await content());
    await page.getByLabel("Or paste rows, headings first").fill("Name,Bust (mm)\nQuillon,201\n");
    await page.getByRole("button", { name: "Read the pasted rows" }).click();
    const go = page.getByRole("button", { name: /^Import \d/ });
    await page.evaluate(() => {
      for (const sheet of window.excelDouble.book.sheets) sheet.protected = true;
    });
    await go.click();
    await page
      .getByText(/The sheet “Figures” is protected/)
      .first()
      .waitFor();
    await page.evaluate(() => {
      for (const sheet of window.excelDouble.book.sheets) sheet.protected = false;
      window.excelDouble.host.editing = true;
    });
    await go.click();
    await page
      .getByText(/A cell is still being edited/)
      .first()
      .waitFor();
    await page.evaluate(() => {
      window.excelDouble.host.editing = false;
    });
    expect(summary(await content())).toEqual(before);
  });

  it("went without a fault, and as one step of Excel’s undo list wherever that can be", async () => {
    expect(wrong).toEqual([]);
    const runs = await page.evaluate(() => window.excelDouble.runs);
    expect(runs.filter(({ mergeUndoGroup }) => mergeUndoGroup).length).toBeGreaterThan(6);
  });

  async function openSection(name: string): Promise<void> {
    await page
      .getByRole("navigation", { name: "Sections" })
      .getByRole("button", { name, exact: true })
      .click();
  }

  function calculate(mode: "Automatic" | "Manual"): Promise<void> {
    return page.evaluate((set) => {
      window.excelDouble.book.calculationMode = set;
    }, mode);
  }

  function content(): Promise<WorkbookContent> {
    return page.evaluate(() => window.excelDouble.content());
  }

  function undoButton() {
    return page.getByRole("button", { name: /^Undo: / });
  }

  /** Does something that writes, takes it back, and gives what the workbook held in between. */
  async function writesAndTakesBack(work: () => Promise<void>): Promise<WorkbookContent> {
    const before = summary(await content());
    const last = await undoButton().allInnerTexts();
    await work();
    await page.waitForFunction((was) => {
      const [now] = [...document.querySelectorAll("button")].filter((button) =>
        button.innerText.startsWith("Undo: "),
      );
      return now !== undefined && now.innerText !== was && now.getAttribute("aria-disabled") !== "true";
    }, last[0] ?? "");
    const written = await content();
    expect(summary(written)).not.toEqual(before);
    await undoButton().click();
    await page
      .getByRole("status")
      .getByText(/Done\. Undone: |Not done/)
      .first()
      .waitFor();
    expect(await page.getByRole("status").allInnerTexts()).toContainEqual(
      expect.stringContaining("Undone: "),
    );
    expect(summary(await content())).toEqual(before);
    return written;
  }
});

function table({ sheets }: WorkbookContent, name: string) {
  const found = sheets.flatMap(({ tables = [] }) => tables).find((each) => each.name === name);
  if (!found) throw new Error(`There is no table ${name}.`);
  return found;
}

/** Each marked reading by the first cell of its row and its own value. */
function marksIn(content: WorkbookContent): string[] {
  return readingsIn(content, ({ style }) => style === "marked");
}

function readingsIn(
  { sheets }: WorkbookContent,
  which: (cell: CellContent) => boolean = () => true,
): string[] {
  return sheets.flatMap((sheet) =>
    sheet.cells.flatMap((row) =>
      row.flatMap((cell) =>
        cell && which(cell) ? [`${String(row[0]?.value)}: ${JSON.stringify(cell.value)}`] : [],
      ),
    ),
  );
}

function newFormulas(now: WorkbookContent, before: WorkbookContent): string[] {
  const names = before.sheets.map(({ name }) => name);
  return now.sheets
    .filter(({ name }) => !names.includes(name))
    .flatMap(({ cells }) => cells.flat().flatMap((cell) => cell?.formula ?? []));
}
