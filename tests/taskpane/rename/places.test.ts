import { afterEach, describe, expect, it } from "vitest";

import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import type { Workbook } from "../../../addin/workbook/port.ts";
import {
  chosenPlaces,
  findPlaces,
  placeEdits,
  placeKinds,
  placeName,
  placesWords,
} from "../../../taskpane/rename/places.ts";
import type { Rename } from "../../../taskpane/rename/renames.ts";
import { openHeadless } from "../../standalone/grid/headless.ts";
import { openExcel } from "../../workbook/excel/openExcel.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { summary } from "../../workbook/summary.ts";
import { rows, workroom } from "./workroom.ts";

const book = workroom("Adele");
const toAdele: Rename = { what: "figure", table: "Figures", from: ["Ada"], to: "Adele" };

interface Opened {
  readonly workbook: Workbook;
  content(): WorkbookContent;
  close(): void;
}

const hosts: readonly (readonly [string, (content: WorkbookContent) => Opened])[] = [
  [
    "in memory",
    (content) => {
      const workbook = createMemoryWorkbook(content);
      return { workbook, content: () => workbook.content(), close: () => undefined };
    },
  ],
  [
    "in the grid",
    (content) => {
      const { workbook, close } = openHeadless(content);
      return { workbook, content: () => workbook.content(), close };
    },
  ],
  [
    "in Excel",
    (content) => {
      const { workbook, double } = openExcel(content);
      return { workbook, content: double.content, close: () => void workbook.close?.() };
    },
  ],
];

describe.each(hosts)("what says an old name %s", (_, open) => {
  const opened: Opened[] = [];
  const start = (content = book): Opened => {
    const host = open(content);
    opened.push(host);
    return host;
  };
  const cells = ({ content }: Opened) =>
    Object.fromEntries(summary(content()).map((sheet) => [sheet.sheet, sheet.cells]));

  afterEach(() => {
    for (const host of opened.splice(0)) host.close();
  });

  it("is told by kind, with its cell", async () => {
    const places = await findPlaces(start().workbook, toAdele);
    const kinds = [...new Set(places.map(({ kind }) => kind))];
    const byKind = kinds.map((kind) => [kind, places.filter((each) => each.kind === kind).map(placeName)]);
    expect(Object.fromEntries(byKind)).toEqual({
      formula: ["Ask, cell A2"],
      otherFormula: ["Ask, cell B3"],
      draftedFor: ["Patterns, cell C2", "Patterns, cell C4"],
      confirmed: ["Confirmed, cell A2"],
      second: ["Second, cell A3"],
      reading: ["Readings, cell A2", "Readings, cell A3"],
      asked: ["Ask, cell B1", "Ask, cell A6"],
      // Who measured may have the name of a figure.
      cell: ["Readings, cell E2", "Ask, cell C1", "Ask, cell B5"],
    });
    expect(placesWords(places)).toBe(
      "1 formula, 2 cells that formulas read it from, Drafted for of 2 patterns, 1 confirmed reading, " +
        "1 row of second readings, 2 rows of the table Readings, 1 other formula with this text and 3 other cells with exactly this name",
    );
  });

  it("follows as one action, and goes back as one", async () => {
    const host = start();
    const before = cells(host);
    await host.workbook.apply("Follow", placeEdits(await findPlaces(host.workbook, toAdele)));
    const after = cells(host);
    expect(after.Patterns).toMatchObject({ C2: "Adele", C3: "Bela", C4: "Adele" });
    expect(after.Confirmed).toMatchObject({ A2: "Adele" });
    expect(after.Second).toMatchObject({ A2: "Bela", A3: "Adele" });
    expect(after.Readings).toMatchObject({ A2: "Adele", A3: "Adele", A4: "Bela", E3: "Ida" });
    expect(after.Ask).toMatchObject({
      B1: "Adele",
      A2: '=FIT.APART(Figures[#All],"Adele","Bela")',
      A3: "=ROWS(FIT.COMPARE(Figures[#All],Ask!$B$1,$A$6))",
      B3: '=COUNTIF(Figures[Figure],"Adele")',
      A5: "Ada was measured in spring.",
      A6: "Adele",
    });
    expect(await findPlaces(host.workbook, toAdele)).toEqual([]);
    expect(await host.workbook.undo()).toBe("Follow");
    expect(cells(host)).toEqual(before);
  });

  it("of a pattern is followed under Worn over, in formulas and in the cells that they read", async () => {
    const host = start();
    const rename: Rename = { what: "pattern", table: "Patterns", from: ["U-1"], to: "U-1b" };
    await host.workbook.apply("Follow", placeEdits(await findPlaces(host.workbook, rename)));
    const after = cells(host);
    expect(after.Patterns).toMatchObject({ A3: "U-1", D2: "U-1b, S-1", D4: "U-1b" });
    expect(after.Ask).toMatchObject({
      D1: "U-1b",
      A4: '=ROWS(FIT.WEARERS(Patterns[#All],Figures[#All],"U-1b"))',
      B4: "=ROWS(FIT.WEARERS(Patterns[#All],Figures[#All],D1))",
    });
  });

  it("is not sure where another chart has a figure of that name", async () => {
    const more: WorkbookContent = {
      sheets: [
        ...book.sheets,
        {
          name: "Stands",
          cells: rows(["Figure", "Waist (mm)"], ["Ada", 98], ['=ROWS(FIT.NEAREST(Stands[#All],"Ada"))']),
          tables: [{ name: "Stands", row: 0, column: 0, rows: 2, columns: 2 }],
        },
      ],
    };
    const places = await findPlaces(start(more).workbook, toAdele);
    const kinds = places.map((place) => [place.kind, placeName(place)].join(" "));
    expect(kinds).toContain("cell Patterns, cell C2");
    expect(kinds).toContain("cell Stands, cell A2");
    expect(kinds).toContain("formula Ask, cell A2");
    expect(kinds.join()).not.toContain("Stands, cell A3");
  });
});

describe("in Excel, what cannot be written", () => {
  it("is told with the reason, and the rest follows", async () => {
    const { workbook, double } = openExcel(book);
    double.book.sheets.find(({ name }) => name === "Patterns")!.protected = true;
    const places = await findPlaces(workbook, toAdele);
    expect(
      places.filter(({ closed }) => closed !== undefined).map(({ closed, at }) => [at.sheet, closed]),
    ).toEqual(Array.from({ length: 2 }, () => ["Patterns", "the sheet “Patterns” is protected"]));
    await workbook.apply("Follow", placeEdits(chosenPlaces(places, new Set(placeKinds))));
    expect((await workbook.readTable("Patterns")).values[1]?.[2]).toBe("ada");
    expect((await workbook.readTable("ConfirmedReadings")).values[1]?.[0]).toBe("Adele");
    await workbook.close?.();
  });
});
