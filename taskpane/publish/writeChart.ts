import type { Cell } from "../../addin/chart/cell.ts";
import { publicationCells } from "../../addin/publish/publicationTable.ts";
import type { Publication } from "../../addin/publish/publication.ts";
import type { Published } from "../../addin/publish/published.ts";
import type { CellContent, SheetContent } from "../../addin/workbook/content.ts";
import type { Edit, TableInfo } from "../../addin/workbook/port.ts";
import { freeName } from "../shell/freeName.ts";
import type { Writing } from "../shell/writing.ts";
import { headingRow, startOn } from "../shell/writing.ts";
import { count } from "../ui/words.ts";
import { publicationTable } from "./usePublishing.ts";

const nameWidth = 200;
const measureWidth = 92;
const sayWidth = 420;

/** Plans sheets with the chart and with the patterns, as they would stand on the page. */
export function planChart(published: Published, sheets: readonly string[]): Writing {
  const { rows, patterns, words, columns } = published;
  const chartName = freeName(words.page.chart, sheets);
  const patternsName = freeName(words.listing.headings[0], [...sheets, chartName]);
  const written = [
    chartSheet(published, chartName),
    ...(patterns.length > 0 ? [patternsSheet(published, patternsName)] : []),
  ];
  const names = written.map(({ name }) => `“${name}”`).join(" and ");
  return {
    label: "Write the published chart",
    preview: `Writes ${count(rows.length, "row")} with ${count(columns.length, "measure")} to the new ${written.length > 1 ? "sheets" : "sheet"} ${names}, as they are now.`,
    done: `The published chart is on the ${written.length > 1 ? "sheets" : "sheet"} ${names}.`,
    at: startOn(chartName),
    edits: () => written.map((sheet): Edit => ({ kind: "sheet", sheet })),
  };
}

/** The two lines above a sheet that buyers read. */
function topOf({ title, publication }: Published): SheetContent["cells"] {
  const says = [publication.maker, publication.date].filter((text) => text.trim() !== "").join(" · ");
  return [[{ value: title, style: "title" }], [{ value: says, style: "quiet" }], []];
}

function chartSheet(published: Published, name: string): SheetContent {
  const { columns, rows, units, unitHeadings, words, bodies, cautions, rounded, publication } = published;
  const heading = (value: string): CellContent => ({ value, style: "heading" });
  const quiet = (value: string): CellContent[] => [{ value, style: "quiet" }];
  const remarks = [...new Set(rows.flatMap(({ cells }) => cells.map(({ remark }) => remark)))].filter(
    (remark) => remark !== "",
  );
  return {
    name,
    cells: [
      ...topOf(published),
      [
        heading(words.page.figure),
        ...columns.flatMap(({ term }) => unitHeadings.map((unit) => heading(`${term} (${unit})`))),
      ],
      ...rows.map(({ names, cells }) => [
        { value: names.join(", "), format: "@" },
        ...cells.flatMap(({ texts, remark }) =>
          units.map((_, unit) => textCell(texts[unit], remarks.indexOf(remark), words.decimalMark)),
        ),
      ]),
      [],
      ...remarks.map((remark, at) => quiet(`${letterOf(at)} ${remark}`)),
      quiet(rounded),
      ...bodies.map(quiet),
      ...(publication.note.trim() === "" ? [] : [quiet(publication.note)]),
      ...cautions.map(quiet),
    ],
    frozenRows: headingRow + 1,
    frozenColumns: 1,
    columnWidths: [nameWidth, ...columns.flatMap(() => units.map(() => measureWidth))],
  };
}

function letterOf(at: number): string {
  return String.fromCharCode(97 + at);
}

/** Plain numbers stay numbers where the sheet writes them as the buyers do; all else is text. */
function textCell(text: string | undefined, remark: number, mark: "." | ","): CellContent {
  if (text === undefined) return { value: `– ${letterOf(remark)}`, format: "@" };
  const isPlain = mark === "." && /^\d+(\.\d+)?$/u.test(text) && remark < 0;
  if (isPlain) return { value: Number(text) };
  return { value: remark < 0 ? text : `${text} ${letterOf(remark)}`, format: "@" };
}

function patternsSheet(published: Published, name: string): SheetContent {
  const { patterns, figures, words } = published;
  return {
    name,
    cells: [
      ...topOf(published),
      words.listing.headings.map((value) => ({ value, style: "heading" as const })),
      ...patterns.flatMap(({ code, title, answers }) =>
        answers.map(({ verdict, says }, at) => [
          { value: title === "" ? code : `${title} (${code})`, format: "@" },
          { value: figures[at] ?? "", format: "@" },
          { value: words.verdicts[verdict] },
          { value: says, format: "@" },
        ]),
      ),
    ],
    frozenRows: headingRow + 1,
    frozenColumns: 1,
    columnWidths: [nameWidth, 140, 140, sayWidth],
  };
}

/** The edits that make the workbook remember a publication: in its table, or on a new sheet where there is none. */
export function rememberEdits(
  publication: Publication,
  workbook: { readonly table: TableInfo | undefined; readonly sheets: readonly string[] },
): readonly Edit[] {
  const rows = publicationCells(publication);
  const { table, sheets } = workbook;
  if (!table) return [newSheet(rows, sheets)];
  const { area } = table;
  const free = area.rows;
  const line = (row: readonly Cell[]): CellContent[] => row.map((value) => ({ value, format: "@" }));
  const blank: readonly Cell[] = [undefined, undefined];
  const below = rows.slice(free);
  return [
    {
      kind: "cells",
      at: { sheet: area.sheet, row: area.row + 1, column: area.column },
      cells: Array.from({ length: free - 1 }, (_, at) => line(rows[at + 1] ?? blank)),
    },
    ...(below.length > 0
      ? [
          {
            kind: "rows" as const,
            table: table.name,
            rows: below.map((row) => Array.from({ length: area.columns }, (_, c) => row[c])),
          },
        ]
      : []),
  ];
}

function newSheet(rows: readonly (readonly Cell[])[], sheets: readonly string[]): Edit {
  return {
    kind: "sheet",
    sheet: {
      name: freeName(publicationTable, sheets),
      cells: [
        [{ value: publicationTable, style: "title" }],
        [
          {
            value: "What is published of this workbook. A list has one row for each of its items.",
            style: "quiet",
          },
        ],
        ...rows.map((row) => row.map((value): CellContent => ({ value, format: "@" }))),
      ],
      frozenRows: 3,
      columnWidths: [200, 320],
      tables: [{ name: publicationTable, row: 2, column: 0, rows: rows.length, columns: 2 }],
    },
  };
}
