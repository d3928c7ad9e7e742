import type { Cell } from "../../addin/chart/cell.ts";
import { publicationCells } from "../../addin/publish/publicationTable.ts";
import type { Publication } from "../../addin/publish/publication.ts";
import type { Published } from "../../addin/publish/published.ts";
import type { CellContent, SheetContent } from "../../addin/workbook/content.ts";
import type { Edit, TableInfo } from "../../addin/workbook/port.ts";
import { freeName } from "../shell/freeName.ts";
import type { Writing, WritingForm } from "../shell/writing.ts";
import { headingRow, startOn } from "../shell/writing.ts";
import { count } from "../ui/words.ts";
import type { ToWrite } from "./sheetFormulas.ts";
import { chartFormulas, patternFormulas } from "./sheetFormulas.ts";
import { publicationTable } from "./usePublishing.ts";

const nameWidth = 200;
/** Names of a body in one column could fill the screen, and it stays in sight: beyond this they go on below. */
const mostNameWidth = 280;
const measureWidth = 64;
/** Pixels of a letter, the widest taken for all, and of the space beside a text: nothing is cut. */
const letterWidth = 8;
const besideText = 16;
const sayWidth = 420;

/** Plans sheets with the chart and with the patterns, as they would stand on the page, or as formulas that follow the workbook. */
export function planChart(form: WritingForm, toPublish: ToWrite): Writing {
  return form === "values" ? planValues(toPublish) : planFormulas(toPublish);
}

function planValues({ work: { published }, sheets }: ToWrite): Writing {
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

function planFormulas(toWrite: ToWrite): Writing {
  const { work, sheets } = toWrite;
  const { published } = work;
  const { words, publication, figures, columns, patterns } = published;
  const isWhole = publication.figures.length + publication.bodies.length + publication.where.length === 0;
  const chartName = freeName(words.page.chart, sheets);
  const patternsName = freeName(words.listing.headings[0], [...sheets, chartName]);
  const { rows, heldBack } = chartFormulas(toWrite, headingRow + 2);
  const said = isWhole ? patternFormulas(toWrite, headingRow + 2) : [];
  const written: readonly SheetContent[] = [
    sheetOf(published, chartName, {
      cells: [
        headingsOf(published),
        ...rows,
        [],
        [{ value: published.rounded, style: "quiet" }],
        ...published.cautions.map((line): CellContent[] => [{ value: line, style: "quiet" }]),
      ],
      widths: widthsOf(published),
    }),
    ...(said.length > 0
      ? [
          sheetOf(published, patternsName, {
            cells: [
              [words.listing.headings[0], words.page.patterns].map((value) => ({
                ...{ value, style: "heading" as const },
              })),
              ...said,
            ],
            widths: [nameWidth, 2 * sayWidth],
          }),
        ]
      : []),
  ];
  const names = written.map(({ name }) => `“${name}”`).join(" and ");
  return {
    label: "Write the published chart as formulas",
    preview: [
      `Writes ${count(figures.length, "figure")} with ${count(columns.length, "measure")} to the new ${written.length > 1 ? "sheets" : "sheet"} ${names}, a row each, as formulas that follow the chart.`,
      ...(heldBack > 0
        ? [
            `${count(heldBack, "reading that is held back stays a dash", "readings that are held back stay dashes")}.`,
          ]
        : []),
      ...(said.length > 0
        ? ["The words under the patterns follow every reading, also those that Check doubts."]
        : patterns.length > 0
          ? [
              "The words under the patterns are left out: as formulas they would name every figure of the chart.",
            ]
          : []),
    ].join(" "),
    done: `The published chart is on the ${written.length > 1 ? "sheets" : "sheet"} ${names}, and follows your workbook.`,
    at: startOn(chartName),
    edits: () => written.map((sheet): Edit => ({ kind: "sheet", sheet })),
  };
}

/** A sheet that buyers read: title, line and what stands below, on the paper of the publication. */
function sheetOf(
  published: Published,
  name: string,
  { cells, widths }: { readonly cells: SheetContent["cells"]; readonly widths: readonly number[] },
): SheetContent {
  return {
    name,
    paper: published.publication.paper,
    cells: [...topOf(published), ...cells],
    frozenRows: headingRow + 1,
    frozenColumns: 1,
    columnWidths: widths,
  };
}

function headingsOf({ words, columns, unitHeadings }: Published): CellContent[] {
  return [
    words.page.figure,
    ...columns.flatMap(({ term }) => unitHeadings.map((unit) => `${term} (${unit})`)),
  ].map((value) => ({ value, style: "heading" }));
}

/** As wide as the longest text of each column of the chart, headings included; names go on below where they are long. */
function widthsOf(published: Published): readonly number[] {
  const { rows, units } = published;
  const [first, ...others] = headingsOf(published);
  const widthFor = (texts: readonly string[], least: number): number =>
    Math.max(least, ...texts.map((text) => text.length * letterWidth + besideText));
  return [
    Math.min(
      widthFor([String(first?.value), ...rows.map(({ names }) => names.join(", "))], nameWidth),
      mostNameWidth,
    ),
    ...others.map(({ value }, at) => {
      const [column, unit] = [Math.floor(at / units.length), at % units.length];
      const shown = rows.map(({ cells }) => `${cells[column]?.texts[unit] ?? "–"} a`);
      return widthFor([String(value), ...shown], measureWidth);
    }),
  ];
}

/** The two lines above a sheet that buyers read. */
function topOf({ title, publication }: Published): SheetContent["cells"] {
  const says = [publication.maker, publication.date].filter((text) => text.trim() !== "").join(" · ");
  return [[{ value: title, style: "title" }], [{ value: says, style: "quiet" }], []];
}

function chartSheet(published: Published, name: string): SheetContent {
  const { rows, units, words, bodies, cautions, rounded, publication } = published;
  const quiet = (value: string): CellContent[] => [{ value, style: "quiet" }];
  const remarks = [...new Set(rows.flatMap(({ cells }) => cells.map(({ remark }) => remark)))].filter(
    (remark) => remark !== "",
  );
  return sheetOf(published, name, {
    cells: [
      headingsOf(published),
      ...rows.map(({ names, cells }): CellContent[] => [
        { value: names.join(", "), format: "@", style: "wrap" },
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
    widths: widthsOf(published),
  });
}

function letterOf(at: number): string {
  return String.fromCharCode(97 + at);
}

/** Plain numbers stay numbers where the sheet writes them as the buyers do; all else is text, at the right as they are. */
function textCell(text: string | undefined, remark: number, mark: "." | ","): CellContent {
  const shown = (value: string): CellContent => ({ value, format: "@", style: "amount" });
  if (text === undefined) return shown(`– ${letterOf(remark)}`);
  const isPlain = mark === "." && /^\d+(\.\d+)?$/u.test(text) && remark < 0;
  if (isPlain) return { value: Number(text) };
  return shown(remark < 0 ? text : `${text} ${letterOf(remark)}`);
}

function patternsSheet(published: Published, name: string): SheetContent {
  const { patterns, figures, words } = published;
  return sheetOf(published, name, {
    cells: [
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
    widths: [nameWidth, 140, 140, sayWidth],
  });
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
