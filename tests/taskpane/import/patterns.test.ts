/** Lists of patterns as people keep them, into the table of patterns. Everyday names of garments are common practice of the trade. */
import { describe, expect, test } from "vitest";
import { defaultGarmentClasses } from "../../../addin/chart/garmentClass.ts";
import { bodyMeasureOf } from "../../../addin/chart/import/bodyMeasures.ts";
import { classByWords } from "../../../addin/chart/import/patternWords.ts";
import { wordId } from "../../../addin/chart/import/patternWords.ts";
import { patternColumns } from "../../../addin/chart/readPatterns.ts";
import type { ToleranceTable } from "../../../addin/chart/tolerances.ts";
import { starterFigures, starterPatterns } from "../../../addin/demo/starterWorkbook.ts";
import type { SheetContent, WorkbookContent } from "../../../addin/workbook/content.ts";
import { readWardrobe } from "../../../taskpane/fit/newPattern/readWardrobe.ts";
import { inSteps } from "../../../taskpane/import/inSteps.ts";
import { planEdits } from "../../../taskpane/import/planEdits.ts";
import type { LayoutSettings, Prepared } from "../../../taskpane/import/prepare.ts";
import { layOutRead, preparePatterns } from "../../../taskpane/import/prepare.ts";
import { readSource } from "../../../taskpane/import/readSource.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { pasted } from "./importing.ts";

const noPause = () => Promise.resolve();
const { signal } = new AbortController();
const usual: LayoutSettings = {
  columns: new Map(),
  twins: { inChart: "skip", inFile: "keep both" },
  keepRefused: true,
};

const filled = (
  sheet: SheetContent,
  rows: readonly (readonly (string | number | undefined)[])[],
): SheetContent => ({
  ...sheet,
  cells: [...sheet.cells.slice(0, -1), ...rows.map((row) => row.map((value) => ({ value })))],
  tables: (sheet.tables ?? []).map((table) => ({ ...table, rows: rows.length + 1 })),
});

/** Figure, then bust, waist and hip where the chart has them. */
const figures: SheetContent = {
  name: "Figures",
  cells: [
    ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
    ["Orla", 181, 134, 190],
    ["Dorrit", 300, 232, 324],
  ].map((row) => row.map((value) => ({ value }))),
  tables: [{ name: "Figures", row: 0, column: 0, rows: 3, columns: 4 }],
};

async function look(
  workbook: ReturnType<typeof createMemoryWorkbook>,
  text: string,
  settings: Partial<LayoutSettings> = {},
  tolerances?: ToleranceTable,
) {
  const all = { ...usual, ...settings };
  const read = await readSource(pasted(text), {}, noPause, signal);
  const found = await readWardrobe(openBook(workbook)(), {});
  const { wardrobe } = found;
  if (!wardrobe) throw new Error(found.failure);
  const laid = layOutRead(read, all);
  const { chart, classes, place } = wardrobe;
  const prepared = preparePatterns("The list", laid, all, {
    chart,
    classes,
    cells: place.cells,
    unit: place.unit,
    tolerances,
  });
  const edits = async () => {
    if (!place.table) throw new Error("There is no table.");
    return inSteps(planEdits(prepared.plan, place.table, found.sheets, all), noPause, signal);
  };
  return { laid, prepared, edits };
}

const workbookOf = (...sheets: SheetContent[]): WorkbookContent => ({ sheets });

const refusedOf = ({ plan }: Prepared): readonly string[] =>
  plan.figures.flatMap((_, f) =>
    plan.targets.flatMap((_, t) => {
      const cell = plan.cell(f, t);
      return cell.kind === "refused" ? [cell.reason] : [];
    }),
  );

const list = [
  "My patterns, spring\t\t\t\t\t\t",
  "Name\tWhat is it\tFor\tStretch\tFastening\tZip length\tWaist\tKnee length",
  "\t\t\t%\t\tcm\tcm\t",
  "Skirts\t\t\t\t\t\t\t",
  "Rose\tsatin pencil skirt\torla\t0\tzip at the back\t4\t13.8\ty",
  "Run\trunning leggings\tOrla\t40\telastic\t\t\t",
  "Rain\train hood\tDorrit\t-\tnone\t\t\t",
  "Odd\tthingamajig\tOrlla\t0\t\t\t\t",
].join("\n");

describe("a list of patterns", () => {
  test("is told from a chart of figures by its headings and words; a chart whose hair is a wig stays one", async () => {
    const workbook = createMemoryWorkbook(workbookOf(figures, starterPatterns("mm")));
    expect((await look(workbook, list)).laid).toMatchObject({ what: "patterns", isSure: true });
    const chart = "Name\tBust (in)\tWaist\tHair\nQuillon\t7 1/8\t5 1/4\twig\n";
    expect((await look(workbook, chart)).laid).toMatchObject({ what: "figures", isSure: true });
    const either = "Name\tLength\tType\nOrla\t100\tchild\n";
    expect((await look(workbook, either)).laid).toMatchObject({ what: "figures", isSure: false });
  });

  test("is written in the table’s own words, units and columns; lines that only head others are left out", async () => {
    const content = workbookOf(figures, starterPatterns("mm"));
    const workbook = createMemoryWorkbook(content);
    const { prepared, edits } = await look(workbook, list);
    expect(prepared.laidOut.leftOut.map(({ begins }) => begins)).toEqual(["Skirts"]);
    await workbook.apply("Import 4 patterns", await edits());
    const { values } = await workbook.readTable("Patterns");
    const at = (row: number, heading: string) => values[row]?.[values[0]?.indexOf(heading) ?? -1];
    const row = (r: number) =>
      [
        "Pattern",
        "Garment class",
        "Drafted for",
        "Stretch",
        "Opens",
        "Opening length (mm)",
        "Finished waist (mm)",
      ].map((heading) => at(r, heading));
    expect(row(1)).toEqual(["Rose", "Fitted skirt", "Orla", "0%", "back", 40, 138]);
    expect(row(2)).toEqual(["Run", "Leggings", "Orla", "40%", "none", undefined, undefined]);
    expect(row(3)).toEqual(["Rain", "Hood", "Dorrit", undefined, "none", undefined, undefined]);
    // What is not understood stays as she wrote it, marked.
    expect(row(4).slice(0, 3)).toEqual(["Odd", "thingamajig", "Orlla"]);
    await workbook.undo();
    expect(workbook.content()).toEqual(content);
  });

  test("asks for what no word tells, and names near figures", async () => {
    const workbook = createMemoryWorkbook(workbookOf(figures, starterPatterns("mm")));
    const { prepared } = await look(workbook, list);
    const asked = prepared.words.filter(({ isAsked }) => isAsked).map(({ text }) => text);
    expect(asked).toEqual(["thingamajig", "Orlla"]);
    expect(refusedOf(prepared)).toEqual([
      expect.stringContaining("“thingamajig”"),
      "The chart has no figure “Orlla”. Did you mean “Orla”?",
    ]);
    const words = new Map([
      [wordId("garmentClass", "thingamajig"), "Cape"],
      [wordId("draftedFor", "Orlla"), "Orla"],
    ]);
    const answered = await look(workbook, list, { words });
    expect(refusedOf(answered.prepared)).toEqual([]);
    expect(answered.prepared.unusable.size).toBe(0);
  });

  test("leaves out on request what the table could not use, with the reason; so does what is worn over it", async () => {
    const workbook = createMemoryWorkbook(workbookOf(figures, starterPatterns("mm")));
    const text = [
      "Pattern\tGarment class\tOpens\tWorn over",
      "A\tdress\tback\t",
      "B\tcoat\tnone\tA",
      "C\tcape\tnone\t",
    ].join("\n");
    const kept = await look(workbook, text);
    expect([...kept.prepared.unusable.values()]).toEqual([
      expect.stringMatching(
        /^Opening length \(mm\): the garment opens \(“back”\), but the length of the opening is missing/u,
      ),
      expect.stringContaining("“A” has a row that cannot be used"),
    ]);
    const { prepared } = await look(workbook, text, { keepRefused: false });
    expect(prepared.plan.figures.map(({ name, action }) => [name, action])).toEqual([
      ["A", "skip"],
      ["B", "skip"],
      ["C", "add"],
    ]);
  });

  test("finds a pattern that is there by its code or its title, and puts old and new side by side", async () => {
    const headings = (starterPatterns("mm").cells.at(-2) ?? []).map((cell) => String(cell?.value ?? ""));
    const present = headings.map((heading) =>
      heading === "Pattern"
        ? "P1"
        : heading === "Title"
          ? "Rose"
          : heading === "Garment class"
            ? "Fitted skirt"
            : heading === "Finished waist (mm)"
              ? 140
              : undefined,
    );
    const workbook = createMemoryWorkbook(workbookOf(figures, filled(starterPatterns("mm"), [present])));
    const text = "Name\tKind\tWaist (cm)\nrose\tskirt\t13.8\nNew\tskirt\t15\n";
    const { prepared, edits } = await look(workbook, text, { twins: { inChart: "update", inFile: "skip" } });
    const { plan } = prepared;
    expect(plan.figures.map(({ action, twin }) => [action, twin])).toEqual([
      ["update", "in the chart"],
      ["add", undefined],
    ]);
    const waist = plan.targets.findIndex(({ heading }) => heading === "Finished waist (mm)");
    expect(plan.cell(0, waist)).toEqual({ kind: "changed", old: 140, value: 138, as: "reading" });
    await workbook.apply("Import 2 patterns", await edits());
    const { values } = await workbook.readTable("Patterns");
    expect(values.slice(1).map((row) => row[0])).toEqual(["P1", "New"]);
  });

  test("takes the unit of finished measures from the figures that it names, where the list states none", async () => {
    const workbook = createMemoryWorkbook(workbookOf(figures, starterPatterns("mm")));
    const { prepared } = await look(
      workbook,
      "Name\tType\tFor\tWaist\tHip\nA\tskirt\tOrla\t14\t19.5\nB\tskirt\tOrla\t13.6\t19\n",
    );
    expect(prepared.columns.map(({ unit, unitFrom }) => `${unit} ${unitFrom}`).slice(3)).toEqual([
      "cm chart",
      "cm chart",
    ]);
  });

  test("names nothing before there are figures, and says so", async () => {
    const workbook = createMemoryWorkbook(workbookOf(starterFigures("mm"), starterPatterns("mm")));
    const { prepared } = await look(workbook, list);
    expect(prepared.remarks.join(" ")).toContain("There is no figure in the workbook yet.");
  });
});

/**
 * A size designation gives dimensions of the body that a garment is to fit, not those of the garment (ISO 8559-2 and the older
 * EN 13402-1, from memory; common practice of the trade).
 */
describe("columns of the body that a pattern is to fit", () => {
  /** Bust and waist of three bodies; two figures share the last. */
  const bodies: SheetContent = {
    name: "Figures",
    cells: [
      ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
      ["Orla", 181, 134, 190],
      ["Dorrit", 300, 232, 324],
      ["Mab", 240, 180, 255],
      ["Meg", 240, 180, 255],
    ].map((row) => row.map((value) => ({ value }))),
    tables: [{ name: "Figures", row: 0, column: 0, rows: 5, columns: 4 }],
  };
  const toFit = [
    "Name\tKind\tTo fit bust\tfits hip (mm)\tfor waist",
    "Rose\tskirt\t18.1\t190\t13.3",
    "Mid\tskirt\t24\t255\t18",
    "Wide\tskirt\t29.8–30.2\t320-326\t23.2",
    "Lost\tskirt\t20\t210\t15",
    "None\tskirt\t\t\t",
  ].join("\n");

  test.each([
    ["To fit bust", "bustGirth"],
    ["fits hip", "hipGirth"],
    ["for waist", "waistGirth"],
    ["Waist (to fit)", "waistGirth"],
    ["Body bust", "bustGirth"],
    ["für Oberweite", "bustGirth"],
    ["To fit height", "height"],
    ["Bust", undefined],
    ["Finished waist", undefined],
    ["Body length", undefined],
    ["Fits", undefined],
    ["For figure", undefined],
  ])("“%s” is %s of the body", (heading, expected) => {
    expect(bodyMeasureOf(heading)?.id).toBe(expected);
  });

  test("make a list of patterns, and go into columns that are no finished measures", async () => {
    const workbook = createMemoryWorkbook(workbookOf(bodies, starterPatterns("mm")));
    const { laid, prepared, edits } = await look(workbook, toFit);
    expect(laid).toMatchObject({ what: "patterns", isSure: true });
    const headings = prepared.plan.targets.map(({ heading }) => heading);
    expect(headings.slice(2)).toEqual([
      "To fit bust (mm)",
      "To fit hip (mm)",
      "To fit waist (mm)",
      "Drafted for",
    ]);
    // The chart tells that bust and waist are in cm, 1 cm is 10 mm (SI Brochure).
    expect(prepared.plan.cell(0, 2)).toMatchObject({ kind: "new", value: 181 });
    expect(prepared.plan.cell(2, 2)).toMatchObject({ kind: "new", value: "298–302" });
    await workbook.apply("Import 5 patterns", await edits());
    const { values } = await workbook.readTable("Patterns");
    const { finished } = patternColumns(values, {});
    expect(finished.filter(({ column }) => /to fit/iu.test(column.written))).toEqual([]);
    const again = await look(workbook, toFit, { twins: { inChart: "update", inFile: "skip" } });
    expect(refusedOf(again.prepared)).toEqual([]);
    expect(again.prepared.plan.targets.every(({ position }) => position !== undefined)).toBe(true);
  });

  test("find the one figure within tolerance, say how near it is, and ask where several are or none", async () => {
    const workbook = createMemoryWorkbook(workbookOf(bodies, starterPatterns("mm")));
    const { prepared, edits } = await look(workbook, toFit);
    const at = prepared.plan.targets.findIndex(({ from }) => from.key === "draftedFor");
    expect(prepared.plan.figures.map((_, f) => prepared.plan.cell(f, at))).toEqual([
      { kind: "new", value: "Orla", as: "text", says: "Waist 1 mm larger, the rest nearer" },
      { kind: "blank", says: "◆ 2 figures can be it" },
      { kind: "new", value: "Dorrit", as: "text", says: "the same in 3 measures" },
      { kind: "blank", says: "◆ no figure is within tolerance" },
      { kind: "blank" },
    ]);
    expect(prepared.remarks.join(" ")).toContain("4 patterns say what body to fit, and not which figure.");
    const asked = prepared.words.filter(({ isAsked }) => isAsked);
    expect(asked.map(({ text }) => text)).toEqual([
      "bust 24 cm, hip 255 mm, waist 18 cm",
      "bust 20 cm, hip 210 mm, waist 15 cm",
    ]);
    expect(asked[1]?.offer?.choices[0]).toMatchObject({
      value: "Orla",
      says: expect.stringContaining("smaller, beyond tolerance") as unknown,
    });
    const words = new Map(asked.map(({ text }, i) => [wordId("draftedFor", text), ["Meg", ""][i] ?? ""]));
    const answered = await look(workbook, toFit, { words });
    expect(answered.prepared.words.filter(({ value }) => value === undefined)).toEqual([]);
    expect([1, 3].map((f) => answered.prepared.plan.cell(f, at))).toEqual([
      { kind: "new", value: "Meg", as: "text", says: "the same in 3 measures" },
      { kind: "blank", says: "left empty" },
    ]);
    await workbook.apply("Import 5 patterns", await edits());
    const { values } = await workbook.readTable("Patterns");
    const draftedFor = values[0]?.indexOf("Drafted for") ?? -1;
    expect(values.slice(1).map((row) => row[draftedFor])).toEqual([
      "Orla",
      undefined,
      "Dorrit",
      undefined,
      undefined,
    ]);
  });

  test("use the tolerances of the workbook", async () => {
    const workbook = createMemoryWorkbook(workbookOf(bodies, starterPatterns("mm")));
    const tolerances = new Map(
      ["bustGirth", "waistGirth", "hipGirth"].map((key) => [key, { floorMm: 25, percent: 0 }]),
    );
    const { prepared } = await look(workbook, toFit, {}, tolerances);
    const lost = prepared.words.find(({ text }) => text.startsWith("bust 20 cm"));
    expect(lost).toMatchObject({ value: "Orla", isAsked: false });
  });

  test("never take the place of a figure that is named; one that does not fit is remarked upon", async () => {
    const workbook = createMemoryWorkbook(workbookOf(bodies, starterPatterns("mm")));
    const text =
      "Name\tKind\tFor\tTo fit bust (mm)\nA\tskirt\tDorrit\t181\nB\tskirt\t\t181\nC\tskirt\tOrla\t181";
    const { prepared } = await look(workbook, text);
    const at = prepared.plan.targets.findIndex(({ from }) => from.key === "draftedFor");
    expect(prepared.plan.figures.map((_, f) => prepared.plan.cell(f, at))).toEqual([
      { kind: "new", value: "Dorrit", as: "text" },
      { kind: "new", value: "Orla", as: "text", says: "Bust is the same" },
      { kind: "new", value: "Orla", as: "text" },
    ]);
    expect(prepared.remarks.filter((remark) => remark.startsWith("“"))).toEqual([
      "“A” names Dorrit, and is to fit bust 181 mm: Bust 119 mm larger, beyond tolerance. It stays with Dorrit.",
    ]);
  });

  test("ask where a figure that can be it has a reading missing", async () => {
    const cells = bodies.cells.map((row) => row.map((cell) => (cell?.value === 190 ? { value: "" } : cell)));
    const workbook = createMemoryWorkbook(workbookOf({ ...bodies, cells }, starterPatterns("mm")));
    const { prepared } = await look(workbook, toFit);
    const at = prepared.plan.targets.findIndex(({ from }) => from.key === "draftedFor");
    expect(prepared.plan.cell(0, at)).toEqual({
      kind: "blank",
      says: "◆ Orla may be it: Waist 1 mm larger, the rest nearer, no reading of hip",
    });
  });
});

test.each([
  ["pencil skirt", "Fitted skirt"],
  ["Satin pencil skirts, lined", "Fitted skirt"],
  ["flared mini skirt", "Flared skirt"],
  ["knit leggings", "Leggings"],
  ["Dress with hood", "Dress"],
  ["t-shirt dress", "Dress"],
  ["rain hood", "Hood"],
  ["Boots", "Shoe"],
  ["skirt and top", undefined],
  ["thingamajig", undefined],
])("“%s” is a %s", (text, expected) => {
  expect(classByWords(text, defaultGarmentClasses)?.name).toBe(expected);
});
