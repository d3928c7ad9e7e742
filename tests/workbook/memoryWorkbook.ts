import { cellText, type Cell } from "../../addin/chart/cell.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import { areasMeet } from "../../addin/workbook/address.ts";
import { checkEdits, widest } from "../../addin/workbook/checkEdits.ts";
import { checkArea, sheetNamed, tableNamed } from "../../addin/workbook/existing.ts";
import type {
  CellContent,
  CellStyle,
  NoteContent,
  SheetContent,
  TableContent,
  WorkbookContent,
} from "../../addin/workbook/content.ts";
import { sameName } from "../../addin/workbook/names.ts";
import { contentCells, readStored, storedTables } from "../../addin/workbook/readCells.ts";
import { shiftFormula } from "../../addin/workbook/xlsx/shiftFormula.ts";
import type {
  Area,
  CellAddress,
  Edit,
  FoundCell,
  RangeData,
  TableInfo,
  Workbook,
  WorkbookChange,
} from "../../addin/workbook/port.ts";

export interface MemoryWorkbook extends Workbook {
  /** All that the workbook holds now. */
  content(): WorkbookContent;
  /**
   * What a user types into a cell: `5.5` becomes a number, `TRUE` a truth value, `=…` a formula without a
   * value (nothing is calculated here), "" empties the cell. Resolves after subscribers were told.
   */
  typeInto(at: CellAddress, text: string): Promise<void>;
  /** A user sorts the rows of a table by one of its columns (from 0), ascending; marks and looks go with the rows. */
  sort(table: string, column: number): Promise<void>;
}

type Typed = Extract<Edit, { kind: "cells" }>;

interface Action {
  readonly label: string;
  readonly before: WorkbookContent;
  readonly after: WorkbookContent;
  /** What the user typed since, to be kept when the action is undone. */
  readonly typed: readonly Typed[];
}

/**
 * A whole workbook in memory that keeps the port’s contract: no host, no formulas calculated, no layout.
 * Stands in for a host in tests of whatever uses the port.
 */
export function createMemoryWorkbook(initial: WorkbookContent): MemoryWorkbook {
  let content = initial;
  let actions: readonly Action[] = [];
  let selected: Area = { sheet: initial.sheets[0]?.name ?? "", row: 0, column: 0, rows: 1, columns: 1 };
  const listeners = new Set<(change: WorkbookChange) => void>();
  const preferences = new Map<string, string>();

  return {
    host: "standalone",
    content: () => content,
    sheets: later(() => sheetNames(content)),
    tables: later(() => tablesOf(content)),
    readTable: later((name: string) => readArea(content, tableNamed(tablesOf(content), name).area)),
    readArea: later((area: Area) => readArea(content, area)),
    usedArea: later((sheet: string) => usedArea(content, sheet)),
    findCells: later((isWanted: (cell: FoundCell) => boolean) => filledCells(content).filter(isWanted)),
    readSelection: later(() => readArea(content, cutToUsed(content, selected))),
    selectedCell: later(() => ({ sheet: selected.sheet, row: selected.row, column: selected.column })),
    select: later((area: Area) => {
      checkArea({ sheets: sheetNames(content) }, area);
      selected = area;
    }),
    apply: later((label: string, edits: readonly Edit[]) => {
      checkEdits(shapeOf(content), edits);
      const before = content;
      content = edits.reduce(applyEdit, content);
      actions = [...actions, { label, before, after: content, typed: [] }];
    }),
    lastAction: () => actions.at(-1)?.label,
    undo: later(() => {
      const last = actions.at(-1);
      if (!last) return undefined;
      content = undone(last);
      const earlier = actions.slice(0, -1);
      actions = earlier.map((action, i) =>
        i === earlier.length - 1 ? { ...action, typed: [...action.typed, ...last.typed] } : action,
      );
      return last.label;
    }),
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    preference: later((key: string): unknown => {
      const json = preferences.get(key);
      return json === undefined ? undefined : JSON.parse(json);
    }),
    setPreference: later((key: string, value: unknown) => {
      if (value === undefined) preferences.delete(key);
      else preferences.set(key, JSON.stringify(value));
    }),
    sort: later((table: string, column: number) => {
      const { area } = tableNamed(tablesOf(content), table);
      content = inSheet(content, area.sheet, (sheet) => ({
        ...sheet,
        cells: sorted(sheet.cells, area, column),
      }));
      for (const listener of listeners) listener({ sheet: area.sheet });
    }),
    typeInto: later((at: CellAddress, text: string) => {
      const edit: Typed = { kind: "cells", at, cells: [[asTyped(text)]] };
      checkEdits(shapeOf(content), [edit]);
      const before = cellAt(content, at);
      content = applyEdit(content, edit);
      const last = actions.at(-1);
      if (last) actions = [...actions.slice(0, -1), { ...last, typed: [...last.typed, edit] }];
      const after = cellAt(content, at);
      const isPlain = before?.formula === undefined && after?.formula === undefined;
      const { row, column } = at;
      const typed = isPlain ? [{ row, column, before: before?.value, after: after?.value }] : [];
      for (const listener of listeners) listener({ sheet: at.sheet, ...(typed.length > 0 && { typed }) });
    }),
  };
}

/** The same work behind a promise: what it throws becomes a rejection, as it does in a host. */
function later<A extends unknown[], R>(work: (...args: A) => R): (...args: A) => Promise<R> {
  return async (...args) => Promise.resolve().then(() => work(...args));
}

function sheetNames(content: WorkbookContent): string[] {
  return content.sheets.map((sheet) => sheet.name);
}

function shapeOf(content: WorkbookContent) {
  return {
    sheets: sheetNames(content),
    tables: tablesOf(content),
    firstRow: (area: Area) => readArea(content, { ...area, rows: 1 }).values[0] ?? [],
  };
}

function tablesOf(content: WorkbookContent): TableInfo[] {
  return storedTables(contentCells(content));
}

function sheetOf(content: WorkbookContent, name: string): SheetContent {
  const known = sheetNamed(sheetNames(content), name);
  return content.sheets.find((sheet) => sheet.name === known)!;
}

function readArea(content: WorkbookContent, area: Area): RangeData {
  return readStored(contentCells(content), area);
}

function filledCells(content: WorkbookContent): FoundCell[] {
  return content.sheets.flatMap(({ name, cells }) =>
    cells.flatMap((line, row) =>
      line.flatMap((cell, column): FoundCell[] => {
        const holds = cell?.formula ?? cell?.value;
        if (cell?.spilled || (typeof holds !== "string" && typeof holds !== "number")) return [];
        return [{ at: { sheet: name, row, column }, holds, isFormula: cell?.formula !== undefined }];
      }),
    ),
  );
}

function usedArea(content: WorkbookContent, name: string): Area | undefined {
  const { name: sheet, cells } = sheetOf(content, name);
  if (!cells.some((row) => row.some(isFilled))) return undefined;
  return cutToUsed(content, { sheet, row: 0, column: 0, rows: Infinity, columns: Infinity });
}

/** The part of an area that lies within the smallest rectangle around all filled cells. */
function cutToUsed(content: WorkbookContent, area: Area): Area {
  const filled = sheetOf(content, area.sheet).cells.flatMap((row, i) =>
    row.flatMap((cell, j) => (isFilled(cell) ? [{ row: i, column: j }] : [])),
  );
  const rows = filled.map((cell) => cell.row);
  const columns = filled.map((cell) => cell.column);
  const top = Math.max(area.row, least(rows));
  const left = Math.max(area.column, least(columns));
  const bottom = Math.min(area.row + area.rows - 1, most(rows));
  const right = Math.min(area.column + area.columns - 1, most(columns));
  if (bottom < top || right < left) {
    throw new InputError("The selected cells are empty. Select the cells that you mean, then try again.");
  }
  return { sheet: area.sheet, row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

function isFilled(cell: CellContent | undefined): boolean {
  return cell !== undefined && (cell.value !== undefined || cell.formula !== undefined);
}

function least(numbers: readonly number[]): number {
  return numbers.reduce((a, b) => Math.min(a, b), Infinity);
}

function most(numbers: readonly number[]): number {
  return numbers.reduce((a, b) => Math.max(a, b), -Infinity);
}

function asTyped(text: string): CellContent {
  if (text === "") return { value: undefined };
  if (text.startsWith("=")) return { formula: text };
  if (/^(true|false)$/i.test(text)) return { value: text.toLowerCase() === "true" };
  const number = Number(text);
  return { value: text.trim() !== "" && Number.isFinite(number) ? number : text };
}

/** The workbook without an action, with what the user typed since. */
function undone(action: Action): WorkbookContent {
  const lost = action.typed.find(
    ({ at }) => cellAt(action.before, at) !== cellAt(action.after, at) || !hasSheet(action.before, at.sheet),
  );
  if (lost) {
    throw new InputError(
      `“${action.label}” cannot be undone, because cells that it wrote were changed since. Nothing was touched.`,
    );
  }
  return action.typed.reduce(applyEdit, action.before);
}

function hasSheet(content: WorkbookContent, name: string): boolean {
  return content.sheets.some((sheet) => sameName(sheet.name, name));
}

function cellAt(content: WorkbookContent, at: CellAddress): CellContent | undefined {
  return content.sheets.find((sheet) => sameName(sheet.name, at.sheet))?.cells[at.row]?.[at.column];
}

/** A workbook with one edit applied; the edit has been checked. */
function applyEdit(content: WorkbookContent, edit: Edit): WorkbookContent {
  switch (edit.kind) {
    case "cells":
      return inSheet(content, edit.at.sheet, (sheet) => ({
        ...sheet,
        cells: withCells(sheet.cells, edit.at, edit.cells, written),
      }));
    case "sheet":
      return { sheets: [...content.sheets, edit.sheet] };
    case "table": {
      const { sheet: name, ...place } = edit.area;
      return inSheet(content, name, (sheet) => ({
        ...sheet,
        tables: [...(sheet.tables ?? []), { name: edit.name, ...place }],
      }));
    }
    case "rows":
      return withRows(content, edit);
    case "column":
      return withColumn(content, edit);
    case "mark":
      return edit.cells.reduce(
        (before, at) =>
          inSheet(before, at.sheet, (sheet) => ({
            ...sheet,
            cells: withCells(sheet.cells, at, [[{}]], (cell) => marked(cell, edit.marked)),
          })),
        content,
      );
    case "note":
      return inSheet(content, edit.at.sheet, (sheet) => ({
        ...sheet,
        notes: withNote(sheet.notes ?? [], edit.at, edit.text),
      }));
    case "freeze":
      return inSheet(content, edit.sheet, (sheet) => ({
        ...sheet,
        frozenRows: edit.rows,
        frozenColumns: edit.columns,
      }));
  }
}

function inSheet(
  content: WorkbookContent,
  name: string,
  change: (sheet: SheetContent) => SheetContent,
): WorkbookContent {
  return { sheets: content.sheets.map((sheet) => (sameName(sheet.name, name) ? change(sheet) : sheet)) };
}

type Rows = SheetContent["cells"];
type Merge = (old: CellContent | undefined, cell: CellContent) => CellContent | undefined;

function withCells(rows: Rows, at: { row: number; column: number }, cells: Rows, merge: Merge): Rows {
  const height = Math.max(rows.length, at.row + cells.length);
  return Array.from({ length: height }, (_, i) => {
    const row = rows[i] ?? [];
    const changes = cells[i - at.row];
    if (!changes) return row;
    return Array.from({ length: Math.max(row.length, at.column + changes.length) }, (_, j) => {
      const change = changes[j - at.column];
      return change ? merge(row[j], change) : row[j];
    });
  });
}

/** New content in a cell; format and style stay unless they are named. A number in a cell of text makes it one of numbers. */
function written(old: CellContent | undefined, cell: CellContent): CellContent {
  const named = cell.format ?? old?.format;
  const isText = cell.formula === undefined && (cell.value === undefined || typeof cell.value === "string");
  const format = named === "@" && !isText ? "General" : named;
  const style = cell.style ?? old?.style;
  return { ...cell, ...(format !== undefined && { format }), ...(style !== undefined && { style }) };
}

/** A marked cell, with the style that it had before. */
interface MarkedCell extends CellContent {
  readonly under?: CellStyle;
}

function marked(cell: MarkedCell | undefined, on: boolean): MarkedCell | undefined {
  if ((cell?.style === "marked") === on) return cell;
  const { style, under, ...plain } = cell ?? {};
  if (on) return { ...plain, style: "marked", ...(style !== undefined && { under: style }) };
  return { ...plain, ...(under !== undefined && { style: under }) };
}

function withNote(
  notes: readonly NoteContent[],
  at: CellAddress,
  text: string | undefined,
): readonly NoteContent[] {
  const others = notes.filter((note) => note.row !== at.row || note.column !== at.column);
  return text === undefined ? others : [...others, { row: at.row, column: at.column, text }];
}

function sorted(rows: Rows, area: Area, by: number): Rows {
  const own = (row: Rows[number]) => Array.from({ length: area.columns }, (_, j) => row[area.column + j]);
  const body = rows.slice(area.row + 1, area.row + area.rows).map(own);
  const inOrder = body.toSorted((a, b) =>
    cellText(a[by]?.value).localeCompare(cellText(b[by]?.value), "en", { numeric: true }),
  );
  return rows.map((row, i) => {
    const cells = inOrder[i - area.row - 1];
    return cells ? [...row.slice(0, area.column), ...cells, ...row.slice(area.column + area.columns)] : row;
  });
}

function withRows(
  content: WorkbookContent,
  edit: { readonly table: string; readonly rows: readonly (readonly Cell[])[] },
): WorkbookContent {
  const { area, name } = tableNamed(tablesOf(content), edit.table);
  const end = area.row + area.rows;
  return inSheet(content, area.sheet, (sheet) => ({
    ...sheet,
    tables: resized(sheet.tables, name, { rows: area.rows + edit.rows.length }),
    cells: withCells(
      movedDown(sheet.cells, { ...area, row: end, rows: edit.rows.length }),
      { row: end, column: area.column },
      edit.rows.map((row, i) =>
        row.map((value, j) => {
          // A column of formulas goes on where a new row brings no value for it.
          const above = sheet.cells[end - 1]?.[area.column + j]?.formula;
          return value === undefined && above !== undefined
            ? { formula: shiftFormula(above, i + 1, 0) }
            : { value };
        }),
      ),
      written,
    ),
  }));
}

function withColumn(
  content: WorkbookContent,
  edit: { readonly table: string; readonly heading: string; readonly values: readonly Cell[] },
): WorkbookContent {
  const { area, name } = tableNamed(tablesOf(content), edit.table);
  const end = area.column + area.columns;
  return inSheet(content, area.sheet, (sheet) => ({
    ...sheet,
    tables: resized(sheet.tables, name, { columns: area.columns + 1 }),
    cells: withCells(
      movedRight(sheet.cells, { ...area, column: end, columns: 1 }),
      { row: area.row, column: end },
      [edit.heading, ...edit.values].map((value) => [{ value }]),
      written,
    ),
  }));
}

function resized(
  tables: readonly TableContent[] | undefined,
  name: string,
  size: { rows?: number; columns?: number },
): readonly TableContent[] {
  return (tables ?? []).map((table) => (table.name === name ? { ...table, ...size } : table));
}

/** What stands where new table rows come moves down by as many rows, within those columns. */
function movedDown(rows: Rows, gap: Omit<Area, "sheet">): Rows {
  const inColumns = (j: number) => j >= gap.column && j < gap.column + gap.columns;
  const below = rows.slice(gap.row).some((row) => row.some((cell, j) => inColumns(j) && isFilled(cell)));
  if (!below) return rows;
  const width = widest(rows);
  return Array.from({ length: rows.length + gap.rows }, (_, i) =>
    Array.from({ length: width }, (_, j) => {
      if (!inColumns(j) || i < gap.row) return rows[i]?.[j];
      return i < gap.row + gap.rows ? undefined : rows[i - gap.rows]?.[j];
    }),
  );
}

/** What stands where a new table column comes moves right, within those rows. */
function movedRight(rows: Rows, gap: Omit<Area, "sheet">): Rows {
  return rows.map((row, i) =>
    areasMeet({ row: i, column: 0, rows: 1, columns: 1 }, { ...gap, column: 0 }) && row.length > gap.column
      ? [
          ...row.slice(0, gap.column),
          ...Array.from({ length: gap.columns }, () => undefined),
          ...row.slice(gap.column),
        ]
      : row,
  );
}
