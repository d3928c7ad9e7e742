import { describe, expect, it } from "vitest";
import { placeKinds } from "../../../taskpane/rename/places.ts";
import {
  checkNewName,
  planRename,
  readNamesTables,
  renameEdits,
} from "../../../taskpane/rename/planRename.ts";
import { openExcel } from "../../workbook/excel/openExcel.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { workroom } from "./workroom.ts";

const names = ["Ada", "Bela", "", "Caro", "caro "];
const refusal = (to: string, row = 0, what: "figure" | "pattern" = "figure"): string => {
  try {
    checkNewName({ names, row, what }, to);
    return "";
  } catch (error) {
    return String(error);
  }
};

describe("a new name", () => {
  it.each([
    ["", /Type the new name/],
    ["Ada", /its name already/],
    ["bela", /“Bela” is the name of another figure/],
    [" BELA ", /another figure/],
    ["A".repeat(256), /256 characters.*255/],
  ])("“%s” is refused with the reason", (to, why) => {
    expect(refusal(to)).toMatch(why);
  });

  it("is refused where the old one stands twice, and as a code with a comma", () => {
    expect(refusal("Carola", 3)).toMatch(/2 times/);
    expect(refusal("U-1, long", 0, "pattern")).toMatch(/comma/);
    expect(refusal("Ada, long")).toBe("");
  });

  it("may be the same in other letters", () => {
    expect(refusal("ADA")).toBe("");
  });
});

describe("renaming from the pane", () => {
  it("changes the table and all that says the name as one action", async () => {
    const workbook = createMemoryWorkbook(workroom());
    const [figures, patterns] = await readNamesTables(workbook);
    expect([figures?.names, patterns?.names]).toEqual([
      ["Ada", "Bela", "Caro"],
      ["D-1", "U-1", "S-1"],
    ]);
    const planned = await planRename(workbook, figures!, 0, " Adele ");
    await workbook.apply("Rename", renameEdits(planned, new Set(placeKinds)));
    expect((await readNamesTables(workbook))[0]?.names).toEqual(["Adele", "Bela", "Caro"]);
    expect(await workbook.findCells(({ holds }) => /\bada\b/i.test(String(holds)))).toEqual([
      expect.objectContaining({ holds: "Ada was measured in spring." }),
    ]);
    await workbook.undo();
    expect(workbook.content()).toEqual(workroom());
  });

  it("needs nothing but the table where only the letters’ case changes", async () => {
    const workbook = createMemoryWorkbook(workroom());
    const [figures] = await readNamesTables(workbook);
    expect(await planRename(workbook, figures!, 0, "ADA")).toMatchObject({ to: "ADA", places: [] });
  });

  it("leaves a name alone that a formula gives, or that is protected", async () => {
    const { sheets } = workroom();
    const given = createMemoryWorkbook({
      sheets: sheets.map((sheet) =>
        sheet.name === "Figures"
          ? { ...sheet, cells: sheet.cells.with(1, [{ formula: '="Ad"&"a"', value: "Ada" }]) }
          : sheet,
      ),
    });
    const [figures] = await readNamesTables(given);
    await expect(planRename(given, figures!, 0, "Adele")).rejects.toThrow(/formula/);
    const { workbook, double } = openExcel(workroom());
    double.book.sheets[0]!.protected = true;
    const [closed] = await readNamesTables(workbook);
    await expect(planRename(workbook, closed!, 0, "Adele")).rejects.toThrow(/“Figures” is protected/);
    await workbook.close?.();
  });
});
