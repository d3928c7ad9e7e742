import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from "vitest";
import { cellText } from "../../addin/chart/cell.ts";
import { newGeneration } from "../../addin/standalone/storage/generation.ts";
import { readXlsx } from "../../addin/workbook/xlsx/readXlsx.ts";
import { writeXlsx } from "../../addin/workbook/xlsx/writeXlsx.ts";
import { allSheetsAsCsv, convert } from "../workbook/xlsx/libreOffice.ts";
import { faults } from "./faults.ts";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { newVisitor, openFile, ready, saveXlsx } from "./page.ts";

/** Opens a small workbook whose one cell says which it is. */
async function openSmall(page: Page, says: string): Promise<void> {
  const { bytes } = await writeXlsx({ sheets: [{ name: "Sheet1", cells: [[{ value: says }]] }] });
  await openFile(page, `${says}.xlsx`, bytes);
}

async function openBook(page: Page, says: string): Promise<void> {
  await openSmall(page, says);
  await page.getByText(`“${says}.xlsx” is open.`).waitFor();
}

async function firstCell(page: Page): Promise<string> {
  const { sheets } = await readXlsx(readFileSync(await (await saveXlsx(page)).path()));
  return cellText(sheets[0]?.cells[0]?.[0]?.value);
}

const booksButton = (page: Page) => page.getByRole("button", { name: "Books", exact: true });
const names = (page: Page) =>
  page
    .locator(".books [data-book]")
    .evaluateAll((cards) => cards.map((card) => card.getAttribute("data-book")));

describe("books, on the page without Excel", () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), "measure-book-books-"));
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
  });

  afterAll(async () => {
    await visitor.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it("keeps every workbook when two files are opened one after the other, also after a reload", async () => {
    await openBook(page, "Autumn");
    await openBook(page, "Winter");
    await page.reload();
    await ready(page);
    expect(await firstCell(page)).toBe("Winter");
    await booksButton(page).click();
    expect(await names(page)).toEqual(["Winter", "Autumn", "Demo"]);
    await page.getByRole("button", { name: "Open Autumn" }).click();
    await page.getByText("“Autumn” is open.").waitFor();
    expect(await firstCell(page)).toBe("Autumn");
  });

  it("renames, duplicates and deletes books, and brings a deleted one back", async () => {
    await booksButton(page).click();
    await page.getByRole("button", { name: "Rename Autumn" }).click();
    await page.keyboard.press("ControlOrMeta+a");
    await page.keyboard.type("Spring: small");
    await page.keyboard.press("Enter");
    await page.getByText("“Autumn” is called “Spring: small” now.").waitFor();
    await page.getByRole("button", { name: "Duplicate Winter" }).click();
    await page.getByText("“Winter, copy” is among your books now.").waitFor();
    await page.getByRole("button", { name: "Delete Winter", exact: true }).click();
    await page.getByText("“Winter” is deleted.").waitFor();
    expect((await names(page)).sort()).toEqual(["Demo", "Spring: small", "Winter, copy"]);
    await page.getByRole("button", { name: "Bring “Winter” back" }).click();
    await page.getByText("“Winter” is back among your books.").waitFor();
    expect((await names(page)).sort()).toEqual(["Demo", "Spring: small", "Winter", "Winter, copy"]);
    await page.getByRole("button", { name: "Back to the sheet" }).click();
  });

  it("names the file after the book, and writes values that LibreOffice shows", async () => {
    const own = await saveXlsx(page);
    expect(own.suggestedFilename()).toBe("Spring small.xlsx");
    await booksButton(page).click();
    await page.getByRole("button", { name: "Download Demo" }).click();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Values, for every program" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("Demo (values).xlsx");
    const file = path.join(folder, "demo.xlsx");
    await download.saveAs(file);
    const sheets = await convert([file], allSheetsAsCsv);
    const all = [...sheets.values()].map((bytes) => new TextDecoder().decode(bytes)).join("\n");
    expect(all).not.toContain("#NAME?");
    expect(new TextDecoder().decode(sheets.get("demo-Groups.csv"))).toMatch(/^Ardwen,/m);
    await page.getByRole("button", { name: "Back to the sheet" }).click();
  });

  it("opens another book when the one that is open is deleted", async () => {
    await booksButton(page).click();
    await page.getByRole("button", { name: "Delete Spring: small" }).click();
    await page.getByText(/“Spring: small” is deleted\..* is open now\./).waitFor();
    await page.getByRole("button", { name: "Back to the sheet" }).click();
    await page.reload();
    await ready(page);
    await booksButton(page).click();
    expect((await names(page)).sort()).toEqual(["Demo", "Winter", "Winter, copy"]);
    await page.getByRole("button", { name: "Bring Spring: small back" }).click();
    await page.getByText("“Spring: small” is back").waitFor();
    await page.getByRole("button", { name: "Back to the sheet" }).click();
  });
});

describe("a book that is typed into while it opens", () => {
  it("keeps the keyboard when it is said to be open", async () => {
    const visitor = await newVisitor();
    try {
      const page = await visitor.open(inject("address"));
      const hands = handsOn(page);
      await page.locator(".sheet").evaluate((sheet) => {
        sheet.dataset["before"] = "";
      });
      await booksButton(page).click();
      await page.getByRole("button", { name: "Open the demo again" }).click();
      // It is shown before it is calculated, which takes a second or more.
      await page.locator(".sheet:not([data-before]) canvas").first().waitFor();
      await hands.goTo("Z1");
      await hands.type("begun");
      await page.getByText("The demo is open.").waitFor();
      await hands.type(" and ended");
      await hands.press("Enter");
      const cells = (await hands.saved()).sheets.flatMap((sheet) => sheet.cells.flat());
      expect(cells.map((cell) => cell?.value)).toContain("begun and ended");
    } finally {
      await visitor.close();
    }
  });
});

describe.each(["light", "dark"] as const)("the place for books, %s", (colorScheme) => {
  it("has no fault that axe finds and nothing cut off, at 320 px and on a desktop", async () => {
    const visitor = await newVisitor({ width: 320, height: 640 });
    try {
      const page = await visitor.open(inject("address"));
      await page.emulateMedia({ colorScheme });
      await booksButton(page).click();
      await page.getByRole("button", { name: "Rename Demo" }).click();
      for (const width of [320, 1280]) {
        await page.setViewportSize({ width, height: 640 });
        expect(await faults(page, ".shelf"), `axe at ${String(width)}`).toEqual([]);
        const wider = await page.evaluate(() => {
          const shelf = document.querySelector(".shelf");
          return Math.max(
            document.documentElement.scrollWidth - document.documentElement.clientWidth,
            shelf ? shelf.scrollWidth - shelf.clientWidth : 0,
          );
        });
        expect(wider, `pixels too wide at ${String(width)}`).toBeLessThanOrEqual(0);
      }
    } finally {
      await visitor.close();
    }
  });
});

/** The text of what is kept of an opened small book, for spoiling. */
type Spoil = (kept: { snapshot: Record<string, unknown> }) => unknown;

const firstSheet = (kept: { snapshot: Record<string, unknown> }) => {
  const [sheet] = Object.values(kept.snapshot.sheets as Record<string, Record<string, unknown>>);
  return sheet!;
};

/** Whole saves whose content no grid can show. */
const nonsense: Readonly<Record<string, Spoil>> = {
  "−1 rows": (kept) => void (firstSheet(kept).rowCount = -1),
  "1e9 rows": (kept) => void (firstSheet(kept).rowCount = 1e9),
  "1e9 columns": (kept) => void (firstSheet(kept).columnCount = 1e9),
  "no sheets": (kept) => void (kept.snapshot.sheets = {}),
  "a sheet missing": (kept) => (kept.snapshot.sheetOrder as string[]).push("another"),
  "null cell data": (kept) => void (firstSheet(kept).cellData = null),
  "cells that are a list of texts": (kept) => void (firstSheet(kept).cellData = ["x"]),
  "a cell beyond the last row": (kept) => void (firstSheet(kept).cellData = { 99999999: { 0: { v: 1 } } }),
  "resources that are no JSON": (kept) =>
    void (kept.snapshot.resources = [{ name: "SHEET_TABLE_PLUGIN", data: "{half" }]),
  "tables that are null": (kept) =>
    void (kept.snapshot.resources = [{ name: "SHEET_TABLE_PLUGIN", data: '{"sheet-1":[null]}' }]),
  "null in the place of the workbook": (kept) => void (kept.snapshot = null as never),
};

describe("when what is kept is damaged or the storage fails", () => {
  let visitor: Visitor;
  let page: Page;

  beforeEach(async () => {
    visitor = await newVisitor();
  });

  afterEach(() => visitor.close());

  it("sets saves aside that no grid can show, whatever is wrong with them, and opens the one before", async () => {
    page = await visitor.open(inject("address"));
    await openBook(page, "Autumn");
    const versions = await inDatabase(page, "versions");
    const [id, save] = Object.entries(versions).find(([, { text }]) => text.includes("Autumn"))!;
    const spoilt = Object.values(nonsense).map((spoil) => {
      const kept = JSON.parse(save.text) as { snapshot: Record<string, unknown> };
      spoil(kept);
      return JSON.stringify(kept);
    });
    await addSaves(visitor, id, spoilt);

    page = await visitor.open(inject("address"));
    const notices = page.getByText(
      /What was kept last of “Autumn” is damaged.*The save before it is open instead/,
    );
    await notices.first().waitFor();
    expect(await notices.count()).toBe(spoilt.length);
    expect(await firstCell(page)).toBe("Autumn");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Download the damaged save" }).first().click(),
    ]);
    expect(spoilt).toContain(readFileSync(await download.path(), "utf8"));
    await booksButton(page).click();
    await page.getByRole("heading", { name: "Damaged saves" }).waitFor();
    expect(await page.getByRole("heading", { name: "Autumn", level: 4 }).count()).toBe(spoilt.length);
  });

  it("opens the book before when all saves of the last one are damaged", async () => {
    page = await visitor.open(inject("address"));
    await openBook(page, "Autumn");
    const last = await onPlainPage(visitor, (plain) =>
      plain.evaluate(async () => {
        const opening = indexedDB.open("measure-book");
        const database = await new Promise<IDBDatabase>((resolve) => {
          opening.onsuccess = () => {
            resolve(opening.result);
          };
        });
        const step = database.transaction(["books", "versions"], "readwrite");
        const get = <T>(request: IDBRequest<T>) =>
          new Promise<T>((resolve) => {
            request.onsuccess = () => {
              resolve(request.result);
            };
          });
        const books = (await get(step.objectStore("books").getAll())) as {
          name: string;
          versions: { id: string }[];
        }[];
        const versions = books.find(({ name }) => name === "Autumn")?.versions ?? [];
        for (const { id } of versions) step.objectStore("versions").put(10n, id);
        await new Promise((resolve) => {
          step.oncomplete = resolve;
        });
        return versions.length;
      }),
    );
    expect(last).toBeGreaterThan(0);
    page = await visitor.open(inject("address"));
    await page
      .getByText(/“Autumn” is damaged.*“Demo” is open instead/)
      .first()
      .waitFor();
  });

  const storageFaults: Readonly<Record<string, { readonly fault: () => void; readonly says: RegExp }>> = {
    "a small store that throws": {
      fault: () => {
        Object.defineProperty(window, "localStorage", {
          configurable: true,
          get: () => {
            throw new DOMException("Access is denied for this document.", "SecurityError");
          },
        });
      },
      says: /^Kept in this browser/,
    },
    "a database that never answers": {
      fault: () => {
        IDBFactory.prototype.open = () =>
          Object.create(IDBOpenDBRequest.prototype, {
            addEventListener: { value: () => undefined },
            removeEventListener: { value: () => undefined },
          }) as IDBOpenDBRequest;
      },
      says: /The browser’s storage does not answer/,
    },
    "a database that throws": {
      fault: () => {
        IDBFactory.prototype.open = () => {
          throw new DOMException("The operation is insecure.", "SecurityError");
        };
      },
      says: /Nothing is kept for now/,
    },
    "no database at all": {
      fault: () => {
        Object.defineProperty(window, "indexedDB", { configurable: true, value: undefined });
      },
      says: /Nothing is kept for now/,
    },
    "no room on opening": {
      fault: () => {
        IDBObjectStore.prototype.put = function (this: IDBObjectStore) {
          this.transaction.abort();
          throw new DOMException("Quota exceeded.", "QuotaExceededError");
        };
      },
      says: /no room left for this page/,
    },
    "reading that fails": {
      fault: () => {
        IDBObjectStore.prototype.get = () => {
          throw new DOMException("Internal error.", "UnknownError");
        };
      },
      says: /The browser’s storage failed|damaged/,
    },
  };

  it.each(Object.entries(storageFaults))("works with %s, and says so", async (_, { fault, says }) => {
    await visitor.context.addInitScript(fault);
    page = await visitor.open(inject("address"));
    await page.getByText(says).first().waitFor();
    await openSmall(page, "Autumn");
    const done = page.getByText("“Autumn.xlsx” is open.");
    const risk = page.getByRole("button", { name: "Go on all the same" });
    await done.or(risk).waitFor();
    if (await risk.isVisible()) await risk.click();
    await done.waitFor();
    expect(await firstCell(page)).toBe("Autumn");
  });

  it("adds the parts that a database lacks", async () => {
    await onPlainPage(visitor, (plain) =>
      plain.evaluate(
        () =>
          new Promise<void>((resolve) => {
            const opening = indexedDB.open("measure-book", 3);
            opening.onsuccess = () => {
              opening.result.close();
              resolve();
            };
          }),
      ),
    );
    page = await visitor.open(inject("address"));
    await openBook(page, "Autumn");
    await page.reload();
    await ready(page);
    expect(await firstCell(page)).toBe("Autumn");
  });

  it("leaves a book alone that made the page stop twice while it opened, and opens it when told to", async () => {
    page = await visitor.open(inject("address"));
    await openBook(page, "Autumn");
    const [id] = Object.entries(await inDatabase(page, "versions")).find(([, { text }]) =>
      text.includes("Autumn"),
    )!;
    await page.evaluate((key) => {
      localStorage.setItem("measure-book-opening", JSON.stringify({ id: key, times: 2 }));
    }, id);
    page = await visitor.open(inject("address"));
    await page.getByText("“Autumn” was not opened").waitFor();
    await page.getByRole("button", { name: "Open it all the same" }).click();
    await page.getByText("“Autumn” is open.").waitFor();
    expect(await firstCell(page)).toBe("Autumn");
  });
});

/** Everything in one part of the database, by key. */
function inDatabase(page: Page, part: string): Promise<Record<string, { readonly text: string }>> {
  return page.evaluate(
    (name) =>
      new Promise((resolve) => {
        const opening = indexedDB.open("measure-book");
        opening.onsuccess = () => {
          const store = opening.result.transaction(name).objectStore(name);
          const keys = store.getAllKeys();
          const values = store.getAll();
          values.onsuccess = () => {
            opening.result.close();
            resolve(Object.fromEntries(keys.result.map((key, i) => [String(key), values.result[i]])));
          };
        };
      }),
    part,
  );
}

/** A page of the same address that runs nothing of ours, with every other page closed. */
async function onPlainPage<T>(visitor: Visitor, work: (plain: Page) => Promise<T>): Promise<T> {
  const plain = await visitor.context.newPage();
  for (const other of visitor.context.pages()) if (other !== plain) await other.close();
  await plain.route(/standalone\.[0-9a-f]+\.js$/, (route) => route.abort());
  await plain.goto(inject("address"));
  const result = await work(plain);
  await plain.close().catch(() => undefined);
  return result;
}

/** Adds whole saves with those texts as the newest of the book that holds the save `of`. */
async function addSaves(visitor: Visitor, of: string, texts: readonly string[]): Promise<void> {
  const saves = texts.map((text) => newGeneration(text, "another page"));
  await onPlainPage(visitor, (plain) =>
    plain.evaluate(
      ({ of: id, saves: added }) =>
        new Promise<void>((resolve) => {
          const opening = indexedDB.open("measure-book");
          opening.onsuccess = () => {
            const step = opening.result.transaction(["books", "versions"], "readwrite");
            for (const save of added) step.objectStore("versions").put(save, save.id);
            const books = step.objectStore("books").getAll();
            books.onsuccess = () => {
              for (const book of books.result as { id: string; versions: { id: string }[] }[]) {
                if (!book.versions.some((version) => version.id === id)) continue;
                const newer = added.map((save) => ({
                  id: save.id,
                  session: save.session,
                  savedAt: save.savedAt,
                  size: save.text.length,
                }));
                step.objectStore("books").put({ ...book, versions: [...newer, ...book.versions] }, book.id);
              }
            };
            step.oncomplete = () => {
              opening.result.close();
              resolve();
            };
          };
        }),
      { of, saves },
    ),
  );
}
