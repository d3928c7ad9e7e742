import type { Cell } from "../../chart/cell.ts";
import { isCellError } from "../../chart/cell.ts";
import { areaName, areasMeet } from "../address.ts";
import { sameName } from "../names.ts";
import type { Area, CellAddress, TableInfo } from "../port.ts";
import { cellKey } from "../touched.ts";
import { cellsOf, rangeOf } from "./ranges.ts";
import { columnLetters } from "../../chart/columnLetters.ts";

/*
 * A mark is a conditional format. It lies over the cell’s own fill and type without changing them, and is kept in the
 * file. Excel leaves conditional formats where they are when rows are sorted, so that a mark’s rule holds what it was
 * made for: the first cell of its row (the figure’s name) and the cell’s own content. In a table it applies to the whole
 * column. After a sort it shows on the row where the reading is now, with the pane open or not; and it is gone once the
 * reading is another one.
 */

/** Light brass under graphite. */
const markedLook = { fill: "#F5E3B3", text: "#26292E" } as const;

const signature = "Measure Book mark";

/** One mark as Excel holds it. */
export interface MarkRule {
  readonly formula: string;
  /** Where it applies; `undefined` where that is several areas. */
  readonly area: Area | undefined;
}

interface FoundRule extends MarkRule {
  readonly id: string;
  readonly format: Excel.ConditionalFormat;
}

/** A cell with the marks that reach it and what it held when they were looked for. */
export interface MarkPlace {
  readonly at: CellAddress;
  readonly rules: readonly FoundRule[];
  readonly reading: Reading;
}

/** What a mark is made for. */
interface Reading {
  /** Tells this reading from others: the same for the same content and the same first cell of the row. */
  readonly key: string;
  /** The rule that knows it again, for the area that it applies to. */
  readonly rule: MarkRule;
}

/** What a cell holds; formulas are known by being one, since what they give may change by itself. */
type Held = { readonly formula: true } | { readonly value: Cell };

/** The marks of cells. Takes three requests. */
export async function findMarks(
  context: Excel.RequestContext,
  cells: readonly CellAddress[],
  tables: readonly TableInfo[],
): Promise<readonly MarkPlace[]> {
  if (cells.length === 0) return [];
  const readings = await findReadings(context, cells, tables);
  const rules = await findRules(context, cells);
  return cells.map((at, i) => ({
    at,
    rules: rules[i] ?? [],
    reading: readings.get(cellKey(at)) ?? { key: "", rule: { formula: "", area: undefined } },
  }));
}

/**
 * Give cells the mark for what they hold now, or take it away, together with one for what they held before. Takes three
 * requests.
 *
 * @param before as the cells were found before the action wrote to them, where it did
 */
export async function putMarks(
  context: Excel.RequestContext,
  wanted: readonly { readonly at: CellAddress; readonly on: boolean }[],
  tables: readonly TableInfo[],
  before: ReadonlyMap<string, MarkPlace>,
): Promise<void> {
  const places = await findMarks(
    context,
    wanted.map(({ at }) => at),
    tables,
  );
  const gone = new Map<string, Excel.ConditionalFormat>();
  const added = new Map<string, MarkRule>();
  places.forEach(({ at, rules, reading }, i) => {
    const keys = [reading.key, before.get(cellKey(at))?.reading.key];
    if (wanted[i]?.on === true) {
      if (!rules.some(({ formula }) => keyOf(formula) === reading.key))
        added.set(`${at.sheet} ${reading.rule.formula}`, reading.rule);
      return;
    }
    for (const { id, format, formula, area } of rules) {
      const isOfThisCell = area !== undefined && area.rows === 1 && area.columns === 1;
      if (isOfThisCell || keys.includes(keyOf(formula))) gone.set(id, format);
    }
  });
  for (const format of gone.values()) format.delete();
  for (const rule of added.values()) addRule(context, rule);
  await context.sync();
}

/** Bring back the marks that reached cells. Takes three requests. */
export async function restoreMarks(
  context: Excel.RequestContext,
  before: readonly { readonly at: CellAddress; readonly rules: readonly MarkRule[] }[],
): Promise<void> {
  if (before.length === 0) return;
  const now = await findRules(
    context,
    before.map(({ at }) => at),
  );
  const gone = new Map<string, Excel.ConditionalFormat>();
  const missing = new Map<string, MarkRule>();
  before.forEach(({ at, rules }, i) => {
    const kept = new Set<string>();
    for (const { id, format, formula } of now[i] ?? []) {
      if (rules.some((rule) => rule.formula === formula)) kept.add(formula);
      else gone.set(id, format);
    }
    for (const rule of rules) {
      if (rule.area && !kept.has(rule.formula)) missing.set(`${at.sheet} ${rule.formula}`, rule);
    }
  });
  for (const format of gone.values()) format.delete();
  for (const rule of missing.values()) addRule(context, rule);
  await context.sync();
}

function addRule(context: Excel.RequestContext, { formula, area }: MarkRule): void {
  if (!area) return;
  const { custom } = rangeOf(context, area).conditionalFormats.add("Custom");
  custom.rule.formula = formula;
  custom.format.fill.color = markedLook.fill;
  custom.format.font.color = markedLook.text;
  custom.format.font.bold = true;
}

/** Our rules that reach each of some cells. Each column is looked through once, however many of its cells are asked for. */
async function findRules(
  context: Excel.RequestContext,
  cells: readonly CellAddress[],
): Promise<readonly (readonly FoundRule[])[]> {
  const columns = [...stretches(cells)].map((area) => ({
    area,
    formats: rangeOf(context, area).conditionalFormats,
  }));
  for (const { formats } of columns) formats.load(["items/type", "items/id"]);
  await context.sync();
  const loaded = columns.flatMap(({ area: { sheet, column }, formats }) =>
    formats.items.flatMap((format) => {
      if (format.type !== "Custom") return [];
      const { rule } = format.custom;
      rule.load("formula");
      const range = format.getRangeOrNullObject();
      range.load(["rowIndex", "columnIndex", "rowCount", "columnCount"]);
      return [{ sheet, column, format, rule, range }];
    }),
  );
  await context.sync();
  const found = loaded
    .filter(({ rule }) => isOurs(rule.formula))
    .map(({ sheet, column, format, rule, range }) => ({
      column,
      sheet,
      id: `${sheet} ${format.id}`,
      format,
      formula: rule.formula,
      area: range.isNullObject
        ? undefined
        : {
            sheet,
            row: range.rowIndex,
            column: range.columnIndex,
            rows: range.rowCount,
            columns: range.columnCount,
          },
    }));
  return cells.map((at) =>
    found.filter(
      ({ sheet, column, area }) =>
        sheet === at.sheet &&
        column === at.column &&
        (!area || areasMeet(area, { ...at, rows: 1, columns: 1 })),
    ),
  );
}

/** One area for each column that cells are in, from the first to the last of them. */
function stretches(cells: readonly CellAddress[]): Iterable<Area> {
  const areas = new Map<string, Area>();
  for (const { sheet, row, column } of cells) {
    const key = `${String(column)} ${sheet}`;
    const known = areas.get(key);
    const top = Math.min(row, known?.row ?? row);
    const bottom = Math.max(row + 1, known ? known.row + known.rows : 0);
    areas.set(key, { sheet, row: top, column, rows: bottom - top, columns: 1 });
  }
  return areas.values();
}

/** A rule without a formula does nothing: it was left behind when Excel broke off while we made a mark. */
function isOurs(formula: string): boolean {
  return formula === "" || keyOf(formula) !== undefined;
}

/** The key of the reading that a rule of ours was made for. */
function keyOf(formula: string): string | undefined {
  return new RegExp(`"${signature} (\\w+)"`).exec(formula)?.[1];
}

/** What cells hold, and the rule that a mark of each needs. */
async function findReadings(
  context: Excel.RequestContext,
  cells: readonly CellAddress[],
  tables: readonly TableInfo[],
): Promise<ReadonlyMap<string, Reading>> {
  const bodies = new Map<string, { readonly area: Area; readonly name: Area | undefined }>();
  const bodyOf = (at: CellAddress) => bodyAround(at, tables);
  for (const at of cells) {
    const body = bodyOf(at);
    bodies.set(areaKey(body.area), body);
  }
  const loaded = new Map(
    [...bodies.values()]
      .flatMap(({ area, name }) => [area, ...(name ? [name] : [])])
      .map((area) => {
        const range = rangeOf(context, area);
        range.load(["values", "valueTypes", "formulas"]);
        return [areaKey(area), range] as const;
      }),
  );
  await context.sync();
  const heldOf = new Map([...loaded].map(([key, range]) => [key, heldIn(range)]));
  return new Map(
    cells.map((at) => {
      const { area, name } = bodyOf(at);
      const own = heldOf.get(areaKey(area)) ?? [];
      const names = name && heldOf.get(areaKey(name));
      return [cellKey(at), readingOf(at, area, own, name && { area: name, held: names ?? [] })];
    }),
  );
}

/** The column of a table’s rows that a cell is in, and the first column; else the cell alone. */
function bodyAround(
  at: CellAddress,
  tables: readonly TableInfo[],
): { readonly area: Area; readonly name: Area | undefined } {
  const cell = { ...at, rows: 1, columns: 1 };
  const table = tables.find(({ area }) => {
    const body = { ...area, row: area.row + 1, rows: area.rows - 1 };
    return sameName(area.sheet, at.sheet) && areasMeet(body, cell);
  });
  if (!table) return { area: cell, name: undefined };
  const { sheet, row, column, rows } = table.area;
  const body = { sheet, row: row + 1, rows: rows - 1, columns: 1 };
  return { area: { ...body, column: at.column }, name: { ...body, column } };
}

function areaKey(area: Area): string {
  return `${areaName(area)} ${area.sheet.toLowerCase()}`;
}

function heldIn(range: Excel.Range): readonly Held[] {
  const cells = cellsOf(range.values, range.valueTypes);
  return cells.map(([value], i): Held => {
    const formula: unknown = range.formulas[i]?.[0];
    const isFormula = typeof formula === "string" && formula.startsWith("=") && formula !== value;
    return isFormula ? { formula: true } : { value };
  });
}

function readingOf(
  at: CellAddress,
  area: Area,
  own: readonly Held[],
  names: { readonly area: Area; readonly held: readonly Held[] } | undefined,
): Reading {
  const keys = own.map((held, i) => keyFor(held, names?.held[i]));
  const row = at.row - area.row;
  const key = keys[row] ?? "";
  // Twins cannot be told apart by what they hold: such a mark keeps to its cell.
  const isAlone = keys.filter((other) => other === key).length === 1;
  const applies = isAlone ? area : { ...at, rows: 1, columns: 1 };
  const rowName = String(applies.row + 1);
  const conditions = [
    `LEN("${signature} ${key}")>0`,
    ...(names ? conditionsFor(`$${columnLetters(names.area.column)}${rowName}`, names.held[row]) : []),
    ...conditionsFor(`$${columnLetters(at.column)}${rowName}`, own[row]),
  ];
  return { key, rule: { formula: `=AND(${conditions.join(",")})`, area: applies } };
}

/** Most characters of a text that are compared one by one, so that a rule stays below 255 characters. */
const comparedCharacters = 30;

/** Conditions, in English with commas, that hold for a cell with the same content. */
function conditionsFor(reference: string, held: Held | undefined): readonly string[] {
  if (!held || "formula" in held) return [];
  const { value } = held;
  if (value === undefined) return [`ISBLANK(${reference})`];
  if (isCellError(value)) return [`ISERROR(${reference})`];
  if (typeof value === "boolean")
    return [`ISLOGICAL(${reference})`, `${reference}=${value ? "TRUE" : "FALSE"}`];
  if (typeof value === "number") {
    // A formula holds 15 digits of a number.
    return [`ISNUMBER(${reference})`, `ABS(${reference}-(${String(value)}))<=${closeTo(value)}`];
  }
  const start = startOf(value);
  return [
    `ISTEXT(${reference})`,
    `LEN(${reference})=${String(value.length)}`,
    `EXACT(LEFT(${reference},${String(start.length)}),"${quoted(start)}")`,
  ];
}

function closeTo(value: number): string {
  return Math.abs(value) < 1e4 ? "0.000000001" : String(Math.abs(value) / 1e12);
}

/** The start of a text, not cut through a character of two code units. */
function startOf(text: string): string {
  let start = text.slice(0, comparedCharacters);
  while (quoted(start).length > comparedCharacters) start = start.slice(0, -1);
  return /[\uD800-\uDBFF]$/.test(start) ? start.slice(0, -1) : start;
}

function quoted(text: string): string {
  return text.replaceAll('"', '""');
}

function keyFor(held: Held, name: Held | undefined): string {
  const text = JSON.stringify(
    [name, held].map((each) => each && ("formula" in each ? "formula" : [each.value])),
  );
  // FNV-1a over code units, twice from different starts: 64 bits tell the readings of a workbook apart.
  return [0x811c9dc5, 0x01000193].map((start) => fnv1a(text, start).toString(36)).join("");
}

function fnv1a(text: string, start: number): number {
  let hash = start;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
