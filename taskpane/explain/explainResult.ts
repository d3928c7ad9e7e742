import type { Cell } from "../../addin/chart/cell.ts";
import { cellText, isBlank, isCellError } from "../../addin/chart/cell.ts";
import type { Verdict } from "../../addin/fit/verdict.ts";
import { verdicts } from "../../addin/fit/verdict.ts";
import { didYouMean } from "../../addin/measures/nearNames.ts";
import { cellName } from "../../addin/workbook/address.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { CellAddress, FoundCell, Workbook } from "../../addin/workbook/port.ts";
import { descriptors } from "../../functions/all.ts";
import { readFit } from "../fit/readFit.ts";
import type { Book } from "../shell/book.ts";
import type { CellWords } from "./explainCell.ts";
import { tableAt } from "./explainCell.ts";

/** What spreadsheets write where a formula gives nothing, in words; where our functions say more, that is told instead. */
const errorWords: Readonly<Record<string, string>> = {
  "#VALUE!":
    "Something that the formula was given cannot be used: a word where a number is wanted, or a range of another shape.",
  "#N/A": "What the formula looks for is not there: a figure, measure or pattern of another name.",
  "#NAME?":
    "The spreadsheet does not know a name in the formula: a function or table that is spelled otherwise, or Measure Book is not loaded.",
  "#REF!": "The formula names cells that are gone.",
  "#SPILL!":
    "The result needs more cells than are empty there. Clear what stands below and to the right, or move the formula.",
  "#DIV/0!": "Something is divided by nothing: a cell that the formula reads is empty or 0.",
  "#NUM!": "A number in the formula is too large, or of a kind that cannot be worked with.",
  "#NULL!": "Two ranges in the formula have no cell in common: a comma may be missing between them.",
  "#BUSY!": "It is still being worked out.",
  "#CALC!": "The result is empty, or cannot be worked out here.",
};

const verdictWords: Readonly<Record<Verdict, string>> = {
  fits: "The garment goes on, and lies as it is meant to.",
  snug: "It goes on and closes, closer than is usual for its kind.",
  loose: "It can be worn, a little roomier than is usual for its kind.",
  "too close to call": "It is so near to the limit that the tape cannot tell: measure once more.",
  "not known": "A reading or a measure of the garment is missing that would decide.",
  "too long": "It ends lower than it is meant to.",
  "too short": "It ends higher than it is meant to.",
  "too loose": "It would hang: there is more room than its kind allows.",
  "too tight": "It cannot be closed, or pulls.",
  "will not go on": "An opening is too narrow for what has to pass it, whichever way it is put on.",
};

/** What a cell outside of charts shows, in words; undefined where nothing can be said of it. */
export async function explainResult(
  workbook: Pick<Workbook, "findCells" | "errorAt">,
  book: Book,
  at: CellAddress,
  value: Cell,
): Promise<CellWords | undefined> {
  const where = `${cellName(at.row, at.column)} of the sheet “${at.sheet}”`;
  const pattern = await patternProblem(book, at);
  if (pattern !== undefined)
    return { title: where, says: [], looks: [{ kind: "cannot be read", why: pattern }] };
  const formula = await formulaFor(workbook, at, value);
  const says = formula ? [formulaWords(formula, at)] : [];
  if (isCellError(value)) {
    const names = (await book.tables()).map(({ name }) => name);
    const why =
      (formula && misnamed(formula.holds, names)) ?? workbook.errorAt?.(at) ?? errorWords[value.error];
    return { title: where, says, looks: why === undefined ? [] : [{ kind: value.error, why }] };
  }
  const text = cellText(value);
  const verdict = verdicts.find((each) => each === text.replace(/[^a-z ]/giu, "").trim());
  if (verdict)
    return {
      title: where,
      says: [`“${verdict}”: ${verdictWords[verdict]}`, ...says, "Under Fit, “Why not?” shows each place."],
      looks: [],
    };
  const [, refusal] = /^cannot be read: (.+)$/su.exec(text) ?? [];
  if (refusal !== undefined) return { title: where, says, looks: [{ kind: "cannot be read", why: refusal }] };
  return says.length > 0 ? { title: where, says, looks: [] } : undefined;
}

/** Why the row of a pattern that the cell is in cannot be used. */
async function patternProblem(book: Book, at: CellAddress): Promise<string | undefined> {
  const { used, problems } = await readFit(book, {});
  if (!used.patterns || !tableAt([used.patterns], { ...at, rows: 1, columns: 1 })) return undefined;
  const row = at.row - used.patterns.area.row;
  return problems.find((problem) => problem.row === row)?.message;
}

/** The formula in the cell, or the nearest one above it and to the left that can have filled it. */
async function formulaFor(
  workbook: Pick<Workbook, "findCells">,
  at: CellAddress,
  value: Cell,
): Promise<FoundCell | undefined> {
  const isBefore = (cell: FoundCell): boolean =>
    sameName(cell.at.sheet, at.sheet) && cell.at.row <= at.row && cell.at.column <= at.column;
  const found = await workbook.findCells(isBefore);
  const own = found.find((cell) => cell.at.row === at.row && cell.at.column === at.column);
  if (own) return own.isFormula ? own : undefined;
  if (isBlank(value)) return undefined;
  const far = ({ at: { row, column } }: FoundCell): number => at.row - row + at.column - column;
  return found.filter(isOurs).sort((a, b) => far(a) - far(b))[0];
}

function isOurs({ isFormula, holds }: FoundCell): boolean {
  return isFormula && functionIn(holds) !== undefined;
}

function functionIn(holds: string | number) {
  const [, name] = /\bFIT\.([A-Z]+)\(/iu.exec(String(holds)) ?? [];
  return descriptors.find((descriptor) => descriptor.name === name?.toUpperCase());
}

/** A function of ours or a table that a formula names and nobody knows, with those that may be meant. */
export function misnamed(holds: string | number, tables: readonly string[]): string | undefined {
  const bare = String(holds).replace(/"[^"]*"|'[^']*'/gu, '""');
  const functions = descriptors.map(({ name }) => `FIT.${name}`);
  const [, called] =
    [...bare.matchAll(/\b(FIT\.[\w.]+)\(/giu)].find(
      ([, name = ""]) => !functions.includes(name.toUpperCase()),
    ) ?? [];
  if (called !== undefined)
    return `There is no function “${called}”.${didYouMean(called, functions) || " The section Functions lists them all."}`;
  const [, table] =
    [...bare.matchAll(/(?<![\p{L}\p{N}_.\]!])([\p{L}_][\p{L}\p{N}_.]*)\[/gu)].find(
      ([, name = ""]) => !tables.some((each) => sameName(each, name)),
    ) ?? [];
  return table === undefined
    ? undefined
    : `There is no table “${table}” in this workbook.${didYouMean(table, tables)}`;
}

function formulaWords({ at, holds }: FoundCell, cell: CellAddress): string {
  const isOwn = at.row === cell.row && at.column === cell.column;
  const summary = functionIn(holds)?.summary;
  const begin = isOwn ? "It holds" : `It is filled from ${cellName(at.row, at.column)}, which holds`;
  return `${begin} ${String(holds)}${summary === undefined ? "" : `. What that gives: ${summary}`}`;
}
