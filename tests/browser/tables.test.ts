import { afterAll, beforeAll, beforeEach, describe, expect, inject, it } from "vitest";
import type { Page } from "playwright-core";
import { cellsField } from "../../addin/standalone/grid/cellsField.ts";
import type { WorkbookContent } from "../../addin/workbook/content.ts";
import type { Hands } from "./hands.ts";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

const book: WorkbookContent = {
  sheets: [
    {
      name: "Chart",
      cells: [
        ["Figure", "Bust", "Waist", "Kind"],
        ["Ardwen", 180, 130, "doll"],
        ["Belsory", 182, 131],
        ["Cindre", 183, 132],
      ].map((row) => row.map((value) => ({ value }))),
      tables: [{ name: "Figures", row: 0, column: 0, rows: 4, columns: 4 }],
      pickLists: [{ row: 1, column: 3, rows: 30, columns: 1, from: ["doll", "art figure", "mannequin"] }],
    },
    {
      name: "Fit",
      cells: [
        [
          { formula: "=SUM(Figures[Bust])" },
          { formula: "=ROWS(Figures[Figure])" },
          { formula: "=Chart!B3*2" },
        ],
        [{ formula: "=FIT.FLAGS(Figures[#All])" }],
      ],
      pickLists: [{ row: 0, column: 6, rows: 1, columns: 1, from: { table: "Figures", heading: "Figure" } }],
    },
  ],
};

describe("tables under a user’s hands", { timeout: 300_000 }, () => {
  let visitor: Visitor;
  let page: Page;
  let hands: Hands;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
    hands = handsOn(page);
  });

  beforeEach(() => hands.open(book));
  afterAll(() => visitor.close());

  const sum = async () => (await hands.saved()).sheets[1]?.cells[0]?.[0];
  const table = async () => (await hands.saved()).sheets[0]?.tables?.[0];

  it("a reading typed beside a table is said to be no part of it, and its column joins on request", async () => {
    await hands.typeInto("Chart!E3", "52");
    await page.getByText("E3 is beside the table “Figures”, not in it.").waitFor();
    expect(await table()).toMatchObject({ columns: 4 });
    await page.getByRole("button", { name: "Take column E into “Figures”" }).click();
    await page
      .getByText("Column E is part of the table “Figures” now, with the heading “Column 1”.")
      .waitFor();
    expect(await table()).toMatchObject({ columns: 5 });
    await hands.typeInto("Chart!E1", "Neck");
    await hands.typeInto("Fit!D1", "=SUM(Figures[Neck])");
    const neck = async () => (await hands.saved()).sheets[1]?.cells[0]?.[3]?.value;
    await expect.poll(neck, { timeout: 30_000 }).toBe(52);
  });

  it("what was taken in is let go again by one undo", async () => {
    await hands.typeInto("Chart!E3", "52");
    await page.getByRole("button", { name: "Take column E into “Figures”" }).click();
    await page
      .getByText("Column E is part of the table")
      .locator("..")
      .getByRole("button", { name: "Undo" })
      .click();
    await expect.poll(table, { timeout: 30_000 }).toMatchObject({ columns: 4 });
    expect((await hands.saved()).sheets[0]?.cells[2]?.[4]?.value).toBe(52);
  });

  it("formulas follow a heading that is typed over, and say what they lose where they cannot", async () => {
    await hands.typeInto("Chart!B1", "Chest");
    await expect
      .poll(sum, { timeout: 30_000 })
      .toMatchObject({ formula: "=SUM(Figures[Chest])", value: 545 });
    await hands.typeInto("Chart!B1", "Waist");
    await page
      .getByText("read “Chest” of the table “Figures” read it no longer, since another column")
      .waitFor();
    await page.getByRole("button", { name: "Put “Chest” back" }).click();
    await page.getByText("The heading is “Chest” again.").waitFor();
    await expect
      .poll(sum, { timeout: 30_000 })
      .toMatchObject({ formula: "=SUM(Figures[Chest])", value: 545 });
  });

  it("the box of the address goes to another sheet and to a table", async () => {
    const box = page.getByRole("textbox", { name: "Go to cell or name" });
    await box.fill("Fit!B1");
    await box.press("Enter");
    await hands.spoken.filter({ hasText: "B1: 3" }).waitFor();
    await page.getByRole("tab", { name: "Fit", selected: true }).waitFor();
    await box.fill("Figures");
    await box.press("Enter");
    await hands.spoken.filter({ hasText: "A1: Figure" }).waitFor();
    await page.getByRole("tab", { name: "Chart", selected: true }).waitFor();
    await hands.type("Body");
    await hands.press("Enter");
    const heading = async () => (await hands.saved()).sheets[0]?.cells[0]?.[0]?.value;
    await expect.poll(heading, { timeout: 30_000 }).toBe("Body");
  });

  it("a tab that is pressed twice is named anew or left as it is, and no sheet leaves its place", async () => {
    const tabs = page.getByRole("tab");
    const named = tabs.locator("[contenteditable=true]:focus");
    const chart = tabs.first();
    await chart.dblclick();
    await named.waitFor();
    await hands.type("Spr");
    await hands.press("Escape");
    await named.waitFor({ state: "detached" });
    // Long enough for a press to become a long one, and over the tabs with the mouse.
    await hands.typeInto("Chart!B2", "190");
    await expect.poll(sum, { timeout: 30_000 }).toMatchObject({ value: 555 });
    const box = await tabs.last().boundingBox();
    if (!box) throw new Error("The tabs are not in sight.");
    for (const x of [-60, -30, box.width, 2 * box.width])
      await page.mouse.move(box.x + x, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.up();
    expect(await tabs.allInnerTexts()).toEqual(["Chart", "Fit"]);

    await chart.click();
    await chart.and(page.getByRole("tab", { selected: true })).waitFor();
    await hands.goTo("B2");
    await chart.dblclick();
    await named.waitFor();
    await hands.type("Spring");
    await hands.press("Enter");
    await expect.poll(() => tabs.allInnerTexts(), { timeout: 30_000 }).toEqual(["Spring", "Fit"]);
    const twice = async () => (await hands.saved()).sheets[1]?.cells[0]?.[2];
    await expect.poll(twice, { timeout: 30_000 }).toMatchObject({ formula: "=Spring!B3*2", value: 364 });
  });

  it("a tab opens its sheet also for what only clicks, as aids to reading do", async () => {
    await page.getByRole("tab", { name: "Fit" }).evaluate((tab: HTMLElement) => {
      tab.click();
    });
    await page.getByRole("tab", { name: "Fit", selected: true }).waitFor();
  });

  it("what is typed after a press on a tab goes into the cells of its sheet, wherever the keyboard was", async () => {
    await page.getByLabel("Sections").getByRole("button", { name: "Import" }).click();
    await page.getByLabel("Or paste rows, headings first").focus();
    await page.getByRole("tab", { name: "Fit" }).click();
    await page.getByRole("tab", { name: "Fit", selected: true }).waitFor();
    await page.locator(`${cellsField}:focus`).waitFor({ state: "attached" });
    await hands.type("12");
    await hands.press("Enter");
    await expect.poll(async () => (await sum())?.value, { timeout: 30_000 }).toBe(12);
  });

  it("lists to choose from are offered in their cells, and kept over a reload and in the file", async () => {
    await hands.goTo("Chart!D3");
    await hands.press("F2");
    await page.getByText("art figure").click();
    const kind = async () => (await hands.saved()).sheets[0]?.cells[2]?.[3]?.value;
    await expect.poll(kind, { timeout: 30_000 }).toBe("art figure");
    const saved = await hands.saved();
    expect(saved.sheets.map(({ pickLists }) => pickLists)).toEqual(
      book.sheets.map(({ pickLists }) => pickLists),
    );
    await hands.reload();
    expect((await hands.saved()).sheets.map(({ pickLists }) => pickLists)).toEqual(
      book.sheets.map(({ pickLists }) => pickLists),
    );
  });

  it("formulas give after a long series of everything what they give when the book is opened again", async () => {
    const random = seeded(5);
    const names = ["Dovelle", "Elmory", "Fenwick", "Gisla", "Harrow"];
    let rows = 4;
    const cell = () => `Chart!${"BC".charAt(random(2))}${String(2 + random(3))}`;
    const actions: readonly (() => Promise<void>)[] = [
      () => hands.typeInto(cell(), String(120 + random(90))),
      async () => {
        rows++;
        await hands.typeInto(`Chart!A${String(rows)}`, names[random(names.length)] ?? "");
        await hands.typeInto(`Chart!B${String(rows)}`, String(170 + random(30)));
      },
      () => hands.typeInto("Chart!B1", ["Bust", "Chest", "Bust girth"][random(3)] ?? ""),
      async () => {
        await hands.goTo(cell());
        await hands.press("Delete");
      },
      async () => {
        await hands.goTo(cell());
        await hands.press("Control+C");
        await hands.goTo(cell());
        await hands.press("Control+V");
      },
      async () => {
        await hands.goTo("Chart!B2");
        await hands.dragCorner({ row: 1, column: 1 }, 1 + random(2));
      },
      () => hands.press("Control+Z"),
      async () => {
        await hands.press("Control+Z");
        await hands.press("Control+Y");
      },
    ];
    for (let i = 0; i < 40; i++) await actions[random(actions.length)]?.();
    // Once this is calculated, all before it is.
    await hands.typeInto("Fit!F1", "=6*7");
    const last = async () => (await hands.saved()).sheets[1]?.cells[0]?.[5]?.value;
    await expect.poll(last).toBe(42);
    const now = await hands.saved();
    expect(now.sheets[1]?.cells[0]?.[0]?.value).toEqual(expect.any(Number));
    await hands.reload();
    await expect.poll(() => hands.saved(), { timeout: 60_000 }).toEqual(now);
  });
});

/** Numerical Recipes’ linear congruential generator; whole numbers from 0 up to a limit. */
function seeded(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}
