import type { Cells } from "../../../addin/chart/cell.ts";
import type { Chart } from "../../../addin/chart/chart.ts";
import type { EaseRule } from "../../../addin/chart/easeRule.ts";
import type { GarmentClass } from "../../../addin/chart/garmentClass.ts";
import { defaultGarmentClasses } from "../../../addin/chart/garmentClass.ts";
import type { PatternTable } from "../../../addin/chart/pattern.ts";
import { readPatternTable } from "../../../addin/chart/readPatterns.ts";
import { isBlank } from "../../../addin/chart/cell.ts";
import { readChart } from "../../../addin/chart/readChart.ts";
import { tableColumns } from "../../../addin/chart/tableRows.ts";
import { patternHeadings } from "../../../addin/demo/patternsTable.ts";
import { starterPatterns } from "../../../addin/demo/starterWorkbook.ts";
import type { LengthUnit } from "../../../addin/measures/units.ts";
import { sameName } from "../../../addin/workbook/names.ts";
import type { CellContent } from "../../../addin/workbook/content.ts";
import type { Edit, RangeData, TableInfo } from "../../../addin/workbook/port.ts";
import type { Book } from "../../shell/book.ts";
import { chartIn } from "../../shell/chartIn.ts";
import { isEmptyChart } from "../../shell/chartTables.ts";
import { freeName } from "../../shell/freeName.ts";
import { failureText } from "../../shell/notice.ts";
import type { ChosenTables } from "../fitTables.ts";
import { findFitTables, tableFor, usualNames } from "../fitTables.ts";
import { readRules } from "../readFit.ts";
import type { PatternRow, PatternsPlace, Wardrobe } from "./newPattern.ts";
import { rowEdits } from "./newPattern.ts";

/** What a pattern can be added to, or why it cannot, in words. */
export interface WardrobeFound {
  readonly wardrobe: Wardrobe | undefined;
  readonly figures: TableInfo | undefined;
  readonly sheets: readonly string[];
  readonly tables: readonly TableInfo[];
  readonly failure: string | undefined;
}

/** Reads what a new pattern is held against. Never rejects: what fails is said in the result. */
export async function readWardrobe(book: Book, chosen: ChosenTables): Promise<WardrobeFound> {
  const nothing = { wardrobe: undefined, figures: undefined, sheets: [], tables: [] };
  try {
    const tables = await book.tables();
    const found = book.once(findFitTables, tables);
    const figures = tableFor("figures", found, chosen);
    const table = tableFor("patterns", found, chosen);
    const chart = figures ? await chartOf(book, figures) : noChart;
    const { classes, rules } = await readRules(book, {
      easeRules: tableFor("easeRules", found, chosen),
      garmentClasses: tableFor("garmentClasses", found, chosen),
    });
    const data = table && (await book.readTable(table.name));
    const wardrobe = book.once(wardrobeOf, chart, table, data?.values, data?.formats, classes, rules);
    return { wardrobe, figures, sheets: await book.sheets(), tables, failure: undefined };
  } catch (error) {
    return { ...nothing, failure: failureText(error) };
  }
}

const noChart: Chart = { figures: [], rows: [], measures: [], attributes: [], problems: [] };

/** Headings alone are a chart without figures. */
async function chartOf(book: Book, table: TableInfo): Promise<Chart> {
  const data = await book.readTable(table.name);
  return isEmptyChart(data.values) ? book.once(emptyChart, data.values, data.formats) : chartIn(book, data);
}

function emptyChart(values: Cells, formats: RangeData["formats"]): Chart {
  return readChart(values, { formats, mayBeEmpty: true });
}

function wardrobeOf(
  chart: Chart,
  table: TableInfo | undefined,
  values: Cells | undefined,
  formats: RangeData["formats"] | undefined,
  classes: readonly GarmentClass[] = defaultGarmentClasses,
  rules?: readonly EaseRule[],
): Wardrobe {
  const usual = chart.measures[0]?.unit ?? "mm";
  const cells = values ?? [patternHeadings(usual)];
  const place: PatternsPlace = {
    table,
    cells,
    formats: formats ?? cells.map((row) => row.map(() => "General")),
    unit: values ? (unitIn(values) ?? usual) : usual,
  };
  return { chart, place, classes, rules, known: knownIn(place, chart, classes) };
}

/** The unit that the lengths of the table are in. */
function unitIn(cells: Cells): LengthUnit | undefined {
  return tableColumns(cells).find(({ heading }) => heading.unitStated)?.heading.unit;
}

function knownIn(
  { cells, formats }: PatternsPlace,
  chart: Chart,
  classes: readonly GarmentClass[],
): PatternTable {
  if (cells.slice(1).every((row) => row.every(isBlank))) return { patterns: [], problems: [] };
  return readPatternTable(cells, chart, { formats, classes });
}

/** What adding a row comes to: the edits, and where it will stand, in words. */
export interface Adding {
  readonly edits: readonly Edit[];
  /** “row 37 of the sheet “Patterns”” */
  readonly where: string;
  readonly also: readonly string[];
}

/** Adds a row to the table of patterns; where there is none, makes it, with notes and pick lists, on a sheet of its own. */
export function planAdding(
  { wardrobe, figures, sheets, tables }: WardrobeFound & { readonly wardrobe: Wardrobe },
  row: PatternRow,
): Adding {
  const { place } = wardrobe;
  const { table } = place;
  if (table) {
    const { edits, at } = rowEdits({ ...place, table }, row);
    return {
      edits,
      where: `row ${String(at + 1)} of the sheet “${table.area.sheet}”`,
      also: row.added.map((heading) => `The column “${heading}” is added on the right.`),
    };
  }
  const { edits, sheet } = newPatternsTable({ wardrobe, figures, sheets, tables }, row.added, [
    row.cells.map((value) => (value === undefined ? undefined : { value })),
  ]);
  return { edits, where: `a new sheet “${sheet}”, in a table of your patterns`, also: [] };
}

/**
 * A sheet with a table of patterns, with notes and pick lists.
 *
 * @param added headings behind the usual ones
 * @param rows in the order of the usual headings and those added
 */
export function newPatternsTable(
  { wardrobe, figures, sheets, tables }: Omit<WardrobeFound, "failure"> & { readonly wardrobe: Wardrobe },
  added: readonly string[],
  rows: readonly (readonly (CellContent | undefined)[])[],
): { readonly edits: readonly Edit[]; readonly sheet: string; readonly table: string } {
  const starter = starterPatterns(wardrobe.place.unit);
  const name = freeName(starter.name, sheets);
  const tableName = freeName(
    usualNames.patterns,
    tables.map((each) => each.name),
    "_",
  );
  const blank = starter.cells.at(-1) ?? [];
  const headings = starter.cells.at(-2) ?? [];
  const [content] = starter.tables ?? [];
  const cells = [
    ...starter.cells.slice(0, -2),
    [...headings, ...added.map((value) => ({ value, style: "heading" as const }))],
    ...rows.map((row) => row.map((cell, i) => ({ ...blank[i], ...cell }))),
  ];
  const pickLists = (starter.pickLists ?? []).flatMap((list) => {
    if (!("table" in list.from)) return [list];
    const { table: from, heading } = list.from;
    if (sameName(from, usualNames.patterns)) return [{ ...list, from: { table: tableName, heading } }];
    if (sameName(from, usualNames.figures))
      return figures
        ? [{ ...list, from: { table: figures.name, heading: figures.headings[0] ?? heading } }]
        : [];
    return tables.some((each) => sameName(each.name, from)) ? [list] : [];
  });
  return {
    edits: [
      {
        kind: "sheet",
        sheet: {
          ...starter,
          ...{ name, cells, pickLists },
          tables: content
            ? [
                {
                  ...{ ...content, name: tableName, rows: rows.length + 1 },
                  columns: content.columns + added.length,
                },
              ]
            : [],
        },
      },
    ],
    sheet: name,
    table: tableName,
  };
}
