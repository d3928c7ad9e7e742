import type { IDisposable, Worksheet } from "@univerjs/core";
import { cellText } from "../../chart/cell.ts";
import { verdictInk, verdictLook } from "../../workbook/verdictCells.ts";
import { styleNameOf } from "./cellLook.ts";
import type { GridUnit, Spilled } from "./gridSheets.ts";
import { spilledIn, workbookOf } from "./gridSheets.ts";
import { toCell } from "./values.ts";

/** More cells would take a browser minutes to set. */
const mostCells = 100_000;

/** More frozen rows than these are not headings, and would fill every page. */
const mostHeadings = 8;

/**
 * Pixels of the sheet’s columns that have room on paper laid across, A4 or Letter with the margins that browsers leave: 257 mm, at
 * 8 points in the place of the sheet’s 11. What is wider goes on below, beside the same names.
 */
const mostAcross = Math.floor((257 / 25.4) * 96 * (11 / 8));
/** Upright there is room for so many. */
const mostUpright = Math.floor((185 / 25.4) * 96 * (11 / 8));
/** A frozen column that takes more than this is not repeated. */
const mostRepeated = mostUpright / 2;

/**
 * Lets the browser print the sheet that is shown: the grid draws on a canvas, which prints as one blank screen. While it prints,
 * a table of what the cells show stands in the page, frozen rows as headings of every page, without hidden rows and columns.
 *
 * @param container of the grid; where it is out of sight, the page prints what is in sight
 */
export function printSheet(container: HTMLElement, unit: GridUnit): IDisposable {
  let printed: readonly HTMLElement[] = [];
  const after = (): void => {
    for (const element of printed) element.remove();
    printed = [];
  };
  const before = (): void => {
    after();
    // The measuring guide is printed in its place, on its own paper.
    if (!container.checkVisibility() || document.querySelector(".printed-guide")) return;
    const { section, isWide } = sheetToPrint(unit);
    const across = document.createElement("style");
    across.textContent = "@page { size: landscape; }";
    printed = isWide ? [section, across] : [section];
    document.body.append(section);
    if (isWide) document.head.append(across);
  };
  window.addEventListener("beforeprint", before);
  window.addEventListener("afterprint", after);
  return {
    dispose: () => {
      window.removeEventListener("beforeprint", before);
      window.removeEventListener("afterprint", after);
      after();
    },
  };
}

function sheetToPrint(unit: GridUnit): { readonly section: HTMLElement; readonly isWide: boolean } {
  const sheet = workbookOf(unit).getActiveSheet();
  const spilled = spilledIn(unit, sheet.getSheetId());
  const { rows, columns } = usedSize(sheet, spilled);
  const shownColumns = upTo(columns).filter((column) => sheet.getColVisible(column));
  const most = Math.max(Math.floor(mostCells / Math.max(shownColumns.length, 1)), 1);
  const shownRows = upTo(rows).filter((row) => sheet.getRowVisible(row));
  const { ySplit: frozen, xSplit: frozenColumns } = sheet.getFreeze();
  const headings = frozen > 0 && frozen <= mostHeadings ? frozen : 0;
  const body = shownRows.filter((row) => row >= headings);
  const section = document.createElement("section");
  section.className = "printed-sheet";
  const widthOf = (column: number): number => sheet.getColumnWidth(column);
  const parts = partsOf(shownColumns, frozenColumns, widthOf);
  for (const [at, part] of parts.entries()) {
    const line = (row: number): HTMLTableRowElement => {
      const tr = document.createElement("tr");
      for (const column of part) tr.append(cellToPrint(sheet, spilled, row, column, row < headings));
      // A title or a note runs on over the empty cells beside it.
      const [first, ...others] = tr.cells;
      const isAlone = shownColumns.every(
        (column) => column === part[0] || shownIn(sheet, spilled, row, column) === "",
      );
      if (first && first.textContent !== "" && isAlone) {
        first.colSpan = tr.cells.length;
        for (const other of others) other.remove();
      }
      return tr;
    };
    const isSaid = (tr: HTMLTableRowElement): boolean => at === 0 || tr.cells.length > 1;
    const table = document.createElement("table");
    table.createTHead().append(
      ...shownRows
        .filter((row) => row < headings)
        .map(line)
        .filter(isSaid),
    );
    table.createTBody().append(...body.slice(0, most).map(line).filter(isSaid));
    section.append(table);
  }
  if (body.length > most) {
    const note = document.createElement("p");
    note.textContent = `The sheet goes on for ${String(body.length - most)} rows. Save it as .xlsx to print all of them.`;
    section.append(note);
  }
  return { section, isWide: parts.length > 1 || total(shownColumns, widthOf) > mostUpright };
}

/** Columns that stand beside each other on paper: all of them, or as many as have room, the frozen ones each time. */
function partsOf(
  columns: readonly number[],
  frozen: number,
  widthOf: (column: number) => number,
): readonly (readonly number[])[] {
  if (total(columns, widthOf) <= mostAcross) return [columns];
  const kept = columns.filter((column) => column < frozen);
  const repeated = total(kept, widthOf) <= mostRepeated ? kept : [];
  const parts: number[][] = [];
  let left = 0;
  for (const column of columns.filter((each) => !repeated.includes(each))) {
    if (widthOf(column) > left) {
      parts.push([...repeated]);
      left = mostAcross - total(repeated, widthOf);
    }
    parts.at(-1)?.push(column);
    left -= widthOf(column);
  }
  return parts;
}

function total(columns: readonly number[], widthOf: (column: number) => number): number {
  return columns.reduce((sum, column) => sum + widthOf(column), 0);
}

function cellToPrint(
  sheet: Worksheet,
  spilled: Spilled,
  row: number,
  column: number,
  isHeading: boolean,
): HTMLElement {
  const from = spilled.get(row, column);
  const cell = document.createElement(isHeading ? "th" : "td");
  cell.textContent = shownIn(sheet, spilled, row, column);
  const raw = sheet.getCellRaw(row, column);
  const verdict = styleNameOf(raw) === "verdict" ? verdictLook(toCell(from ?? raw)) : undefined;
  if (verdict) {
    cell.textContent = `${verdict.sign} ${verdict.word}`;
    cell.style.color = verdictInk[verdict.tone];
  }
  if (typeof toCell(from ?? raw) === "number") cell.className = "number";
  return cell;
}

/** What a cell shows; what the sheet gives is formatted as it does. */
function shownIn(sheet: Worksheet, spilled: Spilled, row: number, column: number): string {
  const from = spilled.get(row, column);
  return from ? cellText(toCell(from)) : String(sheet.getCell(row, column)?.v ?? "");
}

/** Rows and columns from A1 that hold something. */
function usedSize(sheet: Worksheet, spilled: Spilled): { readonly rows: number; readonly columns: number } {
  const used = { rows: 0, columns: 0 };
  const take = (row: number, column: number): void => {
    used.rows = Math.max(used.rows, row + 1);
    used.columns = Math.max(used.columns, column + 1);
  };
  sheet.getCellMatrix().forValue((row, column, cell) => {
    if (toCell(cell) !== undefined) take(row, column);
  });
  for (const { endRow, endColumn } of spilled.areas) take(endRow, endColumn);
  return used;
}

function upTo(n: number): readonly number[] {
  return Array.from({ length: n }, (_, at) => at);
}
