import { strFromU8, strToU8 } from "fflate";
import { parseCellRef } from "hucre/xlsx";
import { InputError } from "../../measures/inputError.ts";
import { cellName } from "../address.ts";
import { limits } from "../limits.ts";
import { counted, tooLarge } from "../tooLarge.ts";
import { damaged, type PackageParts } from "./packageParts.ts";
import { attributeOf, eachTag, type XmlTag } from "./xmlTags.ts";

/**
 * Refuses parts that would ask for more than can be opened, by what they hold and not by how long they are: elements,
 * cells, the area of cells, merges and so on, before anything is built from them. Where a sheet is too large only by
 * cells that have a look and hold nothing, those beyond the used ones are taken out.
 *
 * @throws {InputError} naming what there is too much of
 */
export function checkParts(parts: PackageParts): PackageParts {
  const total = { sheetElements: 0, otherElements: 0, cells: 0, area: 0, columns: 0, merges: 0, tables: 0 };
  const xml = new Map(parts.xml);
  const count = (what: keyof typeof total, by: number, most: number, words: string): void => {
    total[what] += by;
    if (total[what] > most) throw tooLarge(`more than ${counted(most)} ${words}`);
  };
  for (const [name, bytes] of parts.xml) {
    const text = strFromU8(bytes);
    const used = new UsedCells();
    let root: string | undefined;
    const see = (tag: XmlTag): void => {
      root ??= tag.name;
      if (root === "worksheet" || root === "sst") count("sheetElements", 1, limits.sheetElements, "elements");
      else count("otherElements", 1, limits.otherElements, "elements beside its cells");
      if (tag.name === "row") used.row(text, tag);
      else if (tag.name === "c") {
        used.cell(text, tag);
        if (!tag.isEmpty) count("cells", 1, limits.cells, "cells");
      } else if (tag.name === "col")
        count("columns", columnsOf(text, tag), limits.columnSettings, "widths of columns");
      else if (tag.name === "mergeCell") count("merges", 1, limits.merges, "merged cells");
      else if (tag.name === "table") count("tables", 1, limits.tables, "tables");
    };
    const depth = inXml(() => eachTag(text, see));
    if (depth > limits.elementDepth) throw tooLarge(`elements ${counted(depth)} deep within one another`);
    const isSparse = total.area + used.areaWithEmpty() > limits.area;
    total.area += isSparse ? used.area() : used.areaWithEmpty();
    if (total.area > limits.area) throw tooWide(used, total.area);
    if (isSparse) xml.set(name, strToU8(used.withoutEmptyBeyond(text)));
  }
  checkBook(parts);
  return { ...parts, xml };
}

/** Sheets, names and cell formats are counted where the workbook lists them. */
function checkBook({ workbook, xml, relationships }: PackageParts): void {
  const inBook = countOf(workbook, "sheet");
  if (inBook > limits.sheets)
    throw tooLarge(`${counted(inBook)} sheets; at most ${counted(limits.sheets)} can be opened`);
  const names = countOf(workbook, "definedName");
  if (names > limits.names)
    throw tooLarge(`${counted(names)} names; at most ${counted(limits.names)} can be opened`);
  const styles = [...xml].find(([name]) => /(^|\/)styles\.xml$/i.test(name));
  const formats = styles ? countOf(strFromU8(styles[1]), "xf") : 0;
  if (formats > limits.styles)
    throw tooLarge(`${counted(formats)} cell formats; at most ${counted(limits.styles)} can be opened`);
  // Two sheets, or two tables, that are one part would be read again and again.
  for (const [name, bytes] of xml)
    if (name.endsWith(".rels"))
      checkTargets(name.endsWith("workbook.xml.rels") ? relationships : strFromU8(bytes));
}

function checkTargets(relationships: string): void {
  const targets = new Set<string>();
  inXml(() =>
    eachTag(relationships, (tag) => {
      const target = attributeOf(relationships, tag, "Target");
      if (tag.name !== "Relationship" || !target?.endsWith(".xml")) return;
      if (attributeOf(relationships, tag, "TargetMode") === "External") return;
      if (targets.has(target)) throw damaged();
      targets.add(target);
    }),
  );
}

function countOf(xml: string, name: string): number {
  let count = 0;
  inXml(() =>
    eachTag(xml, (tag) => {
      if (tag.name === name) count++;
    }),
  );
  return count;
}

/** What is wrong with the XML itself is damage. */
function inXml<T>(read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw error instanceof InputError ? error : damaged();
  }
}

function columnsOf(xml: string, tag: XmlTag): number {
  const [first, last] = ["min", "max"].map((name) => Number(attributeOf(xml, tag, name) ?? 1));
  return Math.max(1, (last ?? 1) - (first ?? 1) + 1) || 1;
}

function tooWide({ last }: UsedCells, area: number): InputError {
  return tooLarge(
    `${counted(area)} cells, empty ones counted, up to cell ${cellName(last.row, last.column)}; at most ${counted(limits.area)} can be opened. ` +
      "Often a single cell far off is to blame",
  );
}

/** How far the cells of a sheet reach: those that hold something, and those that have a look only. */
class UsedCells {
  readonly last = { row: -1, column: -1 };
  readonly #lastEmpty = { row: -1, column: -1 };
  #row = -1;
  #column = -1;

  row(xml: string, tag: XmlTag): void {
    const stated = Number(attributeOf(xml, tag, "r"));
    this.#row = stated > 0 ? stated - 1 : this.#row + 1;
    this.#column = -1;
  }

  /** A cell without an address follows the one before it. */
  cell(xml: string, tag: XmlTag): void {
    const { row, column } = placeOf(attributeOf(xml, tag, "r")) ?? {
      row: this.#row,
      column: this.#column + 1,
    };
    this.#column = column;
    const reach = tag.isEmpty ? this.#lastEmpty : this.last;
    reach.row = Math.max(reach.row, row);
    reach.column = Math.max(reach.column, column);
  }

  area(): number {
    return (this.last.row + 1) * (this.last.column + 1);
  }

  areaWithEmpty(): number {
    const row = Math.max(this.last.row, this.#lastEmpty.row);
    const column = Math.max(this.last.column, this.#lastEmpty.column);
    return (row + 1) * (column + 1);
  }

  withoutEmptyBeyond(xml: string): string {
    return xml.replace(/<(?:\w+:)?c\s[^<>]*\/>/g, (cell) => {
      const place = placeOf(attributeOf(cell, { name: "c", start: 0, end: cell.length, isEmpty: true }, "r"));
      return place && (place.row > this.last.row || place.column > this.last.column) ? "" : cell;
    });
  }
}

function placeOf(
  reference: string | undefined,
): { readonly row: number; readonly column: number } | undefined {
  if (reference === undefined || !/^[A-Z]{1,3}[1-9]\d{0,6}$/i.test(reference)) return undefined;
  const { row, col } = parseCellRef(reference);
  return { row, column: col };
}
