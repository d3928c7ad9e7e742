import { columnHeadings } from "../../addin/chart/readPatterns.ts";
import { columnNamed, tableColumns } from "../../addin/chart/tableRows.ts";
import { areasMeet, cellName } from "../../addin/workbook/address.ts";
import type { CellContent } from "../../addin/workbook/content.ts";
import type { FormulaPart } from "../../addin/workbook/formulaParts.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { Area, CellAddress, Edit, FoundCell, TableInfo, Workbook } from "../../addin/workbook/port.ts";
import { confirmedTable } from "../check/confirmed.ts";
import { findFitTables } from "../fit/fitTables.ts";
import { usualSecond } from "../groups/secondReadings.ts";
import { readingsTable } from "../readings/readings.ts";
import { count } from "../ui/words.ts";
import type { NameInFormula } from "./inFormula.ts";
import { listClosed, nameInFormula, renamedInList, renamedText, separator } from "./inFormula.ts";
import type { Rename } from "./renames.ts";
import { mainCharts, namesColumns } from "./renames.ts";

/** What says an old name, in the order in which it is told. The last two need not mean it. */
export const placeKinds = [
  "formula",
  "asked",
  "draftedFor",
  "wornOver",
  "confirmed",
  "second",
  "reading",
  "otherFormula",
  "cell",
] as const;
export type PlaceKind = (typeof placeKinds)[number];

/** A cell that says an old name, with what it will hold. */
export interface Place {
  readonly kind: PlaceKind;
  readonly at: CellAddress;
  readonly before: string | number;
  readonly after: string | number;
  readonly isFormula: boolean;
  /** Why it cannot be changed now, in words to follow “because”. */
  readonly closed?: string;
}

/** Each kind in words after its number: “4 formulas”. */
export const kindWords: Readonly<Record<PlaceKind, (n: number) => string>> = {
  formula: (n) => count(n, "formula"),
  asked: (n) => `${count(n, "cell")} that formulas read it from`,
  draftedFor: (n) => `Drafted for of ${count(n, "pattern")}`,
  wornOver: (n) => `Worn over of ${count(n, "pattern")}`,
  confirmed: (n) => count(n, "confirmed reading"),
  second: (n) => `${count(n, "row")} of second readings`,
  reading: (n) => `${count(n, "row")} of the table ${readingsTable}`,
  otherFormula: (n) => `${count(n, "other formula")} with this text`,
  cell: (n) => `${count(n, "other cell")} with exactly this name`,
};

/** True for what is sure to mean what was renamed. */
export function isSure(kind: PlaceKind): boolean {
  return kind !== "cell" && kind !== "otherFormula";
}

/** Every cell that says the old name. Reads the whole workbook. */
export async function findPlaces(workbook: Workbook, rename: Rename): Promise<readonly Place[]> {
  const tables = await workbook.tables();
  const cells = await workbook.findCells((cell) => cell.isFormula || saysName(cell, rename));
  return placesOf(cells, rename, tables);
}

function saysName({ holds, isFormula }: FoundCell, rename: Rename): boolean {
  return !isFormula && renamedInList(String(holds), rename) !== undefined;
}

/** @param cells at least all formulas, and all cells in which the old name stands alone or in a list */
export function placesOf(
  cells: readonly FoundCell[],
  rename: Rename,
  tables: readonly TableInfo[],
): readonly Place[] {
  const charts = mainCharts(tables);
  const patterns = findFitTables(tables).patterns;
  const others = (rename.what === "figure" ? charts : patterns)
    .map(({ name }) => name)
    .filter((name) => !sameName(name, rename.table));
  const formulas = cells
    .filter(({ isFormula }) => isFormula)
    .map((cell) => ({ cell, says: nameInFormula(String(cell.holds), rename, others) }));
  const asked = formulas.flatMap(({ cell, says }) =>
    says.asks.flatMap((part) => areaOf(part, cell.at, tables) ?? []),
  );
  const own = namesColumns(tables).find(({ table }) => sameName(table.name, rename.table));
  const texts = cells.filter((cell) => saysName(cell, rename) && !(own && isIn(cell.at, own.area)));
  // Where another chart has a figure of the old name, what names no chart may mean that one.
  const isShared = texts.some(({ at }) =>
    charts.some(({ name, area }) => !sameName(name, rename.table) && isIn(at, { ...area, columns: 1 })),
  );
  const kindAt = (at: CellAddress): PlaceKind | undefined => {
    const found = tables.find(({ area }) => isIn(at, area));
    if (found === undefined || at.row === found.area.row) return undefined;
    const isUnder = (headings: readonly string[]) =>
      columnNamed(tableColumns([found.headings]), headings)?.position === at.column - found.area.column;
    if (rename.what === "pattern") {
      return sameName(found.name, rename.table) && isUnder(columnHeadings.wornOver) ? "wornOver" : undefined;
    }
    if (isShared) return undefined;
    if (patterns.includes(found)) return isUnder(columnHeadings.draftedFor) ? "draftedFor" : undefined;
    if (sameName(found.name, readingsTable))
      return isUnder(["Figure", "Figures", "Name"]) ? "reading" : undefined;
    if (at.column !== found.area.column) return undefined;
    if (sameName(found.name, confirmedTable)) return "confirmed";
    return sameName(found.name, usualSecond) ? "second" : undefined;
  };
  return [
    ...formulas.flatMap(({ cell, says }) => formulaPlaces(cell, says)),
    ...texts.flatMap((cell) => {
      const isAsked = asked.some((area) => isIn(cell.at, area));
      return textPlaces(cell, kindAt(cell.at) ?? (isAsked ? "asked" : "cell"), rename);
    }),
  ];
}

function formulaPlaces(cell: FoundCell, says: NameInFormula): readonly Place[] {
  const { renamed, isAsked, closed } = says;
  if (renamed === undefined) return [];
  return [placeOf(cell, isAsked ? "formula" : "otherFormula", renamed, closed)];
}

function textPlaces(cell: FoundCell, kind: PlaceKind, rename: Rename): readonly Place[] {
  const text = String(cell.holds);
  const whole = renamedText(text, rename);
  const isList = kind === "wornOver" || kind === "asked";
  const after = whole ?? (isList ? renamedInList(text, rename) : undefined);
  if (after === undefined) return [];
  const isSplit = kind === "wornOver" || whole === undefined;
  const closed = isSplit && separator.test(rename.to) ? listClosed : undefined;
  const isNumber = typeof cell.holds === "number" && String(Number(after)) === after;
  // A number says a name only where names are looked for.
  if (typeof cell.holds === "number" && kind === "cell") return [];
  return [placeOf(cell, kind, isNumber ? Number(after) : after, closed)];
}

function placeOf(cell: FoundCell, kind: PlaceKind, after: string | number, why?: string): Place {
  const { at, holds, isFormula } = cell;
  const closed = cell.closed ?? why;
  return { kind, at, before: holds, after, isFormula, ...(closed !== undefined && { closed }) };
}

/** The cells that a part of a formula means, as far as can be told without calculating. */
function areaOf(part: FormulaPart, at: CellAddress, tables: readonly TableInfo[]): Area | undefined {
  if (part.kind === "text") return undefined;
  if (part.kind === "area") {
    const { sheet = at.sheet, row, column, rows, columns } = part;
    return { sheet, row, column, rows, columns };
  }
  const table = tables.find(({ name, area }) =>
    part.table === undefined ? isIn(at, area) : sameName(name, part.table),
  );
  if (!table) return undefined;
  const places = part.columns
    .map((heading) => table.headings.findIndex((each) => sameName(each, heading)))
    .filter((place) => place >= 0);
  if (places.length === 0) return undefined;
  const [first, last] = [Math.min(...places), Math.max(...places)];
  const columns = { column: table.area.column + first, columns: last - first + 1 };
  const rows = part.isThisRow
    ? { row: at.row, rows: 1 }
    : { row: table.area.row + 1, rows: table.area.rows - 1 };
  return { sheet: table.area.sheet, ...columns, ...rows };
}

function isIn({ sheet, row, column }: CellAddress, area: Area): boolean {
  return sameName(sheet, area.sheet) && areasMeet(area, { row, column, rows: 1, columns: 1 });
}

/** Chosen to begin with: what is sure to mean what was renamed. */
export const sureKinds: ReadonlySet<PlaceKind> = new Set(placeKinds.filter(isSure));

/** The places of the chosen kinds that can be changed. */
export function chosenPlaces(places: readonly Place[], chosen: ReadonlySet<PlaceKind>): readonly Place[] {
  return places.filter(({ kind, closed }) => chosen.has(kind) && closed === undefined);
}

/** The edits of places, cells below one another together. */
export function placeEdits(places: readonly Place[]): readonly Edit[] {
  const inOrder = places.toSorted(
    ({ at: a }, { at: b }) => a.sheet.localeCompare(b.sheet) || a.column - b.column || a.row - b.row,
  );
  const stretches: { readonly at: CellAddress; readonly cells: CellContent[][] }[] = [];
  for (const { at, after, isFormula } of inOrder) {
    const content = isFormula ? { formula: String(after) } : { value: after };
    const last = stretches.at(-1);
    const goesOn =
      last?.at.sheet === at.sheet &&
      last.at.column === at.column &&
      last.at.row + last.cells.length === at.row;
    if (goesOn) last.cells.push([content]);
    else stretches.push({ at, cells: [[content]] });
  }
  return stretches.map((stretch) => ({ kind: "cells", ...stretch }));
}

/** “4 formulas, Drafted for of 2 patterns and 1 confirmed reading” */
export function placesWords(places: readonly Place[]): string {
  const words = placeKinds.flatMap((kind) => {
    const n = places.filter((place) => place.kind === kind).length;
    return n === 0 ? [] : [kindWords[kind](n)];
  });
  const last = words.pop() ?? "nothing";
  return words.length > 0 ? `${words.join(", ")} and ${last}` : last;
}

/** “Fit, cell B3” */
export function placeName({ at }: Pick<Place, "at">): string {
  return `${at.sheet}, cell ${cellName(at.row, at.column)}`;
}

/** True where the same cells say the same, so that what was shown is what will be done. */
export function samePlaces(a: readonly Place[], b: readonly Place[]): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
