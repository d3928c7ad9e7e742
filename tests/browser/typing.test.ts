import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import type { Cell } from "../../addin/chart/cell.ts";
import { cellName } from "../../addin/workbook/address.ts";
import { writeXlsx } from "../../addin/workbook/xlsx/writeXlsx.ts";
import type { SheetContent, WorkbookContent } from "../../addin/workbook/content.ts";
import { descriptors } from "../../functions/all.ts";
import type { Result, Table } from "../../functions/descriptor.ts";
import { isTable } from "../../functions/descriptor.ts";
import { exampleArguments } from "../../functions/exampleArguments.ts";
import { exampleBooks } from "../functions/exampleBooks.ts";
import type { Hands } from "./hands.ts";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { newVisitor, openFile } from "./page.ts";
import type { QuickKeys } from "./quickKeys.ts";
import { quickKeys } from "./quickKeys.ts";

/** `=FIT.…` in backquotes; for the figures of an ellipsis any two of the demo will do. */
const formulasOfReadme = [...readFileSync("README.md", "utf8").matchAll(/`(=FIT\.[^`]+)`/g)].map((found) =>
  (found[1] ?? "").replace('"…"', '"Ardwen"').replace('"…"', '"Dovelle"'),
);

/** A formula, what its function gives when it is called, and where there is room below to type it a few times. */
interface ToType {
  readonly formula: string;
  readonly gives: Table;
  readonly sheet: string;
  readonly row: number;
}

describe("typed key by key", { timeout: 900_000 }, () => {
  let visitor: Visitor;
  let page: Page;
  let hands: Hands;
  let keys: QuickKeys;
  let demo: WorkbookContent;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
    hands = handsOn(page);
    keys = await quickKeys(page);
    demo = await hands.saved();
  });

  afterAll(() => visitor.close());

  it("a formula typed on past the list of completions stands as it was typed", async () => {
    await hands.addSheet();
    await hands.goTo("A1");
    await hands.type("=SUM");
    await hands.completions.first().waitFor();
    await hands.type("(1,2)");
    await hands.press("Enter");
    const firstCell = async () => (await hands.saved()).sheets.at(-1)?.cells[0]?.[0];
    await expect.poll(firstCell, { timeout: 30_000 }).toMatchObject({ formula: "=SUM(1,2)", value: 3 });
  });

  it("a list of completions begins at its first, wherever another one was left", async () => {
    await hands.addSheet();
    await hands.goTo("A1");
    await hands.type("=fit.eas");
    await hands.choose("fit.eas", "FIT.EASECHECK");
    await hands.type('143,135,"Dress","Bust")');
    await hands.press("Enter");
    await hands.type("=fit.cle");
    await hands.choose("fit.cle", "FIT.CLEARANCE");
    await hands.type("120,112)");
    await hands.press("Enter");
    const second = async () => (await hands.saved()).sheets.at(-1)?.cells[1]?.[0];
    await expect
      .poll(second, { timeout: 30_000 })
      .toMatchObject({ formula: "=FIT.CLEARANCE(120,112)", value: 8 });
  });

  it("the row of buttons is not measured and drawn anew at each key", async () => {
    await hands.addSheet();
    await hands.goTo("A1");
    await hands.type("=1");
    await page.evaluate(() => {
      const row = document.querySelector("[data-u-comp='ribbon-toolbar']");
      Object.assign(window, { timesMeasured: row ? 0 : NaN });
      window.ResizeObserver = class extends ResizeObserver {
        override observe(target: Element, options?: ResizeObserverOptions): void {
          if (target === row) (window as unknown as { timesMeasured: number }).timesMeasured++;
          super.observe(target, options);
        }
      };
    });
    await hands.type("+12345678");
    await hands.press("Enter");
    const firstCell = async () => (await hands.saved()).sheets.at(-1)?.cells[0]?.[0]?.value;
    await expect.poll(firstCell, { timeout: 30_000 }).toBe(12345679);
    expect(
      await page.evaluate(() => (window as unknown as { timesMeasured: number }).timesMeasured),
    ).toBeLessThanOrEqual(1);
  });

  it("every function’s example and every formula of the README give what the functions give, in whichever way they are typed", async () => {
    expect(formulasOfReadme.length).toBeGreaterThanOrEqual(5);
    const inDemo: ToType[] = [];
    for (const formula of formulasOfReadme) {
      await hands.addSheet();
      const sheet = (await page.getByRole("tab", { selected: true }).innerText()).trim();
      inDemo.push({ formula, gives: toTable(calledDirectly(formula, demo)), sheet, row: 0 });
    }
    await typeAll(inDemo);
    const typed = await hands.saved();
    await hands.reload();
    await expect.poll(() => hands.saved(), { timeout: 30_000 }).toEqual(typed);

    for (const { content, examples } of exampleBooks(descriptors)) {
      await hands.open(content);
      await typeAll(examples.map((example) => ({ ...example, gives: toTable(example.gives) })));
    }
    expect(keys.count).toBeGreaterThan(5000);
  });

  it("what is typed elsewhere while a book opens stays there, and the cells take keys as soon as the book is open", async () => {
    // The grid draws, and takes keys three tenths of a second later: here when it is let.
    await page.evaluate(() => {
      const before = window.setTimeout;
      const held: (() => void)[] = [];
      const setTimeout = (run: () => void, ms?: number) =>
        ms === 300 ? held.push(run) : before.call(window, run, ms);
      const letThrough = (): void => {
        window.setTimeout = before;
        for (const run of held) run();
      };
      Object.assign(window, { setTimeout, letThrough });
    });
    const { bytes } = await writeXlsx({ sheets: [{ name: "Fresh", cells: [] }] });
    await openFile(page, "fresh.xlsx", bytes);
    await page.getByRole("tab", { name: "Fresh" }).waitFor();
    await page.getByLabel("Sections").getByRole("button", { name: "Import" }).click();
    const field = page.getByLabel("Or paste rows, headings first");
    await field.focus();
    await hands.type("Na");
    expect(await page.getByText("“fresh.xlsx” is open.").count()).toBe(0);
    await page.evaluate(() => {
      (window as unknown as { letThrough: () => void }).letThrough();
    });
    await page.getByText("“fresh.xlsx” is open.").waitFor();
    await hands.type("me");
    expect(await field.inputValue()).toBe("Name");

    await hands.goTo("Fresh!A1");
    await keys.type("=1+2");
    await keys.press("Enter");
    const firstCell = async () => (await hands.saved()).sheets[0]?.cells[0]?.[0];
    await expect.poll(firstCell).toMatchObject({ formula: "=1+2", value: 3 });
  });

  it("a name goes on into its cell when the list to choose from opens in the middle of it", async () => {
    const drafted = async () => {
      const rows = (await hands.saved()).sheets.find(({ name }) => name === "Patterns")?.cells;
      return [rows?.[4]?.[3]?.value, rows?.[5]?.[2]?.value];
    };
    await hands.open(demo);
    await hands.goTo("Patterns!D5");
    await hands.type("Dov");
    await page
      .locator("[data-u-comp='sheets-dropdown-list']")
      .getByText("Dovelle", { exact: true })
      .waitFor();
    await hands.type("elle");
    await hands.press("Enter");
    await hands.typeInto("Patterns!C6", "skirt");
    await expect.poll(drafted, { timeout: 30_000 }).toEqual(["Dovelle", "skirt"]);
  });

  async function typeAll(formulas: readonly ToType[]): Promise<void> {
    for (const one of formulas) await typeEveryWay(one);
    const expected = formulas.flatMap(whatStands);
    const found = (book: WorkbookContent) =>
      expected.map(({ sheet, row, cells }) => {
        const there = book.sheets.find(({ name }) => name === sheet);
        return { sheet, row, formula: there?.cells[row]?.[0]?.formula, cells: valuesAt(there, row, cells) };
      });
    await expect.poll(async () => found(await hands.saved()), { timeout: 30_000 }).toEqual(expected);
  }

  /** The same formula below itself, typed in three ways; see {@link rowsOf}. */
  async function typeEveryWay(one: ToType): Promise<void> {
    const { formula, gives, sheet } = one;
    const [name = "", given = ""] = /^=FIT\.(\w+)\((.*)$/.exec(formula)?.slice(1) ?? [];
    const rows = rowsOf(one);
    // In the cell, with the name misspelt first.
    await hands.goTo(`${sheet}!${cellName(rows.cell, 0)}`);
    await keys.type(formula.replace(name, name.slice(0, -1)));
    await keys.press("Enter");
    await keys.press("ArrowUp");
    const misspelt = hands.spoken.filter({ hasText: `${cellName(rows.cell, 0)}: #NAME?` });
    await misspelt.waitFor({ timeout: 30_000 }).catch(async () => {
      throw new Error(`${formula}, misspelt, stands as “${await hands.spoken.innerText()}”.`);
    });
    await keys.type(formula);
    await keys.press("Enter");
    // In the bar, after it was given up half-way.
    await keys.press("ArrowDown", gives.length);
    await hands.clickBar();
    await keys.type(formula.slice(0, halfWay(formula)));
    await keys.press("Escape", 2);
    await keys.press("ArrowDown");
    await hands.clickBar();
    await keys.type(formula);
    await keys.press("Enter");
    // With the list of completions, after it was given up with the list open.
    await keys.press("ArrowDown", gives.length);
    await keys.type(`=fit.${name.slice(0, 2).toLowerCase()}`);
    await hands.completions.first().waitFor();
    await keys.press("Escape", 2);
    await keys.press("ArrowDown");
    await choose("=", `fit.${name.slice(0, 3).toLowerCase()}`, `FIT.${name}`);
    const table = /^\w+\[/.exec(given)?.[0];
    if (table === undefined) await keys.type(given);
    else {
      await choose("", table, `${table}#All]`);
      await keys.type(given.slice(given.indexOf("]") + 1));
    }
    await keys.press("Enter");
  }

  async function choose(before: string, typed: string, name: string): Promise<void> {
    await keys.type(before + typed);
    await hands.choose(typed, name);
  }
});

/** Rows in which a formula is typed, one below the other with room for what it gives. */
function rowsOf({ row, gives }: ToType) {
  const givenUpInBar = row + gives.length + 1;
  const bar = givenUpInBar + 1;
  const givenUpWithList = bar + gives.length + 1;
  return { cell: row, givenUpInBar, bar, givenUpWithList, list: givenUpWithList + 1 };
}

function whatStands(one: ToType) {
  const { cell, givenUpInBar, bar, givenUpWithList, list } = rowsOf(one);
  const { sheet, formula } = one;
  const cells = one.gives.map((line) => line.map(rounded));
  return [
    ...[cell, bar, list].map((row) => ({ sheet, row, formula, cells })),
    ...[givenUpInBar, givenUpWithList].map((row) => ({ sheet, row, formula: undefined, cells: [[""]] })),
  ];
}

/** Within a table’s brackets where there are some. */
function halfWay(formula: string): number {
  const bracket = formula.indexOf("[");
  return bracket < 0 ? Math.ceil(formula.length / 2) : bracket + 1;
}

function calledDirectly(formula: string, { sheets }: WorkbookContent): Result {
  const descriptor = descriptors.find(({ name }) => formula.startsWith(`=FIT.${name}(`));
  if (!descriptor) throw new Error(`${formula}: there is no such function`);
  const values = exampleArguments(formula).map((text) => {
    const named = /^(\w+)\[#All\]$/.exec(text)?.[1];
    if (named === undefined) return text.replaceAll('"', "");
    for (const { cells, tables = [] } of sheets) {
      const table = tables.find(({ name }) => name === named);
      if (!table) continue;
      return cells
        .slice(table.row, table.row + table.rows)
        .map((line) => Array.from({ length: table.columns }, (_, i) => line[table.column + i]?.value ?? ""));
    }
    throw new Error(`${formula}: there is no table ${named}`);
  });
  return descriptor.compute(values);
}

function toTable(result: Result): Table {
  return isTable(result) ? result : [[result]];
}

function valuesAt(sheet: SheetContent | undefined, row: number, like: readonly (readonly unknown[])[]) {
  return like.map((line, i) => line.map((_, j) => rounded(sheet?.cells[row + i]?.[j]?.value)));
}

/** The reference rounds to three decimals. */
function rounded(value: Cell): Cell {
  return typeof value === "number" ? Math.round(value * 1000) / 1000 : (value ?? "");
}
