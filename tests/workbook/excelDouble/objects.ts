import { sheetLimit } from "../../../addin/workbook/address.ts";
import { areaName, areasMeet } from "../../../addin/workbook/address.ts";
import { checkSheetName, checkTableName, sameName } from "../../../addin/workbook/names.ts";
import {
  cellIn,
  emptyCell,
  enter,
  ExcelRefusal,
  key,
  peek,
  place,
  refuseProtected,
  shiftDown,
  shiftRight,
  usedArea,
  type Book,
  type BookCell,
  type BookRule,
  type BookSheet,
  type BookTable,
  type Scalar,
  type ValueType,
} from "./book.ts";
import { ClientCollection, ClientObject, ClientResult, requireMember, type Requests } from "./context.ts";
import { toA1, toR1C1 } from "./formula.ts";

/** Handlers of one kind of event on all sheets. */
export type Handlers = Set<(event: SheetEvent) => unknown>;

export interface SheetEvent {
  readonly worksheetId: string;
  readonly triggerSource?: string;
  readonly source?: "Local" | "Remote";
  readonly address?: string;
  /** Microsoft, reference of `Excel.WorksheetChangedEventArgs`: had only where a single cell was changed. */
  readonly details?: {
    readonly valueBefore: Scalar;
    readonly valueTypeBefore: ValueType;
    readonly valueAfter: Scalar;
    readonly valueTypeAfter: ValueType;
  };
}

export interface Events {
  readonly changed: Handlers;
  readonly sorted: Handlers;
  readonly calculated: Handlers;
}

interface Block {
  readonly sheet: BookSheet;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

const invalid = (message: string) => new ExcelRefusal("InvalidArgument", message);

function checkBlock(block: Block): Block {
  const { row, column, rows, columns } = block;
  const fits = row >= 0 && column >= 0 && rows >= 1 && columns >= 1;
  if (!fits || row + rows > sheetLimit.rows || column + columns > sheetLimit.columns) {
    throw invalid(`No such range: ${JSON.stringify({ row, column, rows, columns })}`);
  }
  return block;
}

function eachCell<V>({ sheet, row, column, rows, columns }: Block, of: (cell: BookCell) => V): V[][] {
  return Array.from({ length: rows }, (_, i) =>
    Array.from({ length: columns }, (_, j) => of(peek(sheet, row + i, column + j))),
  );
}

function checkSize(block: Block, values: readonly (readonly unknown[])[], what: string): void {
  if (values.length !== block.rows || values.some((row) => row.length !== block.columns)) {
    throw invalid(`${what} must have ${String(block.rows)} × ${String(block.columns)} items.`);
  }
}

interface RangeProperties {
  rowIndex: number;
  columnIndex: number;
  rowCount: number;
  columnCount: number;
  address: string;
  values: Scalar[][];
  formulas: Scalar[][];
  formulasR1C1: Scalar[][];
  valueTypes: string[][];
  numberFormat: string[][];
}

type Matrix = readonly (readonly (Scalar | null)[])[];

export class Range extends ClientObject<Block, RangeProperties> {
  constructor(
    requests: Requests,
    private readonly book: Book,
    look: () => Block | undefined,
    orNull = false,
  ) {
    super(
      requests,
      "a range",
      () => {
        const block = look();
        return block && checkBlock(block);
      },
      {
        rowIndex: ({ row }) => row,
        columnIndex: ({ column }) => column,
        rowCount: ({ rows }) => rows,
        columnCount: ({ columns }) => columns,
        address: ({ sheet, row, column }) => `${sheet.name}!${key(row, column)}`,
        values: (block) => eachCell(block, (cell) => cell.value),
        formulas: (block) => eachCell(block, (cell) => cell.formula ?? cell.value),
        formulasR1C1: ({ sheet, row, column, rows, columns }) =>
          Array.from({ length: rows }, (_, i) =>
            Array.from({ length: columns }, (_, j) => {
              const { formula, value } = peek(sheet, row + i, column + j);
              return formula === undefined ? value : toR1C1(formula, row + i, column + j);
            }),
          ),
        valueTypes: (block) => eachCell(block, (cell) => cell.type),
        numberFormat: (block) => eachCell(block, (cell) => cell.format),
      },
      orNull,
    );
  }

  get rowIndex() {
    return this.read("rowIndex");
  }
  get columnIndex() {
    return this.read("columnIndex");
  }
  get rowCount() {
    return this.read("rowCount");
  }
  get columnCount() {
    return this.read("columnCount");
  }
  get address() {
    return this.read("address");
  }
  get values(): Matrix {
    return this.read("values");
  }
  set values(values: Matrix) {
    this.write(values);
  }
  get formulas(): Matrix {
    return this.read("formulas");
  }
  set formulas(values: Matrix) {
    this.write(values);
  }
  get formulasR1C1(): Matrix {
    return this.read("formulasR1C1");
  }
  set formulasR1C1(values: Matrix) {
    this.write(values, toA1);
  }
  get valueTypes() {
    return this.read("valueTypes");
  }
  get numberFormat(): readonly (readonly (string | null)[])[] {
    return this.read("numberFormat");
  }
  set numberFormat(formats: readonly (readonly (string | null)[])[]) {
    this.queue(
      "set numberFormat",
      (block) => {
        refuseProtected(block.sheet);
        checkSize(block, formats, "numberFormat");
        formats.forEach((row, i) => {
          row.forEach((format, j) => {
            if (format !== null) cellIn(block.sheet, block.row + i, block.column + j).format = format;
          });
        });
      },
      formats,
    );
  }

  private write(values: Matrix, read?: (formula: string, row: number, column: number) => string): void {
    this.queue(
      "set formulas",
      (block) => {
        refuseProtected(block.sheet);
        checkSize(block, values, "formulas");
        refuseManyFormulas(this.requests, values);
        this.requests.writes(block.sheet);
        const grown = expandTables(this.book, block, values);
        values.forEach((row, i) => {
          row.forEach((value, j) => {
            const [atRow, atColumn] = [block.row + i, block.column + j];
            const isFormula = typeof value === "string" && value.startsWith("=");
            enter(
              this.book,
              block.sheet,
              atRow,
              atColumn,
              isFormula && read ? read(value, atRow, atColumn) : value,
            );
          });
        });
        for (const fill of grown) fill();
      },
      values,
    );
  }

  get worksheet(): Worksheet {
    return new Worksheet(this.requests, this.book, () => this.target().sheet);
  }
  get format(): RangeFormat {
    return new RangeFormat(this.requests, () => this.target());
  }
  get dataValidation(): DataValidation {
    return new DataValidation(this.requests, () => this.target());
  }
  get conditionalFormats(): ConditionalFormats {
    return new ConditionalFormats(this.requests, this.book, () => this.target());
  }

  private derived(of: (block: Block) => Block): Range {
    return new Range(this.requests, this.book, () => of(this.target()));
  }
  getLastRow(): Range {
    return this.derived((block) => ({ ...block, row: block.row + block.rows - 1, rows: 1 }));
  }
  getColumn(index: number): Range {
    return this.derived((block) => {
      if (index < 0) throw invalid(`No column ${String(index)}.`);
      return { ...block, column: block.column + index, columns: 1 };
    });
  }
  getLastColumn(): Range {
    return this.derived((block) => ({ ...block, column: block.column + block.columns - 1, columns: 1 }));
  }
  getOffsetRange(rows: number, columns: number): Range {
    return this.derived((block) => ({ ...block, row: block.row + rows, column: block.column + columns }));
  }
  getResizedRange(rows: number, columns: number): Range {
    return this.derived((block) => ({
      ...block,
      rows: block.rows + rows,
      columns: block.columns + columns,
    }));
  }
  getIntersectionOrNullObject(other: Range): Range {
    return new Range(
      this.requests,
      this.book,
      () => {
        const [a, b] = [this.target(), other.target()];
        if (a.sheet !== b.sheet || !areasMeet(a, b)) return undefined;
        const row = Math.max(a.row, b.row);
        const column = Math.max(a.column, b.column);
        return {
          sheet: a.sheet,
          row,
          column,
          rows: Math.min(a.row + a.rows, b.row + b.rows) - row,
          columns: Math.min(a.column + a.columns, b.column + b.columns) - column,
        };
      },
      true,
    );
  }

  getUsedRangeOrNullObject(valuesOnly: boolean): Range {
    if (!valuesOnly) throw invalid("The double knows used ranges of values only.");
    return new Range(
      this.requests,
      this.book,
      () => {
        const { sheet, ...block } = this.target();
        const used = usedArea(sheet, block);
        return used && { sheet, ...used };
      },
      true,
    );
  }

  /**
   * Microsoft, “Handle dynamic arrays and spilling using the Excel JavaScript API” and the reference of the method: the
   * cell whose formula fills this one; null where nothing fills it, or where it is more than one cell.
   */
  getSpillParentOrNullObject(): Range {
    requireMember(this.requests.host, "Range.getSpillParentOrNullObject");
    const look = () => {
      const { sheet, row, column, rows, columns } = this.target();
      const from = rows === 1 && columns === 1 ? peek(sheet, row, column).spilledFrom : undefined;
      if (from === undefined) return undefined;
      const [parentRow, parentColumn] = place(from);
      return { sheet, row: parentRow, column: parentColumn, rows: 1, columns: 1 };
    };
    return new Range(this.requests, this.book, look, true);
  }

  /**
   * Microsoft, “Coauthoring in Excel add-ins”: insert a blank row where data stands below a table, which moves it and
   * makes room. A row in the middle of a table becomes one of its rows.
   */
  insert(shift: string): Range {
    return this.derived((block) => {
      if (shift !== "Down") throw invalid(`The double inserts downwards only, not “${shift}”.`);
      const table = this.book.tables.find(
        (other) =>
          other.sheet === block.sheet && other.row < block.row && areasMeet(other, { ...block, rows: 1 }),
      );
      if (table && (table.column !== block.column || table.columns !== block.columns))
        throw new ExcelRefusal("InsertDeleteConflict", "Only part of a table row is named.");
      if (table) refuseFiltered(table);
      shiftDown(this.book, block.sheet, block, block.rows);
      if (table) table.rows += block.rows;
      for (let i = 0; i < block.rows; i++) {
        for (let j = 0; j < block.columns; j++) {
          inherit(block.sheet, [block.row - 1, block.column + j], [block.row + i, block.column + j]);
        }
      }
      this.requests.writes(block.sheet);
      return block;
    });
  }

  select(): void {
    this.queue("select", (block) => {
      if (this.book.active !== block.sheet)
        throw new ExcelRefusal("InvalidOperation", "The sheet is not active.");
      this.book.selected = block;
    });
  }

  delete(shift: string): void {
    this.queue("delete", (block) => {
      if (shift !== "Up") throw invalid(`The double deletes upwards only, not “${shift}”.`);
      const table = this.book.tables.find((other) => other.sheet === block.sheet && areasMeet(other, block));
      const whole =
        table?.column === block.column &&
        table.columns === block.columns &&
        table.row < block.row &&
        table.row + table.rows >= block.row + block.rows;
      if (table && !whole)
        throw new ExcelRefusal("InsertDeleteConflict", "Only part of a table row is named.");
      if (table && table.rows - block.rows < 2) throw invalid("A table keeps one row.");
      if (table) refuseFiltered(table);
      if (table) table.rows -= block.rows;
      this.requests.writes(block.sheet);
      shiftDown(this.book, block.sheet, block, -block.rows);
    });
  }

  getCellProperties(wanted: CellLooksWanted): ClientResult<CellLooks[][]> {
    return new ClientResult(this.requests, "getCellProperties", () =>
      eachCell(this.target(), (cell) => ({
        format: {
          ...(wanted.format.font && { font: { ...cell.font } }),
          ...(wanted.format.wrapText && { wrapText: cell.wrapText }),
          ...(wanted.format.verticalAlignment && { verticalAlignment: cell.verticalAlignment }),
          ...(wanted.format.horizontalAlignment && { horizontalAlignment: cell.horizontalAlignment }),
        },
      })),
    );
  }

  setCellProperties(looks: readonly (readonly CellLooks[])[]): void {
    this.queue(
      "setCellProperties",
      (block) => {
        refuseProtected(block.sheet);
        checkSize(block, looks, "cellPropertiesData");
        looks.forEach((row, i) => {
          row.forEach(({ format }, j) => {
            const cell = cellIn(block.sheet, block.row + i, block.column + j);
            Object.assign(cell.font, format.font ?? {});
            cell.wrapText = format.wrapText ?? cell.wrapText;
            cell.verticalAlignment = format.verticalAlignment ?? cell.verticalAlignment;
            cell.horizontalAlignment = format.horizontalAlignment ?? cell.horizontalAlignment;
          });
        });
      },
      looks,
    );
  }
}

interface CellLooksWanted {
  readonly format: {
    readonly font?: object;
    readonly wrapText?: boolean;
    readonly verticalAlignment?: boolean;
    readonly horizontalAlignment?: boolean;
  };
}

interface CellLooks {
  readonly format: {
    readonly font?: Partial<BookCell["font"]>;
    readonly wrapText?: boolean;
    readonly verticalAlignment?: string;
    readonly horizontalAlignment?: string;
  };
}

class RangeFormat extends ClientObject<Block> {
  constructor(requests: Requests, look: () => Block) {
    super(requests, "a range’s format", look, {});
  }

  private change(label: string, to: (cell: BookCell) => void): void {
    this.queue(label, (block) => {
      refuseProtected(block.sheet);
      for (let i = 0; i < block.rows; i++) {
        for (let j = 0; j < block.columns; j++) to(cellIn(block.sheet, block.row + i, block.column + j));
      }
    });
  }

  get font() {
    const change = (property: Partial<BookCell["font"]>) => {
      this.change("set font", (cell) => Object.assign(cell.font, property));
    };
    return {
      set bold(bold: boolean) {
        change({ bold });
      },
      set size(size: number) {
        change({ size });
      },
      set color(color: string) {
        change({ color });
      },
    };
  }
  set wrapText(on: boolean) {
    this.change("set wrapText", (cell) => (cell.wrapText = on));
  }
  set verticalAlignment(value: string) {
    this.change("set verticalAlignment", (cell) => (cell.verticalAlignment = value));
  }
  set horizontalAlignment(value: string) {
    this.change("set horizontalAlignment", (cell) => (cell.horizontalAlignment = value));
  }
  set columnWidth(points: number) {
    this.queue("set columnWidth", ({ sheet, column }) => sheet.columnWidths.set(column, points));
  }
}

/** Microsoft, reference of `Excel.ListDataValidation`: the source is a `Range` object or words with commas between. */
class DataValidation extends ClientObject<Block> {
  constructor(requests: Requests, look: () => Block) {
    super(requests, "a validation", look, {});
  }
  set rule({
    list,
  }: {
    readonly list: { readonly inCellDropDown: boolean; readonly source: string | Range };
  }) {
    this.queue("set rule", ({ sheet, ...area }) => {
      refuseProtected(sheet);
      const { source } = list;
      if (typeof source === "string" && (source === "" || source.length > 255))
        throw invalid("No such list.");
      const from = typeof source === "string" ? source : addressOf(source.target());
      sheet.lists.push({ area, source: from, refusesOthers: true });
    });
  }
  set errorAlert({ showAlert }: { readonly showAlert: boolean }) {
    this.queue("set errorAlert", ({ sheet }) => {
      const last = sheet.lists.at(-1);
      if (!last) throw invalid("There is no rule.");
      last.refusesOthers = showAlert;
    });
  }
}

function addressOf({ sheet, row, column, rows, columns }: Block): string {
  return `${sheet.name}!${areaName({ row, column, rows, columns })}`;
}

interface RuleTarget {
  readonly sheet: BookSheet;
  readonly rule: BookRule;
}

class ConditionalFormats extends ClientCollection<RuleTarget, RuleProperties, ConditionalFormat> {
  constructor(
    requests: Requests,
    private readonly book: Book,
    private readonly block: () => Block,
  ) {
    super(
      requests,
      "conditional formats",
      // Microsoft, reference of `Range.conditionalFormats`: those that intersect the range.
      () => {
        const found = new Set(eachCell(block(), ({ conditional }) => conditional).flat(2));
        return [...found].map((rule) => ({ sheet: block().sheet, rule }));
      },
      (target) => new ConditionalFormat(requests, book, () => target),
    );
  }

  add(type: string): ConditionalFormat {
    if (type !== "Custom") throw invalid(`The double knows custom rules only, not “${type}”.`);
    return new ConditionalFormat(this.requests, this.book, () => {
      const block = this.block();
      refuseProtected(block.sheet);
      const rule: BookRule = { id: freeRuleId(block.sheet), type: "Custom", formula: "" };
      for (let i = 0; i < block.rows; i++) {
        for (let j = 0; j < block.columns; j++) {
          cellIn(block.sheet, block.row + i, block.column + j).conditional.push(rule);
        }
      }
      return { sheet: block.sheet, rule };
    });
  }
}

function freeRuleId(sheet: BookSheet): string {
  const taken = [...sheet.cells.values()].flatMap(({ conditional }) =>
    conditional.map(({ id }) => Number(id)),
  );
  return String(taken.reduce((most, id) => Math.max(most, Number.isNaN(id) ? 0 : id), 0) + 1);
}

/** The cells that a rule applies to, where they are one rectangle. */
function blockOfRule({ sheet, rule }: RuleTarget): Block | undefined {
  const cells = [...sheet.cells]
    .filter(([, { conditional }]) => conditional.includes(rule))
    .map(([at]) => place(at));
  const [rows, columns] = [cells.map(([row]) => row), cells.map(([, column]) => column)];
  const least = (of: number[]) => of.reduce((a, b) => Math.min(a, b), Infinity);
  const most = (of: number[]) => of.reduce((a, b) => Math.max(a, b), -1);
  const [row, column] = [least(rows), least(columns)];
  const block = { sheet, row, column, rows: most(rows) - row + 1, columns: most(columns) - column + 1 };
  return cells.length > 0 && cells.length === block.rows * block.columns ? block : undefined;
}

interface RuleProperties {
  type: string;
  id: string;
}

class ConditionalFormat extends ClientObject<RuleTarget, RuleProperties> {
  constructor(
    requests: Requests,
    private readonly book: Book,
    look: () => RuleTarget,
  ) {
    super(requests, "a conditional format", look, {
      type: ({ rule }) => rule.type,
      id: ({ rule }) => rule.id,
    });
  }

  get type() {
    return this.read("type");
  }
  get id() {
    return this.read("id");
  }

  getRangeOrNullObject(): Range {
    return new Range(this.requests, this.book, () => blockOfRule(this.target()), true);
  }

  get custom() {
    const change = (to: Partial<BookRule>) => {
      this.queue("change rule", ({ sheet, rule }) => {
        refuseProtected(sheet);
        Object.assign(rule, to);
      });
    };
    return {
      rule: new ConditionalRule(this.requests, () => {
        const target = this.target();
        if (target.rule.type !== "Custom")
          throw new ExcelRefusal("InvalidOperation", "The rule is not a custom one.");
        return target;
      }),
      format: {
        // Microsoft, reference of `ConditionalRangeFormat.numberFormat`: a number format code for the range; null clears it.
        set numberFormat(numberFormat: string) {
          change({ numberFormat });
        },
        fill: {
          set color(fill: string) {
            change({ fill });
          },
        },
        font: {
          set color(color: string) {
            change({ color });
          },
          set bold(bold: boolean) {
            change({ bold });
          },
        },
      },
    };
  }

  delete(): void {
    this.queue("delete", ({ sheet, rule }) => {
      refuseProtected(sheet);
      const cells = [...sheet.cells.values()].filter(({ conditional }) => conditional.includes(rule));
      if (cells.length === 0)
        throw new ExcelRefusal("ItemNotFound", "The conditional format is gone already.");
      for (const cell of cells) cell.conditional = cell.conditional.filter((other) => other !== rule);
    });
  }
}

/** Formulas of rules are those of the first cell that the rule applies to, as Microsoft’s example of a custom rule shows. */
class ConditionalRule extends ClientObject<RuleTarget, { formula: string }> {
  constructor(requests: Requests, look: () => RuleTarget) {
    super(requests, "a rule", look, {
      formula: (target) => {
        const { formula } = target.rule;
        const first = firstCell(target);
        return formula === "" || !first ? formula : toA1(formula, ...first);
      },
    });
  }
  get formula(): string {
    return this.read("formula");
  }
  set formula(formula: string) {
    this.queue("set formula", (target) => {
      refuseProtected(target.sheet);
      if (formula.length > 255) throw invalid("The rule is longer than 255 characters.");
      const first = firstCell(target);
      if (first) target.rule.formula = toR1C1(formula, ...first);
    });
  }
}

function firstCell({ sheet, rule }: RuleTarget): [number, number] | undefined {
  const cells = [...sheet.cells]
    .filter(([, { conditional }]) => conditional.includes(rule))
    .map(([at]) => place(at));
  if (cells.length === 0) return undefined;
  return [
    cells.reduce((least, [row]) => Math.min(least, row), Infinity),
    cells.reduce((least, [, column]) => Math.min(least, column), Infinity),
  ];
}

export class Worksheet extends ClientObject<BookSheet, { name: string; id: string }> {
  constructor(
    requests: Requests,
    private readonly book: Book,
    look: () => BookSheet | undefined,
    orNull = false,
  ) {
    super(requests, "a worksheet", look, { name: ({ name }) => name, id: ({ id }) => id }, orNull);
  }

  get name() {
    return this.read("name");
  }
  get id() {
    return this.read("id");
  }
  get tables(): Tables {
    return new Tables(this.requests, this.book, () => this.target());
  }
  get notes(): Notes {
    requireMember(this.requests.host, "Worksheet.notes");
    return new Notes(this.requests, () => this.target());
  }
  get protection(): Protection {
    return new Protection(this.requests, () => this.target().protected);
  }
  get freezePanes(): FreezePanes {
    return new FreezePanes(this.requests, this.book, () => this.target());
  }
  get pageLayout(): PageLayout {
    return new PageLayout(this.requests, () => this.target());
  }
  getRangeByIndexes(row: number, column: number, rows: number, columns: number): Range {
    return new Range(this.requests, this.book, () => ({ sheet: this.target(), row, column, rows, columns }));
  }
  getUsedRangeOrNullObject(valuesOnly: boolean): Range {
    if (!valuesOnly) throw invalid("The double knows used ranges of values only.");
    const look = () => {
      const used = usedArea(this.target());
      return used && { sheet: this.target(), ...used };
    };
    return new Range(this.requests, this.book, look, true);
  }
  activate(): void {
    this.queue("activate", (sheet) => (this.book.active = sheet));
  }
  delete(): void {
    this.queue("delete", (sheet) => {
      this.requests.refuseInUndoGroup();
      refuseProtectedStructure(this.book);
      if (this.book.sheets.length === 1)
        throw new ExcelRefusal("InvalidOperation", "The last sheet must stay.");
      this.book.sheets = this.book.sheets.filter((other) => other !== sheet);
      this.book.tables = this.book.tables.filter((table) => table.sheet !== sheet);
    });
  }
}

class Protection extends ClientObject<boolean, { protected: boolean }> {
  constructor(requests: Requests, look: () => boolean) {
    super(requests, "a protection", look, { protected: (on) => on });
  }
  get protected() {
    return this.read("protected");
  }
}

function refuseProtectedStructure(book: Book): void {
  if (book.structureProtected)
    throw new ExcelRefusal("AccessDenied", "You cannot perform the requested operation.");
}

class FreezePanes extends ClientObject<BookSheet> {
  constructor(
    requests: Requests,
    private readonly book: Book,
    look: () => BookSheet,
  ) {
    super(requests, "frozen panes", look, {});
  }
  freezeRows(rows: number): void {
    this.queue("freezeRows", (sheet) => (sheet.frozen = { rows, columns: 0 }));
  }
  freezeColumns(columns: number): void {
    this.queue("freezeColumns", (sheet) => (sheet.frozen = { rows: 0, columns }));
  }
  freezeAt(range: Range): void {
    this.queue("freezeAt", (sheet) => {
      const { rows, columns } = range.target();
      sheet.frozen = { rows, columns };
    });
  }
  unfreeze(): void {
    this.queue("unfreeze", (sheet) => (sheet.frozen = { rows: 0, columns: 0 }));
  }
  getLocationOrNullObject(): Range {
    const look = () => {
      const sheet = this.target();
      const { rows, columns } = sheet.frozen;
      if (rows === 0 && columns === 0) return undefined;
      return {
        sheet,
        row: 0,
        column: 0,
        rows: rows === 0 ? sheetLimit.rows : rows,
        columns: columns === 0 ? sheetLimit.columns : columns,
      };
    };
    return new Range(this.requests, this.book, look, true);
  }
}

/**
 * Microsoft, reference of `Excel.PageLayout`: layout and print settings that do not depend on a printer; its members are in
 * ExcelApi 1.9.
 */
class PageLayout extends ClientObject<BookSheet> {
  constructor(requests: Requests, look: () => BookSheet) {
    super(requests, "a page layout", look, {});
  }
  set orientation(orientation: BookSheet["printed"]["orientation"]) {
    this.queue("set orientation", (sheet) => {
      if (!["Portrait", "Landscape"].includes(orientation)) throw invalid("No such orientation.");
      sheet.printed.orientation = orientation;
    });
  }
  // Of the values that the reference of `Excel.PaperType` lists, those that we know.
  set paperSize(paperSize: string) {
    this.queue("set paperSize", (sheet) => {
      if (!["A4", "Letter"].includes(paperSize)) throw invalid(`No such paper: ${paperSize}`);
      sheet.printed.paperSize = paperSize;
    });
  }
  /**
   * The same reference: the options must be set as a whole, as an object. Reference of `Excel.PageLayoutZoomOptions`: the scale lies
   * between 10 and 400, and goes with no number of pages.
   */
  set zoom(zoom: BookSheet["printed"]["zoom"]) {
    this.queue("set zoom", (sheet) => {
      const { scale, ...pages } = zoom;
      const fits = Object.values(pages).filter((count) => count !== undefined);
      if (scale !== undefined && (fits.length > 0 || scale < 10 || scale > 400))
        throw invalid("No such scale.");
      if (fits.some((count) => !Number.isInteger(count) || count < 1))
        throw invalid("No such number of pages.");
      sheet.printed.zoom = zoom;
    });
  }
  get headersFooters(): { readonly defaultForAllPages: HeaderFooter } {
    return { defaultForAllPages: new HeaderFooter(this.requests, () => this.target()) };
  }
  /** The same reference: the range must span entire rows to be valid. */
  setPrintTitleRows(rows: string): void {
    this.queue("setPrintTitleRows", (sheet) => {
      if (!/^\$\d+:\$\d+$/.test(rows)) throw invalid(`These are no entire rows: ${rows}`);
      sheet.printed.titleRows = rows;
    });
  }
  /** The same reference: the range must span entire columns to be valid. */
  setPrintTitleColumns(columns: string): void {
    this.queue("setPrintTitleColumns", (sheet) => {
      if (!/^\$[A-Z]+:\$[A-Z]+$/.test(columns)) throw invalid(`These are no entire columns: ${columns}`);
      sheet.printed.titleColumns = columns;
    });
  }
}

class HeaderFooter extends ClientObject<BookSheet> {
  constructor(requests: Requests, look: () => BookSheet) {
    super(requests, "headers and footers", look, {});
  }
  set leftFooter(text: string) {
    this.queue("set leftFooter", (sheet) => (sheet.printed.leftFooter = text));
  }
  set rightFooter(text: string) {
    this.queue("set rightFooter", (sheet) => (sheet.printed.rightFooter = text));
  }
}

class Notes {
  constructor(
    private readonly requests: Requests,
    private readonly sheet: () => BookSheet,
  ) {}

  getItemOrNullObject(address: string): Note {
    const at = key(...fromA1(address));
    const look = () => (this.sheet().notes.has(at) ? { sheet: this.sheet(), at } : undefined);
    return new Note(this.requests, look, true);
  }

  add(address: string, text: string): Note {
    return new Note(this.requests, () => addNote(this.sheet(), key(...fromA1(address)), text));
  }
}

function addNote(sheet: BookSheet, at: string, text: string): NoteTarget {
  refuseProtected(sheet);
  if (sheet.notes.has(at)) throw invalid("The cell has a note already.");
  sheet.notes.set(at, { text });
  return { sheet, at };
}

interface NoteTarget {
  readonly sheet: BookSheet;
  readonly at: string;
}

class Note extends ClientObject<NoteTarget, { content: string }> {
  constructor(requests: Requests, look: () => NoteTarget | undefined, orNull = false) {
    super(requests, "a note", look, { content: ({ sheet, at }) => sheet.notes.get(at)?.text ?? "" }, orNull);
  }
  get content(): string {
    return this.read("content");
  }
  set content(text: string) {
    this.queue("set content", ({ sheet, at }) => sheet.notes.set(at, { text }));
  }
  delete(): void {
    this.queue("delete", ({ sheet, at }) => sheet.notes.delete(at));
  }
}

/** Comments share the notes of the model: no test has both. */
class Comment extends Note {
  constructor(
    requests: Requests,
    private readonly book: Book,
    look: () => NoteTarget,
  ) {
    super(requests, look);
  }
  getLocation(): Range {
    return new Range(this.requests, this.book, () => {
      const { sheet, at } = this.target();
      const [row, column] = place(at);
      return { sheet, row, column, rows: 1, columns: 1 };
    });
  }
}

class Comments extends ClientCollection<NoteTarget, { content: string }, Comment> {
  constructor(
    requests: Requests,
    private readonly book: Book,
  ) {
    super(
      requests,
      "comments",
      () => book.sheets.flatMap((sheet) => [...sheet.notes.keys()].map((at) => ({ sheet, at }))),
      (target) => new Comment(requests, book, () => target),
    );
  }
  add(range: Range, text: string): Comment {
    return new Comment(this.requests, this.book, () => {
      const { sheet, row, column } = range.target();
      return addNote(sheet, key(row, column), text);
    });
  }
}

function fromA1(address: string): [number, number] {
  const [, letters = "", digits = ""] = /^([A-Z]+)(\d+)$/.exec(address) ?? [];
  if (!digits) throw new ExcelRefusal("InvalidCellAddress", `“${address}” is not the address of a cell.`);
  const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return [Number(digits) - 1, column];
}

interface TableProperties {
  name: string;
  showHeaders: boolean;
  showTotals: boolean;
}

class Table extends ClientObject<BookTable, TableProperties> {
  constructor(
    requests: Requests,
    private readonly book: Book,
    look: () => BookTable | undefined,
  ) {
    super(requests, "a table", look, {
      name: ({ name }) => name,
      showHeaders: ({ showHeaders }) => showHeaders,
      showTotals: ({ showTotals }) => showTotals,
    });
  }

  get name(): string {
    return this.read("name");
  }
  set name(name: string) {
    this.queue("set name", (table) => {
      refuseBadName(() => {
        checkTableName(name);
      });
      if (this.book.tables.some((other) => other !== table && sameName(other.name, name))) {
        throw new ExcelRefusal("ItemAlreadyExists", "The name is taken.");
      }
      table.name = name;
    });
  }
  get showHeaders() {
    return this.read("showHeaders");
  }
  get showTotals() {
    return this.read("showTotals");
  }
  set style(style: string) {
    this.queue("set style", (table) => {
      if (!/^TableStyle(Light|Medium|Dark)\d+$/.test(style)) throw invalid(`No table style “${style}”.`);
      table.style = style;
    });
  }
  set showBandedRows(on: boolean) {
    this.queue("set showBandedRows", (table) => (table.showBandedRows = on));
  }
  get worksheet(): Worksheet {
    return new Worksheet(this.requests, this.book, () => this.target().sheet);
  }
  get autoFilter() {
    return new AutoFilter(this.requests, () => this.target());
  }

  /**
   * Microsoft, reference of `Table.resize`: the new range must overlap with the table, and the headings must stay in the
   * same row. “Work with tables”: no data is added and no cell value changes.
   */
  resize(range: Range): void {
    requireMember(this.requests.host, "Table.resize");
    this.queue("resize", (table) => {
      const block = range.target();
      refuseProtected(table.sheet);
      if (block.sheet !== table.sheet || block.row !== table.row || !areasMeet(block, table))
        throw invalid("The headings must stay in their row.");
      if (block.rows < 2) throw invalid("A table has a row below its headings.");
      const inTheWay = this.book.tables.some(
        (other) => other !== table && other.sheet === table.sheet && areasMeet(other, block),
      );
      if (inTheWay)
        throw new ExcelRefusal("MergedRangeConflict", "A table can't overlap with another table.");
      Object.assign(table, { column: block.column, rows: block.rows, columns: block.columns });
    });
  }

  getRange(): Range {
    return this.part(({ sheet, row, column, rows, columns }) => ({ sheet, row, column, rows, columns }));
  }
  getHeaderRowRange(): Range {
    return this.part(({ sheet, row, column, columns }) => ({ sheet, row, column, rows: 1, columns }));
  }
  getDataBodyRange(): Range {
    return this.part(({ sheet, row, column, rows, columns, showTotals }) => ({
      sheet,
      row: row + 1,
      column,
      rows: rows - 1 - (showTotals ? 1 : 0),
      columns,
    }));
  }
  private part(of: (table: BookTable) => Block): Range {
    return new Range(this.requests, this.book, () => of(this.target()));
  }

  get rows() {
    return {
      add: (index: number, values: Matrix): void => {
        this.queue(
          "add rows",
          (table) => {
            if (index !== -1) throw invalid("The double adds rows at the end only.");
            if (values.some((row) => row.length !== table.columns)) throw invalid("Rows of another width.");
            refuseFiltered(table);
            addRows(this.book, table, values);
            this.requests.writes(table.sheet);
          },
          values,
        );
      },
    };
  }

  get columns() {
    return {
      add: (index: number): void => {
        this.queue("add column", (table) => {
          if (index !== -1) throw invalid("The double adds columns at the right only.");
          addColumn(this.book, table);
          this.requests.writes(table.sheet);
        });
      },
      getItem: (heading: string) => ({
        getDataBodyRange: (): Range =>
          this.part((table) => {
            const headings = Array.from({ length: table.columns }, (_, j) =>
              String(peek(table.sheet, table.row, table.column + j).value),
            );
            const at = headings.findIndex((other) => sameName(other, heading));
            if (at < 0) throw new ExcelRefusal("ItemNotFound", "The requested resource doesn't exist.");
            const { sheet, row, column, rows } = table;
            return { sheet, row: row + 1, column: column + at, rows: rows - 1, columns: 1 };
          }),
      }),
      getItemAt: (index: number) => ({
        delete: (): void => {
          this.queue("delete column", (table) => {
            if (index < 1 || index >= table.columns) throw invalid(`No column ${String(index)}.`);
            shiftRight(this.book, table.sheet, { ...table, column: table.column + index }, -1);
            table.columns -= 1;
            this.requests.writes(table.sheet);
          });
        },
      }),
    };
  }

  convertToRange(): void {
    this.queue("convertToRange", (table) => {
      this.book.tables = this.book.tables.filter((other) => other !== table);
    });
  }
}

function addRows(book: Book, table: BookTable, values: Matrix): void {
  const end = table.row + table.rows - (table.showTotals ? 1 : 0);
  shiftDown(book, table.sheet, { row: end, column: table.column, columns: table.columns }, values.length);
  table.rows += values.length;
  values.forEach((row, i) => {
    row.forEach((value, j) => {
      inherit(table.sheet, [end - 1, table.column + j], [end + i, table.column + j]);
      enter(book, table.sheet, end + i, table.column + j, value);
    });
  });
}

function addColumn(book: Book, table: BookTable): void {
  const end = table.column + table.columns;
  shiftRight(book, table.sheet, { row: table.row, column: end, rows: table.rows }, 1);
  table.columns += 1;
  for (let i = 1; i < table.rows; i++) {
    inherit(table.sheet, [table.row + i, end - 1], [table.row + i, end]);
  }
  const heading = cellIn(table.sheet, table.row, end);
  heading.value = `Column${String(table.columns)}`;
  heading.type = "String";
}

/** New cells of a table look like their neighbours, and conditional formats reach over them (from memory). */
function inherit(sheet: BookSheet, from: [number, number], to: [number, number]): void {
  const { format, font, conditional } = peek(sheet, ...from);
  sheet.cells.set(key(...to), { ...emptyCell(), format, font: { ...font }, conditional: [...conditional] });
}

/** `FilteredRangeConflict`: “The attempted operation causes a conflict with a filtered range.” */
function refuseFiltered(table: BookTable): void {
  if (table.filtered) {
    throw new ExcelRefusal(
      "FilteredRangeConflict",
      "The attempted operation causes a conflict with a filtered range.",
    );
  }
}

/**
 * In one step of the undo list many formulas at once fail: office-js repository on GitHub, report “UndoNotSupported
 * error when inserting large number of formulas with mergeUndoGroup” (40 × 40 of them).
 */
function refuseManyFormulas(requests: Requests, values: Matrix): void {
  const formulas = values.flat().filter((value) => typeof value === "string" && value.startsWith("="));
  if (formulas.length >= 1600) requests.refuseInUndoGroup();
}

/**
 * Microsoft, “Coauthoring in Excel add-ins”: a table expands when data is set in the cells directly below it; blank rows
 * are not taken in. A calculated column goes on in the new rows (Microsoft support, “Use calculated columns in an Excel
 * table”), both unless the user has turned it off. Beside a table likewise, with a heading for the new column.
 *
 * @returns what is left to do once the values are written: filling columns of formulas
 */
function expandTables(book: Book, block: Block, values: Matrix): (() => void)[] {
  if (!book.habits.expandsTables) return [];
  return book.tables.flatMap((table) => {
    if (table.sheet !== block.sheet || table.showTotals) return [];
    const end = table.row + table.rows;
    const isBelow = block.row === end && areasMeet({ ...table, rows: table.rows + 1 }, block);
    const isBeside =
      block.column === table.column + table.columns &&
      areasMeet({ ...table, columns: table.columns + 1 }, block);
    const hasData = values.some((row) => row.some((value) => value !== null && value !== ""));
    if (isBeside && !isBelow && hasData)
      return [
        () => {
          expandBeside(book, table);
        },
      ];
    if (!isBelow) return [];
    const isFilled = (row: Matrix[number] | undefined) =>
      row?.some((value, j) => {
        const column = block.column + j;
        return (
          value !== null && value !== "" && column >= table.column && column < table.column + table.columns
        );
      }) ?? false;
    let rows = 0;
    while (rows < block.rows && isFilled(values[rows])) rows++;
    const meets = book.tables.some(
      (other) =>
        other !== table &&
        other.sheet === table.sheet &&
        areasMeet(other, { ...table, rows: table.rows + rows }),
    );
    if (rows === 0 || meets) return [];
    const formulas = Array.from({ length: table.columns }, (_, j) => calculatedColumn(table, j));
    for (let i = 0; i < rows; i++) {
      for (let j = 0; j < table.columns; j++) {
        const [row, column] = [end + i, table.column + j];
        const { format, conditional } = peek(table.sheet, end - 1, column);
        const cell = cellIn(table.sheet, row, column);
        if (cell.format === "General") cell.format = format;
        cell.conditional = [...new Set([...cell.conditional, ...conditional])];
      }
    }
    table.rows += rows;
    return book.habits.fillsColumns
      ? [
          () => {
            fillColumns(book, table, { end, rows }, formulas);
          },
        ]
      : [];
  });
}

function fillColumns(
  book: Book,
  table: BookTable,
  { end, rows }: { readonly end: number; readonly rows: number },
  formulas: readonly (string | undefined)[],
): void {
  formulas.forEach((formula, j) => {
    for (let i = 0; formula !== undefined && i < rows; i++) {
      const [row, column] = [end + i, table.column + j];
      if (peek(table.sheet, row, column).type === "Empty")
        enter(book, table.sheet, row, column, toA1(formula, row, column));
    }
  });
}

function expandBeside(book: Book, table: BookTable): void {
  const column = table.column + table.columns;
  const meets = book.tables.some(
    (other) =>
      other !== table &&
      other.sheet === table.sheet &&
      areasMeet(other, { ...table, columns: table.columns + 1 }),
  );
  const isFilled = Array.from({ length: table.rows }, (_, i) =>
    peek(table.sheet, table.row + i, column),
  ).some(({ type }) => type !== "Empty");
  if (meets || !isFilled) return;
  table.columns += 1;
  const heading = cellIn(table.sheet, table.row, column);
  if (heading.type !== "Empty") return;
  heading.value = `Column${String(table.columns)}`;
  heading.type = "String";
}

/** The formula of a column in which every row holds the same one. */
function calculatedColumn({ sheet, row, column, rows }: BookTable, j: number): string | undefined {
  const formulas = Array.from({ length: rows - 1 }, (_, i) => {
    const { formula } = peek(sheet, row + 1 + i, column + j);
    return formula === undefined ? undefined : toR1C1(formula, row + 1 + i, column + j);
  });
  return formulas.every((formula) => formula === formulas[0]) ? formulas[0] : undefined;
}

class AutoFilter extends ClientObject<BookTable, { isDataFiltered: boolean }> {
  constructor(requests: Requests, look: () => BookTable) {
    super(requests, "a filter", look, { isDataFiltered: ({ filtered }) => filtered });
  }
  get isDataFiltered() {
    return this.read("isDataFiltered");
  }
}

function refuseBadName(check: () => void): void {
  try {
    check();
  } catch (error) {
    throw invalid(error instanceof Error ? error.message : String(error));
  }
}

class Tables extends ClientCollection<BookTable, TableProperties, Table> {
  constructor(
    requests: Requests,
    private readonly book: Book,
    private readonly sheet?: () => BookSheet,
  ) {
    super(
      requests,
      "tables",
      () => book.tables.filter((table) => !sheet || table.sheet === sheet()),
      (target) => new Table(requests, book, () => target),
    );
  }

  private find(name: string): BookTable | undefined {
    return this.book.tables.find((table) => sameName(table.name, name));
  }
  getItem(name: string): Table {
    return new Table(this.requests, this.book, () => this.find(name));
  }

  add(range: Range, hasHeaders: boolean): Table {
    if (!hasHeaders || !this.sheet) throw invalid("The double adds tables with headings to sheets only.");
    return new Table(this.requests, this.book, () => {
      const block = range.target();
      refuseProtected(block.sheet);
      if (this.book.tables.some((table) => table.sheet === block.sheet && areasMeet(table, block))) {
        throw invalid("A table can't overlap another table.");
      }
      nameHeadings(block);
      const table: BookTable = {
        ...block,
        name: `Table${String(this.book.tables.length + 1)}`,
        style: "TableStyleMedium2",
        showBandedRows: true,
        showHeaders: true,
        showTotals: false,
        filtered: false,
      };
      this.book.tables.push(table);
      return table;
    });
  }
}

/** Excel turns headings into text, names those that are blank, and numbers those that are there twice. */
function nameHeadings({ sheet, row, column, columns }: Block): void {
  const taken: string[] = [];
  for (let j = 0; j < columns; j++) {
    const cell = cellIn(sheet, row, column + j);
    const wanted = String(cell.value) || `Column${String(j + 1)}`;
    let heading = wanted;
    for (let n = 2; taken.some((other) => sameName(other, heading)); n++) heading = `${wanted}${String(n)}`;
    taken.push(heading);
    delete cell.formula;
    cell.value = heading;
    cell.type = "String";
  }
}

class Worksheets extends ClientCollection<BookSheet, { name: string; id: string }, Worksheet> {
  constructor(
    requests: Requests,
    private readonly book: Book,
    private readonly events: Events,
  ) {
    super(
      requests,
      "worksheets",
      () => book.sheets,
      (target) => new Worksheet(requests, book, () => target),
    );
  }

  private find(nameOrId: string): BookSheet | undefined {
    return this.book.sheets.find((sheet) => sheet.id === nameOrId || sameName(sheet.name, nameOrId));
  }
  getItem(nameOrId: string): Worksheet {
    return new Worksheet(this.requests, this.book, () => this.find(nameOrId));
  }
  getItemOrNullObject(nameOrId: string): Worksheet {
    return new Worksheet(this.requests, this.book, () => this.find(nameOrId), true);
  }
  add(name: string): Worksheet {
    return new Worksheet(this.requests, this.book, () => {
      refuseBadName(() => {
        checkSheetName(name);
      });
      refuseProtectedStructure(this.book);
      if (this.find(name)) throw new ExcelRefusal("ItemAlreadyExists", "The name is taken.");
      const sheet = newSheet(name, this.book);
      this.book.sheets.push(sheet);
      return sheet;
    });
  }

  get onChanged() {
    return this.event(this.events.changed);
  }
  get onRowSorted() {
    return this.event(this.events.sorted);
  }
  get onCalculated() {
    return this.event(this.events.calculated);
  }
  private event(handlers: Handlers) {
    const { requests } = this;
    return {
      add: (handler: (event: SheetEvent) => unknown) => {
        requests.enqueue("add handler", () => handlers.add(handler));
        return {
          context: requests,
          remove: () => {
            requests.enqueue("remove handler", () => handlers.delete(handler));
          },
        };
      },
    };
  }
}

export function newSheet(name: string, book: Pick<Book, "sheets">): BookSheet {
  return {
    id: `{sheet-${String(book.sheets.length + 1)}-${name}}`,
    name,
    cells: new Map(),
    notes: new Map(),
    frozen: { rows: 0, columns: 0 },
    printed: {
      ...{ orientation: "Portrait", paperSize: undefined, zoom: { scale: 100 } },
      ...{ titleRows: undefined, titleColumns: undefined, leftFooter: "", rightFooter: "" },
    },
    columnWidths: new Map(),
    lists: [],
    protected: false,
  };
}

class Setting extends ClientObject<{ key: string }, { value: unknown }> {
  constructor(
    requests: Requests,
    private readonly book: Book,
    look: () => { key: string } | undefined,
  ) {
    super(requests, "a setting", look, { value: ({ key: name }) => book.settings.get(name) }, true);
  }
  get value() {
    return this.read("value");
  }
  delete(): void {
    this.queue("delete", ({ key: name }) => this.book.settings.delete(name));
  }
}

export class Application extends ClientObject<Book, { calculationMode: string }> {
  constructor(requests: Requests, book: Book) {
    super(requests, "Excel", () => book, { calculationMode: (of) => of.calculationMode });
  }
  get calculationMode() {
    return this.read("calculationMode");
  }
  suspendScreenUpdatingUntilNextSync(): void {
    this.queue("hold the screen", () => undefined);
  }
}

export class Workbook {
  constructor(
    private readonly requests: Requests,
    private readonly book: Book,
    private readonly events: Events,
  ) {}

  get protection(): Protection {
    return new Protection(this.requests, () => this.book.structureProtected);
  }
  get worksheets(): Worksheets {
    return new Worksheets(this.requests, this.book, this.events);
  }
  get tables(): Tables {
    return new Tables(this.requests, this.book);
  }
  get comments(): Comments {
    return new Comments(this.requests, this.book);
  }
  get settings() {
    return {
      getItemOrNullObject: (name: string) =>
        new Setting(this.requests, this.book, () =>
          this.book.settings.has(name) ? { key: name } : undefined,
        ),
      add: (name: string, value: unknown): void => {
        this.requests.enqueue(
          "add setting",
          () => this.book.settings.set(name, structuredClone(value)),
          value,
        );
      },
    };
  }
  getSelectedRange(): Range {
    return new Range(this.requests, this.book, () => this.book.selected);
  }
}
