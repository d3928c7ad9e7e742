import { describe, expect, test } from "vitest";
import type { Cells } from "../../../addin/chart/cell.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import type { Answers } from "../../../taskpane/fit/newPattern/newPattern.ts";
import { nextCode, readDraft } from "../../../taskpane/fit/newPattern/newPattern.ts";
import { planAdding, readWardrobe } from "../../../taskpane/fit/newPattern/readWardrobe.ts";
import { readFit } from "../../../taskpane/fit/readFit.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { figures, patterns, sheetOf } from "./wardrobe.ts";

const inches: Cells = [
  ["Figure", "Bust (in)", "Waist (in)", "Hip (in)", "Head (in)"],
  ["Orla", "7 1/8", "5 1/4", "7 5/8", 4],
  ["Brack", 5, 4, "5 1/2", 4],
];

async function found(...sheets: readonly ReturnType<typeof sheetOf>[]) {
  const workbook = createMemoryWorkbook({ sheets });
  const read = await readWardrobe(openBook(workbook)(), {});
  const { wardrobe } = read;
  if (!wardrobe) throw new Error(read.failure ?? "Nothing was read.");
  return { workbook, found: { ...read, wardrobe } };
}

const keys = (draft: ReturnType<typeof readDraft>) => draft.fields.map(({ key }) => key);

describe("a pattern that is written down in the pane", () => {
  test("asks for its class first, and then only for what that class needs", async () => {
    const { wardrobe } = (await found(sheetOf("Figures", figures), sheetOf("Patterns", patterns))).found;
    expect(keys(readDraft(wardrobe, { code: "P5" }))).toEqual(["garmentClass"]);
    const hat = readDraft(wardrobe, { code: "P5", garmentClass: "Headwear" });
    expect(keys(hat)).toEqual([
      ...["garmentClass", "code", "title", "draftedFor", "stretch", "thickness"],
      "finished headGirth",
    ]);
    const skirt = readDraft(wardrobe, { code: "P5", garmentClass: "Fitted skirt", opens: "back" });
    expect(keys(skirt)).toContain("openingLength");
    expect(keys(skirt)).not.toContain("neck");
    expect(skirt.problem).toEqual({
      key: "openingLength",
      says: expect.stringMatching(
        /^The garment opens \(“back”\), but the length of the opening is missing/,
      ) as string,
    });
  });

  test("says beside the answer what is wrong with it", async () => {
    const { wardrobe } = (await found(sheetOf("Figures", figures), sheetOf("Patterns", patterns))).found;
    const dress = { code: "P5", garmentClass: "Dress", draftedFor: "Ardmoor", neck: "90" } satisfies Answers;
    expect(readDraft(wardrobe, dress).problem).toBeUndefined();
    const wrong: readonly (readonly [Answers, string, RegExp])[] = [
      [{ code: "p1" }, "code", /is in row 2 too/],
      [{ draftedFor: "Ardmor" }, "draftedFor", /no figure “Ardmor”.*Ardmoor/],
      [{ neck: "1.234 mm" }, "neck", /1\.234/],
      [{ stretch: "lots" }, "stretch", /not a percentage/],
      [{ wornOver: "P9" }, "wornOver", /“P9” is not the code of a pattern/],
    ];
    for (const [more, key, says] of wrong) {
      const { problem, pattern } = readDraft(wardrobe, { ...dress, ...more });
      expect(problem?.key).toBe(key);
      expect(problem?.says).toMatch(says);
      expect(pattern).toBeUndefined();
    }
  });

  test("goes into the table as one row, with the columns that it lacks, and comes out again", async () => {
    const { workbook, found: read } = await found(sheetOf("Figures", figures), sheetOf("Patterns", patterns));
    const draft = readDraft(read.wardrobe, {
      ...{ code: "P5", garmentClass: "Trousers", draftedFor: "Brae", opens: "front", openingLength: "3 cm" },
      ...{ hem: "84", waist: "110", thickness: "0.4", stretch: "10" },
    });
    expect(draft.row.added).toEqual([
      "Drafted for",
      "Ends at",
      "Waist opening (mm)",
      "Hem opening (mm)",
      "Thickness (mm)",
    ]);
    const { edits } = planAdding(read, draft.row);
    await workbook.apply("Add the pattern P5", edits);
    const fit = await readFit(openBook(workbook)(), {});
    expect(fit.problems).toEqual([]);
    expect(fit.fitting?.patterns.at(-1)?.pattern).toMatchObject({
      ...{ code: "P5", draftedFor: 1, closure: "waist", closureMm: 30, hemMm: 84, waistMm: 110 },
      ...{ thicknessMm: 0.4, stretch: 0.1, endsAt: "ankle" },
    });
    expect(fit.fitting?.patterns.at(-1)?.pattern).toEqual(draft.pattern);
    await workbook.undo();
    expect((await workbook.readTable("Patterns")).values).toEqual(patterns);
  });

  test("makes the table where there is none, in the unit of the chart, with fractions as they are written", async () => {
    const { workbook, found: read } = await found(sheetOf("Figures", inches));
    const draft = readDraft(read.wardrobe, {
      ...{
        code: "P1",
        garmentClass: "Fitted skirt",
        draftedFor: "Orla",
        opens: "back",
        openingLength: "1 1/2",
      },
    });
    expect(draft.fields.find(({ key }) => key === "openingLength")?.unit).toBe("in");
    await workbook.apply("Add the pattern P1", planAdding(read, draft.row).edits);
    const { values } = await workbook.readTable("Patterns");
    const headings = values[0] ?? [];
    expect(values[1]?.[headings.indexOf("Opening length (in)")]).toBe("1 1/2");
    const fit = await readFit(openBook(workbook)(), {});
    expect(fit.fitting?.patterns[0]?.pattern).toMatchObject({
      draftedFor: 0,
      closureMm: expect.closeTo(38.1, 9) as number,
    });
    await workbook.undo();
    expect(await workbook.tables()).toHaveLength(1);
  });

  test("takes the first empty row of a table that has only headings", async () => {
    const empty = [patterns[0] ?? [], (patterns[0] ?? []).map(() => undefined)];
    const { workbook, found: read } = await found(sheetOf("Figures", figures), sheetOf("Patterns", empty));
    const draft = readDraft(read.wardrobe, { code: "P1", garmentClass: "Headwear", draftedFor: "Brae" });
    await workbook.apply("Add the pattern P1", planAdding(read, draft.row).edits);
    const { values } = await workbook.readTable("Patterns");
    expect(values).toHaveLength(2);
    expect(values[1]?.[0]).toBe("P1");
  });

  test("gets a code that is free", () => {
    expect(nextCode([])).toBe("P1");
    expect(nextCode(["D-7", "D-8"])).toBe("D-9");
    expect(nextCode(["S2", "s3", "S2"])).toBe("S4");
    expect(nextCode(["Quay"])).toBe("Quay1");
  });
});
