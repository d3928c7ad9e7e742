import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import type { WorkbookContent } from "../../addin/workbook/content.ts";
import { readXlsx } from "../../addin/workbook/xlsx/readXlsx.ts";
import { writeXlsx } from "../../addin/workbook/xlsx/writeXlsx.ts";
import { cellsField } from "../../addin/standalone/grid/cellsField.ts";
import { openFile, saveXlsx } from "./page.ts";

/** Where the grid draws cells of the usual size, in pixels. */
const cells = { left: 46, top: 20, width: 88, height: 24 };

/** What a person’s hands do to the sheet: every text is typed key by key. */
export interface Hands {
  /** Selects a cell, for example `A2` or `Figures!A41`, through the tab of its sheet and the box of its address. */
  goTo(address: string): Promise<void>;
  type(text: string): Promise<void>;
  press(key: string): Promise<void>;
  /** Selects a cell, types, and presses Enter. */
  typeInto(address: string, text: string): Promise<void>;
  /** The same through the bar above the sheet. */
  typeIntoBar(address: string, text: string): Promise<void>;
  /** Clicks into the bar above the sheet, behind what it holds. */
  clickBar(): Promise<void>;
  /** What the page says to a screen reader, for example `A2: 136 mm`. */
  readonly spoken: Locator;
  /** The list of functions, tables and columns that completes what is typed. */
  readonly completions: Locator;
  /** Waits until the list of completions is for what was typed last, goes down to the one of this name, and takes it. */
  choose(typed: string, name: string): Promise<void>;
  /** Opens a file with this workbook. */
  open(content: WorkbookContent): Promise<void>;
  addSheet(): Promise<void>;
  /** Drags the corner of the selected cell down over further rows. Rows and columns from 0, of their usual size, in sight. */
  dragCorner(cell: { readonly row: number; readonly column: number }, rows: number): Promise<void>;
  /** Loads the page again, once everything is kept, and waits until it has calculated. */
  reload(): Promise<void>;
  /** The whole workbook as it is saved now. */
  saved(): Promise<WorkbookContent>;
}

export function handsOn(page: Page): Hands {
  const sheet = page.getByRole("region", { name: "Sheet" });
  const addressBox = sheet.locator("[data-u-comp='defined-name'] input");
  const bar = sheet.locator("[data-u-comp='formula-bar']");
  const completions = page.locator("[data-u-comp='sheets-formula-editor'] li");

  const goTo = async (address: string): Promise<void> => {
    const [cell = "", sheetName] = address.split("!").reverse();
    if (sheetName !== undefined) {
      const tab = page.getByRole("tab", { name: sheetName, exact: true });
      // Nobody presses the tab of the sheet that is open; twice in short time is how a sheet is named anew.
      if ((await tab.getAttribute("aria-selected")) !== "true") await tab.click();
      await tab.and(page.getByRole("tab", { selected: true })).waitFor();
    }
    await addressBox.fill(cell);
    await addressBox.press("Enter");
    // The box gives the keyboard back to the cells once it has gone there; what is typed in between, nobody gets.
    await page.waitForFunction((field) => document.activeElement?.matches(field), cellsField);
  };

  const clickBar = async (): Promise<void> => {
    const box = await bar.boundingBox();
    if (!box) throw new Error("The bar above the sheet is not in sight.");
    await page.mouse.click(box.x + box.width - 200, box.y + box.height / 2);
  };

  let opened = 0;

  return {
    goTo,
    clickBar,
    completions,
    spoken: page.locator(".spoken"),
    type: (text) => page.keyboard.type(text),
    press: (key) => page.keyboard.press(key),
    typeInto: async (address, text) => {
      await goTo(address);
      await page.keyboard.type(text);
      await page.keyboard.press("Enter");
    },
    typeIntoBar: async (address, text) => {
      await goTo(address);
      await clickBar();
      await page.keyboard.press("Control+A");
      await page.keyboard.type(text);
      await page.keyboard.press("Enter");
    },
    choose: async (typed, name) => {
      // The part that was typed has a colour of its own.
      const begun = page.getByText(name.slice(0, typed.length), { exact: true });
      const listed = completions.filter({ hasText: name, has: begun }).first();
      await listed.waitFor().catch(async () => {
        const offered = await completions.allInnerTexts();
        for (const key of ["Escape", "Enter", "ArrowUp"]) await page.keyboard.press(key);
        const stands = await page.locator(".spoken").innerText();
        throw new Error(`“${typed}”: ${name} is not among [${offered.join(", ")}]. There stands: ${stands}`);
      });
      const names = await completions.locator("> span:first-child").allInnerTexts();
      const at = names.indexOf(name);
      if (at < 0) throw new Error(`“${name}” is not among ${names.join(", ")}.`);
      for (let i = 0; i < at; i++) await page.keyboard.press("ArrowDown");
      await page.keyboard.press("Enter");
    },
    open: async (content) => {
      const { bytes } = await writeXlsx(content);
      // A name of its own, so that it is not taken to be open since the one before is.
      const name = `typed ${String(++opened)}.xlsx`;
      await openFile(page, name, bytes);
      await page.getByText(`“${name}” is open.`).waitFor();
    },
    dragCorner: async ({ row, column }, rows) => {
      const box = await sheet.locator("canvas[id^=univer-sheet-main-canvas]").boundingBox();
      if (!box) throw new Error("The sheet is not in sight.");
      const x = box.x + cells.left + (column + 1) * cells.width;
      const y = box.y + cells.top + (row + 1) * cells.height;
      await page.mouse.move(x, y);
      await page.mouse.down();
      for (let i = 1; i <= rows; i++) await page.mouse.move(x - 10, y + i * cells.height - 8);
      await page.mouse.up();
    },
    addSheet: async () => {
      const tabs = page.getByRole("tab");
      const before = await tabs.count();
      await page.locator("[data-u-comp='sheet-bar-append-button']").first().click();
      await tabs
        .nth(before)
        .and(page.getByRole("tab", { selected: true }))
        .waitFor();
    },
    reload: async () => {
      await page.getByText(/^Kept in this browser/).waitFor();
      await page.reload();
      await page.locator("html[data-ready='true']").waitFor({ timeout: 90_000 });
    },
    saved: async () => {
      const download = await saveXlsx(page);
      return readXlsx(readFileSync(await download.path()));
    },
  };
}
