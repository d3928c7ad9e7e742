import path from "node:path/posix";
import { describe, expect, test } from "vitest";
import { writeXlsx } from "../../../addin/workbook/xlsx/writeXlsx.ts";
import { everyKind } from "./everyKind.ts";
import { all, parse, partsOf, type Element } from "./xml.ts";

const parts = partsOf((await writeXlsx(everyKind)).bytes);

function part(name: string): Element {
  return parse(parts[name] ?? "");
}

function relationshipsOf(name: string): readonly Element[] {
  const { dir, base } = path.parse(name);
  const rels = parts[path.join(dir, "_rels", `${base}.rels`)];
  return rels === undefined ? [] : parse(rels).children;
}

function cellAt(sheet: Element, ref: string): Element | undefined {
  return all(sheet, "c").find(({ attributes }) => attributes.r === ref);
}

/** What a cell holds: its type and value with shared text looked up. */
function shown(cell: Element | undefined): string | undefined {
  const value = cell?.children.find(({ name }) => name === "v")?.text;
  if (cell?.attributes.t === "s") return all(part("xl/sharedStrings.xml"), "t")[Number(value)]?.text;
  return cell?.attributes.t === "inlineStr" ? all(cell, "t")[0]?.text : value;
}

const sheets = ["xl/worksheets/sheet1.xml", "xl/worksheets/sheet2.xml"];

describe("the package (ECMA-376 part 2)", () => {
  test("consists of well-formed parts", () => {
    for (const xml of Object.values(parts)) expect(() => parse(xml)).not.toThrow();
    expect(Object.keys(parts)).toEqual(
      expect.arrayContaining([...sheets, "xl/metadata.xml", "xl/tables/table2.xml", "xl/comments2.xml"]),
    );
  });

  test("states the type of every part, and of no other", () => {
    const types = part("[Content_Types].xml").children;
    const named = types
      .filter(({ name }) => name === "Override")
      .map(({ attributes }) => attributes.PartName);
    const endings = types
      .filter(({ name }) => name === "Default")
      .map(({ attributes }) => attributes.Extension);
    expect(new Set(named).size).toBe(named.length);
    expect(named.filter((name) => name === undefined || !(name.slice(1) in parts))).toEqual([]);
    const untyped = Object.keys(parts).filter(
      (name) =>
        name !== "[Content_Types].xml" &&
        !named.includes(`/${name}`) &&
        !endings.includes(name.split(".").at(-1)),
    );
    expect(untyped).toEqual([]);
    const generic = Object.keys(parts).filter(
      (name) => name.startsWith("xl/") && name.endsWith(".xml") && !named.includes(`/${name}`),
    );
    expect(generic).toEqual([]);
  });

  test("relates each part to parts that are there, under ids that are distinct and used", () => {
    for (const [name, xml] of Object.entries(parts)) {
      const relationships = relationshipsOf(name);
      const ids = relationships.map(({ attributes }) => attributes.Id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const { attributes } of relationships)
        expect(parts).toHaveProperty([path.join(path.dirname(name), attributes.Target ?? "")]);
      for (const [, id] of xml.matchAll(/ r:id="([^"]*)"/g)) expect(ids).toContain(id);
    }
  });
});

describe("a sheet", () => {
  // ECMA-376 part 1, 18.3.1.99 (worksheet): the elements that can occur here, in their order.
  const order =
    "sheetPr dimension sheetViews sheetFormatPr cols sheetData mergeCells conditionalFormatting dataValidations pageMargins pageSetup headerFooter legacyDrawing tableParts extLst".split(
      " ",
    );

  test.each(sheets)("%s has its elements in the order of the standard", (name) => {
    const places = part(name).children.map((child) => order.indexOf(child.name));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(places).not.toContain(-1);
  });

  test.each(sheets)("%s has rows and cells in order, with styles and texts that exist", (name) => {
    const styles = all(part("xl/styles.xml"), "xf").length;
    const texts = all(part("xl/sharedStrings.xml"), "si").length;
    const rows = all(part(name), "row");
    const numbers = rows.map(({ attributes }) => Number(attributes.r));
    expect(numbers).toEqual([...new Set(numbers)].toSorted((a, b) => a - b));
    for (const row of rows) {
      const columns = row.children.map(({ attributes }) => attributes.r?.replace(/\d+$/, ""));
      expect(columns).toEqual([...new Set(columns)].toSorted());
      for (const cell of row.children) {
        expect(Number(cell.attributes.s ?? 0)).toBeLessThan(styles);
        if (cell.attributes.t === "s") expect(Number(cell.children[0]?.text)).toBeLessThan(texts);
      }
    }
  });

  test("holds numbers in full precision, truth values, and text that looks like a formula as text", () => {
    const sheet = part(sheets[0] ?? "");
    expect(Number(shown(cellAt(sheet, "B5")))).toBe(1 / 3);
    expect(cellAt(sheet, "C4")?.attributes.t).toBe("b");
    expect(shown(cellAt(sheet, "A5"))).toBe("=1+1");
    expect(all(cellAt(sheet, "A5")!, "f")).toEqual([]);
    expect([cellAt(sheet, "C5")?.attributes.t, shown(cellAt(sheet, "C5"))]).toEqual(["inlineStr", "#N/A"]);
    expect([cellAt(sheet, "D5")?.attributes.t, shown(cellAt(sheet, "D5"))]).toEqual(["e", "#N/A"]);
  });

  test("freezes rows and columns", () => {
    const pane = all(part(sheets[0] ?? ""), "pane")[0]?.attributes;
    expect(pane).toMatchObject({ xSplit: "1", ySplit: "3", topLeftCell: "B4", state: "frozen" });
  });
});

describe("a formula of ours", () => {
  const sheet = part(sheets[1] ?? "");

  test("fills its area as a dynamic array, with the values last calculated", () => {
    const first = cellAt(sheet, "A1");
    expect(first?.attributes.cm).toBe("1");
    expect(all(first!, "f")[0]).toMatchObject({
      text: "_xldudf_FIT_GROUPS(Figures[#All])",
      attributes: { t: "array", ref: "A1:B2" },
    });
    expect(["A1", "B1", "A2", "B2"].map((ref) => shown(cellAt(sheet, ref)))).toEqual([
      "Figure",
      "Group",
      "Ada",
      "1",
    ]);
  });

  test("refers to the metadata of dynamic arrays", () => {
    const metadata = part("xl/metadata.xml");
    expect(all(metadata, "metadataType")[0]?.attributes).toMatchObject({ name: "XLDAPR", cellMeta: "1" });
    expect(all(metadata, "xda:dynamicArrayProperties")[0]?.attributes.fDynamic).toBe("1");
    expect(all(metadata, "rc")[0]?.attributes).toEqual({ t: "1", v: "0" });
  });

  test("keeps an error as the value last calculated", () => {
    expect([cellAt(sheet, "A3")?.attributes.t, shown(cellAt(sheet, "A3"))]).toEqual(["e", "#N/A"]);
  });

  test("need not be calculated on opening when all values are there, and must be when one is not", async () => {
    expect(all(part("xl/workbook.xml"), "calcPr")[0]?.attributes.fullCalcOnLoad).toBeUndefined();
    const fresh = partsOf(
      (await writeXlsx({ sheets: [{ name: "S", cells: [[{ formula: "=FIT.TAPE(1)" }]] }] })).bytes,
    );
    expect(all(parse(fresh["xl/workbook.xml"] ?? ""), "calcPr")[0]?.attributes.fullCalcOnLoad).toBe("1");
    expect(all(parse(fresh["xl/worksheets/sheet1.xml"] ?? ""), "c")[0]?.attributes.cm).toBe("1");
  });
});

describe("a table", () => {
  const table = part("xl/tables/table1.xml");

  test("has its own id and name, and the area of its cells", () => {
    expect(table.attributes).toMatchObject({
      id: "1",
      name: "Figures",
      displayName: "Figures",
      ref: "A3:E6",
    });
    expect(part("xl/tables/table2.xml").attributes).toMatchObject({ id: "2", name: "Empty", ref: "A10:A11" });
  });

  test("has headings that are distinct text and the same as in the cells", () => {
    const names = all(table, "tableColumn").map(({ attributes }) => attributes.name ?? "");
    const sheet = part(sheets[0] ?? "");
    const cells = ["A3", "B3", "C3", "D3", "E3"].map((ref) => cellAt(sheet, ref));
    expect(cells.map((cell) => cell?.attributes.t)).toEqual(["s", "s", "s", "s", "s"]);
    expect(cells.map(shown)).toEqual(["Figure", "Waist\n(mm)", "waist\n(MM)2", "5", "Column5"]);
    expect(names.map((name) => name.replaceAll("_x000A_", "\n"))).toEqual(cells.map(shown));
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(5);
  });

  test("is named in formulas that leave its name out", () => {
    const cell = cellAt(part(sheets[0] ?? ""), "A6");
    expect(all(cell!, "f")[0]?.text).toBe("Figures[[#This Row],[Waist\n(mm)]]*2");
  });
});

describe("notes", () => {
  test("stand in their cells, each with its box, and keep their spaces", () => {
    const notes = all(part("xl/comments1.xml"), "comment");
    expect(notes.map(({ attributes }) => attributes.ref)).toEqual(["B4", "G10"]);
    expect(all(notes[0]!, "t")[0]).toMatchObject({
      text: " twice ",
      attributes: { "xml:space": "preserve" },
    });
    const boxes = ["xl/drawings/vmlDrawing1.vml", "xl/drawings/vmlDrawing2.vml"].flatMap((name) =>
      all(part(name), "v:shape"),
    );
    expect(new Set(boxes.map(({ attributes }) => attributes.id)).size).toBe(3);
  });
});
