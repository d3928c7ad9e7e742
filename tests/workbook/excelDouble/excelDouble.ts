import { isCellError } from "../../../addin/chart/cell.ts";
import type {
  CellContent,
  CellStyle,
  SheetContent,
  WorkbookContent,
} from "../../../addin/workbook/content.ts";
import { cellName } from "../../../addin/workbook/address.ts";
import type { CellAddress } from "../../../addin/workbook/port.ts";
import { sameName } from "../../../addin/workbook/names.ts";
import {
  cellIn,
  enter,
  key,
  peek,
  place,
  valueIn,
  type Book,
  type BookCell,
  type BookSheet,
} from "./book.ts";
import { Requests, requireMember, type Host } from "./context.ts";
import { evaluate, toA1 } from "./formula.ts";
import { Application, newSheet, Workbook, type Events, type Handlers, type SheetEvent } from "./objects.ts";

interface RunOptions {
  readonly delayForCellEdit?: boolean;
  readonly mergeUndoGroup?: boolean;
}

export class RequestContext extends Requests {
  readonly workbook: Workbook;
  readonly application: Application;

  constructor(host: Host, options: RunOptions, book: Book, events: Events) {
    super(host, options.delayForCellEdit ?? false, options.mergeUndoGroup ?? false);
    this.workbook = new Workbook(this, book, events);
    this.application = new Application(this, book);
  }
}

type Batch<T> = (context: RequestContext) => Promise<T>;

export interface ExcelDouble {
  readonly host: Host;
  readonly book: Book;
  readonly events: Events;
  /** Options of every `Excel.run`. */
  readonly runs: RunOptions[];
  /** To stand in for the globals `Excel` and `Office`. */
  readonly Excel: {
    run<T>(first: RunOptions | RequestContext | Batch<T>, batch?: Batch<T>): Promise<T>;
  };
  readonly Office: {
    context: { requirements: { isSetSupported(set: string, version: string): boolean } };
  };
  /** What a user types. */
  type(at: CellAddress, text: string): void;
  /**
   * A user sorts the rows of a table by a column, ascending: content, number formats and looks go with the rows,
   * conditional formats stay where they are (from memory of Excel).
   */
  sort(table: string, column: number): void;
  content(): WorkbookContent;
}

/**
 * A strict double of the part of Excel’s JavaScript interface that our adapter uses. Nothing can be read before
 * it is loaded and synced, and nothing happens before `sync`; a refused operation ends its request, and what was
 * done before it stays done.
 *
 * @param version minor number of the newest ExcelApi 1.x that it offers
 */
export function createExcelDouble(content: WorkbookContent, version = 20): ExcelDouble {
  const book = bookOf(content);
  const events: Events = { changed: new Set(), sorted: new Set(), calculated: new Set() };
  const runs: RunOptions[] = [];
  const report = (sheet: BookSheet, source: string, typed: Pick<SheetEvent, "address" | "details"> = {}) => {
    fire(events.changed, {
      worksheetId: sheet.id,
      source: "Local",
      ...(version >= 14 && { triggerSource: source }),
      ...typed,
    });
    fire(events.calculated, { worksheetId: sheet.id });
  };
  const host: Host = {
    version,
    editing: false,
    syncs: [],
    beforeOperation: undefined,
    atSync: undefined,
    wrote: (sheets) => {
      for (const sheet of sheets) report(sheet, "ThisLocalAddin");
    },
  };
  return {
    host,
    book,
    events,
    runs,
    Excel: {
      async run(first, batch) {
        const work = typeof first === "function" ? first : batch;
        if (!work) throw new Error("Excel.run without anything to do");
        const options = typeof first === "function" || first instanceof RequestContext ? {} : first;
        if (options.mergeUndoGroup) requireMember(host, "RunOptions.mergeUndoGroup");
        runs.push(options);
        const context =
          first instanceof RequestContext ? first : new RequestContext(host, options, book, events);
        const result = await work(context);
        await context.sync();
        return result;
      },
    },
    Office: {
      context: {
        requirements: {
          isSetSupported: (set, wanted) => set === "ExcelApi" && Number(wanted.split(".")[1]) <= version,
        },
      },
    },
    type(at, text) {
      const sheet = book.sheets.find((other) => sameName(other.name, at.sheet));
      if (!sheet) throw new Error(`No sheet ${at.sheet}`);
      const typed = book.habits.decimalComma && /^-?\d+,\d+$/.test(text) ? text.replace(",", ".") : text;
      const before = { ...peek(sheet, at.row, at.column) };
      enter(book, sheet, at.row, at.column, typed);
      const after = peek(sheet, at.row, at.column);
      report(sheet, "Unknown", {
        address: cellName(at.row, at.column),
        details: {
          valueBefore: before.value,
          valueTypeBefore: before.type,
          valueAfter: after.value,
          valueTypeAfter: after.type,
        },
      });
    },
    sort(name, column) {
      const table = book.tables.find((other) => sameName(other.name, name));
      if (!table) throw new Error(`No table ${name}`);
      sortRows(table, column);
      fire(events.sorted, { worksheetId: table.sheet.id });
    },
    content: () => ({ sheets: book.sheets.map((sheet) => contentOf(book, sheet)) }),
  };
}

function sortRows(
  { sheet, row, column, rows, columns, showTotals }: Book["tables"][number],
  by: number,
): void {
  const body = Array.from({ length: rows - 1 - (showTotals ? 1 : 0) }, (_, i) =>
    Array.from({ length: columns }, (_, j) => peek(sheet, row + 1 + i, column + j)),
  );
  const sorted = body.toSorted((a, b) =>
    String(a[by]?.value).localeCompare(String(b[by]?.value), "en", { numeric: true }),
  );
  const rules = body.map((cells) => cells.map((cell) => cell.conditional));
  sorted.forEach((cells, i) => {
    cells.forEach((cell, j) => {
      sheet.cells.set(key(row + 1 + i, column + j), { ...cell, conditional: rules[i]?.[j] ?? [] });
    });
  });
}

function fire(handlers: Handlers, event: SheetEvent): void {
  for (const handler of [...handlers]) handler(event);
}

const styleFonts: Partial<Record<CellStyle, Partial<BookCell["font"]>>> = {
  title: { bold: true, size: 16 },
  heading: { bold: true },
  quiet: { color: "#5C6068" },
};

function bookOf(content: WorkbookContent): Book {
  const sheets: BookSheet[] = [];
  const tables: Book["tables"] = [];
  for (const from of content.sheets) {
    const sheet = newSheet(from.name, { sheets });
    sheets.push(sheet);
    sheet.frozen = { rows: from.frozenRows ?? 0, columns: from.frozenColumns ?? 0 };
    from.cells.forEach((row, i) => {
      row.forEach((cell, j) => {
        if (cell) fill(cellIn(sheet, i, j), cell);
      });
    });
    for (const note of from.notes ?? []) sheet.notes.set(key(note.row, note.column), { text: note.text });
    for (const table of from.tables ?? []) {
      tables.push({
        ...table,
        sheet,
        style: "TableStyleLight1",
        showBandedRows: false,
        showHeaders: true,
        showTotals: false,
        filtered: false,
      });
    }
  }
  const active = sheets[0];
  if (!active) throw new Error("A workbook has at least one sheet.");
  const selected = { sheet: active, row: 0, column: 0, rows: 1, columns: 1 };
  return {
    sheets,
    tables,
    settings: new Map(),
    active,
    selected,
    structureProtected: false,
    calculationMode: "Automatic",
    habits: { expandsTables: true, fillsColumns: true, decimalComma: false, results: undefined },
  };
}

function fill(cell: BookCell, { value, formula, format, style }: CellContent): void {
  if (formula !== undefined) cell.formula = formula;
  if (format !== undefined) cell.format = format;
  if (style !== undefined) Object.assign(cell.font, styleFonts[style]);
  if (style === "amount") cell.horizontalAlignment = "Right";
  if (value === undefined) return;
  cell.value = isCellError(value) ? value.error : value;
  cell.type = isCellError(value)
    ? "Error"
    : typeof value === "number"
      ? "Double"
      : typeof value === "boolean"
        ? "Boolean"
        : "String";
}

function isPaper(size: string | undefined): size is "A4" | "Letter" {
  return size === "A4" || size === "Letter";
}

function contentOf(book: Book, sheet: BookSheet): SheetContent {
  const filled = [...sheet.cells.keys()].map(place);
  const height = filled.reduce((most, [row]) => Math.max(most, row + 1), 0);
  const width = filled.reduce((most, [, column]) => Math.max(most, column + 1), 0);
  return {
    name: sheet.name,
    cells: Array.from({ length: height }, (_, i) =>
      Array.from({ length: width }, (_, j) => cellContent(sheet, i, j)),
    ),
    frozenRows: sheet.frozen.rows,
    frozenColumns: sheet.frozen.columns,
    ...(isPaper(sheet.printed.paperSize) && { paper: sheet.printed.paperSize }),
    tables: book.tables
      .filter((table) => table.sheet === sheet)
      .map(({ name, row, column, rows, columns }) => ({ name, row, column, rows, columns })),
    notes: [...sheet.notes].map(([at, { text }]) => {
      const [row, column] = place(at);
      return { row, column, text };
    }),
  };
}

function cellContent(sheet: BookSheet, row: number, column: number): CellContent {
  const cell = peek(sheet, row, column);
  const value = cell.type === "Error" ? { error: String(cell.value) } : cell.value;
  const style = isMarked(sheet, row, column) ? "marked" : styleOf(cell);
  return {
    ...(cell.spilledFrom !== undefined && { spilled: true }),
    ...(cell.type !== "Empty" && { value }),
    ...(cell.formula !== undefined && { formula: cell.formula }),
    format: cell.format,
    ...(style && { style }),
  };
}

/** True when a mark of ours shows: its rule holds for the cell. */
function isMarked(sheet: BookSheet, row: number, column: number): boolean {
  return peek(sheet, row, column).conditional.some(
    ({ formula }) =>
      formula.includes("Measure Book mark") &&
      evaluate(toA1(formula, row, column), (r, c) => valueIn(sheet, r, c)) === true,
  );
}

function styleOf(cell: BookCell): CellStyle | undefined {
  if (cell.font.size === 16) return "title";
  if (cell.font.color === "#5C6068") return "quiet";
  if (cell.horizontalAlignment === "Right") return "amount";
  return cell.font.bold ? "heading" : undefined;
}
