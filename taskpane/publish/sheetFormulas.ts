import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import type { PublishedUnit, Rounding } from "../../addin/publish/publication.ts";
import type { PublicationAtWork } from "../../addin/publish/published.ts";
import type { CellContent } from "../../addin/workbook/content.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import type { ToPublish } from "./usePublishing.ts";

/** What is written, and what it comes from. */
export type ToWrite = Pick<ToPublish, "sheets" | "used" | "hasOwnClasses"> & {
  readonly chart: Chart;
  readonly work: PublicationAtWork;
};

/**
 * The rows of the published chart as formulas that look each figure up by its name, so that a sorted chart is followed too. What is
 * held back is a dash.
 *
 * @param first the number of the first row on the sheet, from 1
 */
export function chartFormulas(
  toWrite: ToWrite,
  first: number,
): { readonly rows: readonly (readonly CellContent[])[]; readonly heldBack: number } {
  const { work, chart, used } = toWrite;
  const { published, measured } = work;
  const { figures, units, publication } = published;
  const isHeld = (column: MeasureColumn, at: number): boolean => {
    const raw = chart.measures.find(({ key }) => key === column.key);
    const place = chart.figures.indexOf(figures[at] ?? "");
    return Number.isNaN(column.mm[at]) && !Number.isNaN(raw?.mm[place] ?? Number.NaN);
  };
  const table = used.figures;
  const rows = figures.map((figure, at): CellContent[] => {
    const key = `$A${String(first + at)}`;
    return [
      isNumber(figure) ? { value: Number(figure) } : { value: figure, format: "@", style: "wrap" },
      ...measured.flatMap((column) =>
        units.map((unit): CellContent => {
          if (!table || isHeld(column, at)) return { value: dash, format: "@", style: "amount" };
          return {
            style: "amount",
            formula: lookUp(table, column, key, { figure, unit, rounding: publication.rounding }),
          };
        }),
      ),
    ];
  });
  const heldBack = measured.flatMap((column) => figures.filter((_, at) => isHeld(column, at))).length;
  return { rows, heldBack };
}

const dash = "–";

function isNumber(name: string): boolean {
  return /^\d+(\.\d+)?$/u.test(name);
}

/** By the name of the figure and the heading of the column, wherever these stand by then. */
function lookUp(
  { name, headings }: TableInfo,
  column: MeasureColumn,
  key: string,
  how: { readonly figure: string; readonly unit: PublishedUnit; readonly rounding: Rounding },
): string {
  const heading = headings[column.position] ?? column.heading;
  const place = `MATCH("${heading.replace(/[~*?]/gu, "~$&").replaceAll('"', '""')}", ${name}[#Headers], 0)`;
  const found = (wanted: string): string => `VLOOKUP(${wanted}, ${name}[#All], ${place}, FALSE)`;
  const cell = isNumber(how.figure)
    ? `IFERROR(${found(key)}, ${found(`${key}&""`)})`
    : found(/[~*?]/u.test(how.figure) ? withoutWildcards(key) : key);
  return `=IFERROR(IF(${cell}="", "${dash}", ${lengthOf(cell, column, how)}), "${dash}")`;
}

/** Looking up takes * and ? for any letters, unless a tilde stands before them (Microsoft, “VLOOKUP function”). */
function withoutWildcards(key: string): string {
  return ["~", "*", "?"].reduce((text, sign) => `SUBSTITUTE(${text}, "${sign}", "~${sign}")`, key);
}

function lengthOf(
  cell: string,
  { unit: from }: MeasureColumn,
  { unit, rounding }: { readonly unit: PublishedUnit; readonly rounding: Rounding },
): string {
  if (unit === "inches in eighths" || unit === "inches in sixteenths")
    return `FIT.TAPE(${cell}, "${from}", ${unit === "inches in eighths" ? "8" : "16"})`;
  const mm = `FIT.LENGTH(${cell}, "mm", "${from}")`;
  const rounded =
    rounding === "to 5 mm"
      ? `ROUND(${mm} / 5, 0) * 5`
      : `ROUND(${mm}, ${rounding === "to 1 mm" ? "0" : "1"})`;
  return unit === "mm" ? rounded : `${rounded} / 10`;
}

/** A row a pattern: its code, and the words under it for the whole chart. */
export function patternFormulas(toWrite: ToWrite, first: number): readonly (readonly CellContent[])[] {
  const { used, hasOwnClasses, work } = toWrite;
  const { patterns, words } = work.published;
  const { figures, patterns: table, easeRules, garmentClasses } = used;
  if (!figures || !table) return [];
  const further = [easeRules, hasOwnClasses ? garmentClasses : undefined];
  const given = further.slice(0, further.findLastIndex((each) => each !== undefined) + 1);
  return patterns.map(({ code }, at) => {
    const named = [
      `${table.name}[#All]`,
      `${figures.name}[#All]`,
      `$A${String(first + at)}`,
      `"long"`,
      `"${words.language.toLowerCase()}"`,
      ...given.map((each) => (each ? `${each.name}[#All]` : "")),
    ];
    return [
      isNumber(code) ? { value: Number(code) } : { value: code, format: "@" },
      { formula: `=FIT.LISTINGWORDS(${named.join(", ")})`, style: "wrap" },
    ];
  });
}
