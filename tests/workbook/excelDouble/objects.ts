import { sheetLimit } from "../../../addin/workbook/address.ts";
import { areasMeet } from "../../../addin/workbook/address.ts";
import { checkSheetName, checkTableName, sameName } from "../../../addin/workbook/names.ts";
import {
  cellIn,
  emptyCell,
  enter,
  ExcelRefusal,
  key,
  peek,
  place,
  shiftDown,
  shiftRight,
  usedArea,
  type Book,
  type BookCell,
  type BookRule,
  type BookSheet,
  type BookTable,
  type Scalar,
} from "./book.ts";
import { ClientCollection, ClientObject, ClientResult, type Requests } from "./context.ts";

/** Handlers of one kind of event on all sheets. */
export type Handlers = Set<(event: SheetEvent) => unknown>;

export interface SheetEvent {
  readonly worksheetId: string;
  readonly triggerSource?: string;
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

function refuseProtected(sheet: BookSheet): void {
  if (sheet.protected) throw new ExcelRefusal("AccessDenied", "You cannot perform the requested operation.");
}

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

  private write(values: Matrix): void {
    this.queue(
      "set formulas",
      (block) => {
        refuseProtected(block.sheet);
        checkSize(block, values, "formulas");
        this.requests.writes(block.sheet);
        values.forEach((row, i) => {
          row.forEach((value, j) => {
            enter(block.sheet, block.row + i, block.column + j, value);
          });
        });
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
  get conditionalFormats(): ConditionalFormats {
    return new ConditionalFormats(this.requests, () => this.target());
  }

  private derived(of: (block: Block) => Block): Range {
    return new Range(this.requests, this.book, () => of(this.target()));
  }
  getLastRow(): Range {
    return this.derived((block) => ({ ...block, row: block.row + block.rows - 1, rows: 1 }));
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
  };
}

interface CellLooks {
  readonly format: {
    readonly font?: Partial<BookCell["font"]>;
    readonly wrapText?: boolean;
    readonly verticalAlignment?: string;
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
  set columnWidth(points: number) {
    this.queue("set columnWidth", ({ sheet, column }) => sheet.columnWidths.set(column, points));
  }
}

interface RuleTarget {
  readonly sheet: BookSheet;
  readonly rule: BookRule;
}

class ConditionalFormats extends ClientCollection<RuleTarget, { type: string }, ConditionalFormat> {
  constructor(
    requests: Requests,
    private readonly block: () => Block,
  ) {
    super(
      requests,
      "conditional formats",
      () => {
        const { sheet, row, column } = block();
        return peek(sheet, row, column).conditional.map((rule) => ({ sheet, rule }));
      },
      (target) => new ConditionalFormat(requests, () => target),
    );
  }

  add(type: string): ConditionalFormat {
    if (type !== "Custom") throw invalid(`The double knows custom rules only, not “${type}”.`);
    return new ConditionalFormat(this.requests, () => {
      const block = this.block();
      refuseProtected(block.sheet);
      const rule: BookRule = { type: "Custom", formula: "" };
      for (let i = 0; i < block.rows; i++) {
        for (let j = 0; j < block.columns; j++) {
          cellIn(block.sheet, block.row + i, block.column + j).conditional.push(rule);
        }
      }
      return { sheet: block.sheet, rule };
    });
  }
}

class ConditionalFormat extends ClientObject<RuleTarget, { type: string }> {
  constructor(requests: Requests, look: () => RuleTarget) {
    super(requests, "a conditional format", look, { type: ({ rule }) => rule.type });
  }

  get type() {
    return this.read("type");
  }

  get custom() {
    const change = (to: Partial<BookRule>) => {
      this.queue("change rule", ({ rule }) => Object.assign(rule, to));
    };
    return {
      rule: new ConditionalRule(this.requests, () => {
        const { rule } = this.target();
        if (rule.type !== "Custom")
          throw new ExcelRefusal("InvalidOperation", "The rule is not a custom one.");
        return rule;
      }),
      format: {
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
      for (const cell of sheet.cells.values()) {
        cell.conditional = cell.conditional.filter((other) => other !== rule);
      }
    });
  }
}

class ConditionalRule extends ClientObject<BookRule, { formula: string }> {
  constructor(requests: Requests, look: () => BookRule) {
    super(requests, "a rule", look, { formula: (rule) => rule.formula });
  }
  get formula(): string {
    return this.read("formula");
  }
  set formula(formula: string) {
    this.queue("set formula", (rule) => (rule.formula = formula));
  }
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
    if (this.requests.host.version < 18) throw new ExcelRefusal("ApiNotFound", "Notes are not offered.");
    return new Notes(this.requests, () => this.target());
  }
  get freezePanes(): FreezePanes {
    return new FreezePanes(this.requests, this.book, () => this.target());
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
      if (this.book.sheets.length === 1)
        throw new ExcelRefusal("InvalidOperation", "The last sheet must stay.");
      this.book.sheets = this.book.sheets.filter((other) => other !== sheet);
      this.book.tables = this.book.tables.filter((table) => table.sheet !== sheet);
    });
  }
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
      enter(table.sheet, end + i, table.column + j, value);
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

/** New cells of a table look like their neighbours. */
function inherit(sheet: BookSheet, from: [number, number], to: [number, number]): void {
  const { format, font } = peek(sheet, ...from);
  sheet.cells.set(key(...to), { ...emptyCell(), format, font: { ...font } });
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

  getItem(name: string): Table {
    return new Table(this.requests, this.book, () =>
      this.book.tables.find((table) => sameName(table.name, name)),
    );
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
    columnWidths: new Map(),
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

export class Workbook {
  constructor(
    private readonly requests: Requests,
    private readonly book: Book,
    private readonly events: Events,
  ) {}

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
