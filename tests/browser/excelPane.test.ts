import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { cellCommands, ribbonCommands } from "../../manifest/commands.ts";
import { openExcelPage } from "./excel/excelPage.ts";
import type { StandInSettings } from "./excel/office.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

const address = inject("address");

/** The pane of the built page on the demo, in a stand-in for Excel. */
describe("the pane in Excel", () => {
  let visitor: Visitor;
  beforeAll(async () => {
    visitor = await newVisitor({ width: 320, height: 640 });
  });
  afterAll(() => visitor.close());

  async function inExcel(settings: StandInSettings, test: (page: Page) => Promise<void>): Promise<void> {
    const page = await openExcelPage(visitor, address, { settings });
    try {
      await test(page);
    } finally {
      await page.close();
    }
  }
  const press = (page: Page, action: string) => page.evaluate((id) => window.standIn.press(id), action);
  const select = (page: Page, at: { sheet: string; row: number; column: number }) =>
    page.evaluate((place) => {
      const { book } = window.excelDouble;
      const sheet = book.sheets.find(({ name }) => name === place.sheet);
      if (!sheet) throw new Error(`There is no sheet ${place.sheet}.`);
      book.selected = { sheet, row: place.row, column: place.column, rows: 1, columns: 1 };
    }, at);

  describe("commands", () => {
    // Microsoft, “Action element”: the name of the manifest must match the id given to `Office.actions.associate`.
    it("associates every command of the manifest, and no other", async () => {
      const named = [...ribbonCommands, ...cellCommands].flatMap(({ action }) => action ?? []);
      await inExcel({ paneOpen: false }, async (page) => {
        const associated = await page.evaluate(() => [...window.standIn.actions.keys()]);
        expect(associated.sort()).toEqual(named.sort());
      });
    });

    it("checks the chart: opens the closed pane at Check, with what deserves a look", async () => {
      await inExcel({ paneOpen: false }, async (page) => {
        await press(page, "CheckChart");
        expect(await page.evaluate(() => window.standIn.paneOpen)).toBe(true);
        await page.getByRole("heading", { name: "Check", exact: true }).waitFor();
        await page.getByText(/of the table Figures checked\. .* a look, worst first/).waitFor();
      });
    });

    it("adds a new measurement chart beside what is there, in the unit that is asked for, and takes it back", async () => {
      await inExcel({ paneOpen: false }, async (page) => {
        const sheets = () => page.evaluate(() => window.excelDouble.book.sheets.map(({ name }) => name));
        const before = await sheets();
        await press(page, "NewChart");
        await page.getByLabel("Lengths are in").selectOption("Centimetres");
        // The demo has a table Figures already.
        await page.getByText("the chart alone is added: Figures 2.").waitFor();
        expect(await sheets()).toEqual(before);
        await page.getByRole("button", { name: "Add 1 sheet" }).click();
        await page.getByText("1 sheet is added. Write your figures on the sheet Figures 2").waitFor();
        expect(await sheets()).toEqual([...before, "Figures 2"]);
        const headings = await page.evaluate(
          () =>
            window.excelDouble
              .content()
              .sheets.at(-1)
              ?.cells.flat()
              .map((cell) => cell?.value) ?? [],
        );
        expect(headings).toContain("Bust (cm)");
        await page.getByRole("button", { name: /^Undo/ }).click();
        await page.getByText("Undone: Add a new measurement chart.").waitFor();
        expect(await sheets()).toEqual(before);
      });
    });

    it("explains the reading, the figure and the heading under the selected cell", async () => {
      await inExcel({ paneOpen: false }, async (page) => {
        const table = await page.evaluate(() => {
          const found = window.excelDouble.book.tables.find(({ name }) => name === "Figures");
          return { row: found?.row ?? -1, column: found?.column ?? -1 };
        });
        const box = page.getByRole("region", { name: "The selected cell" });

        await select(page, { sheet: "Figures", row: table.row + 1, column: table.column });
        await press(page, "ExplainCell");
        await box.getByText(/\d+ of \d+ measures have a reading\./).waitFor();

        const bust = await page.evaluate(({ row }) => {
          const { cells } = window.excelDouble.content().sheets.find(({ name }) => name === "Figures") ?? {
            cells: [],
          };
          return (cells[row] ?? []).findIndex((cell) => String(cell?.value).startsWith("Bust"));
        }, table);
        await select(page, { sheet: "Figures", row: table.row + 1, column: bust });
        await press(page, "ExplainCell");
        await box.getByText(/^The reading is [\d.]+ mm/).waitFor();
        await box.getByText(/can be expected: an estimate/).waitFor();
        await box.getByText(/^How to take it: /).waitFor();

        await select(page, { sheet: "Figures", row: table.row, column: bust });
        await press(page, "ExplainCell");
        await box.getByText(/figures have a reading, from [\d.]+ mm to [\d.]+ mm/).waitFor();

        await select(page, { sheet: "Start", row: 0, column: 0 });
        await press(page, "ExplainCell");
        await page.getByText("There is nothing to explain in the selected cell.").waitFor();
        expect(await box.count()).toBe(0);
      });
    });
  });

  describe("start with the workbook", () => {
    const question = "Shall Measure Book start whenever this workbook is opened?";
    const startup = (page: Page) => page.evaluate(() => window.standIn.startup);

    it("is asked once on a Mac, and can be changed afterwards", async () => {
      await inExcel({ platform: "Mac" }, async (page) => {
        await page.getByText(question).waitFor();
        await page.getByRole("button", { name: "Start with this workbook" }).click();
        await page.getByText(question).waitFor({ state: "detached" });
        // Microsoft, “Run code in your Office Add-in when the document opens”: Office.StartupBehavior.load.
        await expect.poll(() => startup(page)).toBe("Load");
        await page.getByRole("button", { name: "Functions", exact: true }).click();
        await page.getByRole("switch", { name: "Start Measure Book with this workbook" }).click();
        await expect.poll(() => startup(page)).toBe("None");
      });
    });

    it("is not asked again once it was refused, nor on other systems; the switch is there all the same", async () => {
      await inExcel({ platform: "Mac" }, async (page) => {
        await page.getByRole("button", { name: "Not now" }).click();
        await page.getByText(question).waitFor({ state: "detached" });
        const kept = () => page.evaluate(() => [...window.excelDouble.book.settings.keys()]);
        await expect.poll(kept).toEqual(["MeasureBook.startAsked"]);
        expect(await startup(page)).toBe("None");
      });
      await inExcel({ platform: "PC" }, async (page) => {
        await page.getByRole("button", { name: "Functions", exact: true }).click();
        await page.getByRole("switch", { name: "Start Measure Book with this workbook" }).waitFor();
        expect(await page.getByText(question).count()).toBe(0);
      });
    });

    it("is not offered where Excel cannot", async () => {
      await inExcel({ platform: "Mac", without: ["SharedRuntime"] }, async (page) => {
        await page.getByRole("button", { name: "Functions", exact: true }).click();
        await page.getByRole("heading", { name: "Functions", exact: true }).waitFor();
        expect(await page.getByRole("switch").count()).toBe(0);
        expect(await page.getByText(question).count()).toBe(0);
      });
    });
  });

  it("follows the theme of Excel while it is open", async () => {
    await inExcel({}, async (page) => {
      await page.getByRole("navigation", { name: "Sections" }).waitFor();
      const ground = () =>
        page.evaluate(() => {
          const nav = document.querySelector("nav");
          return nav && getComputedStyle(nav).backgroundColor;
        });
      expect(await ground()).toBe("rgb(255, 255, 255)");
      await page.evaluate(() => {
        window.standIn.setDarkTheme(true);
      });
      await expect.poll(ground, { timeout: 10_000 }).toBe("rgb(42, 44, 48)");
    });
  });

  describe("when Excel cannot be reached", () => {
    it("says that Office.js could not be fetched, what to do, and that nothing is lost", async () => {
      const page = await visitor.context.newPage();
      const wrong: string[] = [];
      page.on("pageerror", (error) => wrong.push(error.message));
      await page.route(/^https:/, (route) => route.abort());
      await page.goto(`${address}taskpane.html`);
      await page.getByRole("heading", { name: "Excel’s connection could not be loaded" }).waitFor();
      await page.getByText("appsforoffice.microsoft.com, and could not be fetched").waitFor();
      expect(await page.getByText("works inside Excel only").count()).toBe(0);
      await page.getByRole("button", { name: "Try again" }).waitFor();
      expect(wrong).toEqual([]);
      await page.close();
    });

    it("waits for an answer within bounds, says so, and goes on when it comes", async () => {
      const page = await visitor.context.newPage();
      // Its time stands still while this machine is busy.
      await page.clock.install({ time: "2026-03-02T09:00:00" });
      await page.clock.pauseAt("2026-03-02T10:00:00");
      await openExcelPage(visitor, address, { settings: { ready: false }, page });
      await page.clock.runFor(3_000);
      expect(await page.getByRole("heading").count()).toBe(0);
      await page.clock.runFor(13_000);
      await page.getByRole("heading", { name: "Excel has not answered yet" }).waitFor();
      await page.clock.resume();
      await page.evaluate(() => {
        window.standIn.becomeReady();
      });
      await page.getByRole("navigation", { name: "Sections" }).waitFor();
      await page.close();
    });

    it("says so when this Excel is too old", async () => {
      await inExcel({ excelApi: 8 }, async (page) => {
        await page.getByRole("heading", { name: "This Excel is too old for Measure Book" }).waitFor();
      });
    });
  });
});
