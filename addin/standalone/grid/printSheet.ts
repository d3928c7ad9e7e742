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

/** From here on letters are smaller, so that the columns have room beside each other. */
const manyColumns = 20;

/**
 * Lets the browser print the sheet that is shown: the grid draws on a canvas, which prints as one blank screen. While it prints,
 * a table of what the cells show stands in the page, frozen rows as headings of every page, without hidden rows and columns.
 *
 * @param container of the grid; where it is out of sight, the page prints what is in sight
 */
export function printSheet(container: HTMLElement, unit: GridUnit): IDisposable {
  let printed: HTMLElement | undefined;
  const before = (): void => {
    printed?.remove();
    printed = undefined;
    if (!container.checkVisibility()) return;
    printed = sheetToPrint(unit);
    document.body.append(printed);
  };
  const after = (): void => {
    printed?.remove();
    printed = undefined;
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

function sheetToPrint(unit: GridUnit): HTMLElement {
  const sheet = workbookOf(unit).getActiveSheet();
  const spilled = spilledIn(unit, sheet.getSheetId());
  const { rows, columns } = usedSize(sheet, spilled);
  const shownColumns = upTo(columns).filter((column) => sheet.getColVisible(column));
  const most = Math.max(Math.floor(mostCells / Math.max(shownColumns.length, 1)), 1);
  const shownRows = upTo(rows).filter((row) => sheet.getRowVisible(row));
  const frozen = sheet.getFreeze().ySplit;
  const headings = frozen > 0 && frozen <= mostHeadings ? frozen : 0;
  const line = (row: number): HTMLTableRowElement => {
    const tr = document.createElement("tr");
    for (const column of shownColumns) tr.append(cellToPrint(sheet, spilled, row, column, row < headings));
    // A title or a note runs on over the empty cells beside it.
    const [first, ...others] = tr.cells;
    if (first && first.textContent !== "" && others.every(({ textContent }) => textContent === "")) {
      first.colSpan = tr.cells.length;
      for (const other of others) other.remove();
    }
    return tr;
  };
  const table = document.createElement("table");
  table.createTHead().append(...shownRows.filter((row) => row < headings).map(line));
  const body = shownRows.filter((row) => row >= headings);
  table.createTBody().append(...body.slice(0, most).map(line));
  const section = document.createElement("section");
  section.className = shownColumns.length > manyColumns ? "printed-sheet wide" : "printed-sheet";
  section.append(table);
  if (body.length > most) {
    const note = document.createElement("p");
    note.textContent = `The sheet goes on for ${String(body.length - most)} rows. Save it as .xlsx to print all of them.`;
    section.append(note);
  }
  return section;
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
  // What the sheet gives is formatted as the cell shows it.
  cell.textContent = from ? cellText(toCell(from)) : String(sheet.getCell(row, column)?.v ?? "");
  const raw = sheet.getCellRaw(row, column);
  const verdict = styleNameOf(raw) === "verdict" ? verdictLook(toCell(from ?? raw)) : undefined;
  if (verdict) {
    cell.textContent = `${verdict.sign} ${verdict.word}`;
    cell.style.color = verdictInk[verdict.tone];
  }
  if (typeof toCell(from ?? raw) === "number") cell.className = "number";
  return cell;
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
