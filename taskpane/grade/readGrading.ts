import { defaultGradeRules, gradePieces } from "../../addin/chart/gradeBlocks.ts";
import type { GradePiece, GradeRule } from "../../addin/chart/gradeRule.ts";
import type { GradeRuleProblem } from "../../addin/chart/readGradeRules.ts";
import { readGradeRuleTable } from "../../addin/chart/readGradeRules.ts";
import { columnNamed, tableColumns } from "../../addin/chart/tableRows.ts";
import type { GirthMismatch } from "../../addin/grading/girthIdentity.ts";
import { girthMismatches } from "../../addin/grading/girthIdentity.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { RangeData, TableInfo } from "../../addin/workbook/port.ts";
import type { ChosenForGroups, GroupsInput } from "../groups/readGroups.ts";
import { readGroups } from "../groups/readGroups.ts";
import type { Book } from "../shell/book.ts";
import { failureText } from "../shell/notice.ts";
import type { TableToName } from "./writeGrade.ts";

/** The tables that the user has chosen; `""` as rules stands for those of Measure Book. */
export interface ChosenForGrading extends ChosenForGroups {
  readonly rules?: string;
}

/** The grade rules that count. */
export interface RuleSet {
  /** Where they stand; `undefined` when the rules of Measure Book count. */
  readonly table: TableInfo | undefined;
  /** The table as it stands in a formula. */
  readonly cells: TableToName | undefined;
  readonly rules: readonly GradeRule[];
  /** The pieces whose rules are whole. */
  readonly pieces: readonly GradePiece[];
  /** The pieces that wait until a row is mended. */
  readonly waiting: readonly string[];
  /** Rows that cannot be used. */
  readonly problems: readonly GradeRuleProblem[];
  /** Girth lines that do not add up. */
  readonly mismatches: readonly GirthMismatch[];
  /** Why the table cannot be read at all, in words; the rules of Measure Book stand in. */
  readonly failure: string | undefined;
}

/** What the workbook holds for grading: the chart with its tolerances, and the rules. */
export interface GradingInput extends GroupsInput {
  /** Tables that can be grade rules. */
  readonly ruleTables: readonly TableInfo[];
  readonly ruleSet: RuleSet;
  /** The tolerances as they stand in a formula. */
  readonly toleranceCells: TableToName | undefined;
}

/** The name that is taken first where several tables could be the grade rules. */
export const usualGradeRules = "GradeRules";

/** The rules that come with the project. */
export const ownRules: RuleSet = {
  table: undefined,
  cells: undefined,
  rules: defaultGradeRules,
  pieces: gradePieces,
  waiting: [],
  problems: [],
  mismatches: [],
  failure: undefined,
};

/** Reads chart, tolerances and grade rules. Never rejects: what fails is said in the result. */
export async function readGrading(book: Book, chosen: ChosenForGrading): Promise<GradingInput> {
  const input = await readGroups(book, chosen);
  const ruleTables = book.once(gradeRuleTables, input.tables);
  const named = (name: string | undefined) =>
    name === undefined ? undefined : ruleTables.find((table) => sameName(table.name, name));
  const table =
    chosen.rules === "" ? undefined : (named(chosen.rules) ?? named(usualGradeRules) ?? ruleTables[0]);
  const ruleSet = table ? await readRules(book, table) : ownRules;
  const known = { ...input, ruleTables, ruleSet, toleranceCells: undefined };
  const tolerances = input.figures?.tolerancesTable;
  if (!tolerances) return known;
  try {
    const { values } = await book.readTable(tolerances.name);
    return { ...known, toleranceCells: book.once(tableToName, tolerances.name, values) };
  } catch (error) {
    return { ...known, figures: undefined, failure: failureText(error) };
  }
}

async function readRules(book: Book, table: TableInfo): Promise<RuleSet> {
  try {
    const { values, formats } = await book.readTable(table.name);
    return book.once(ruleSetIn, table, values, formats);
  } catch (error) {
    return { ...ownRules, table, failure: `Table ${table.name}: ${failureText(error)}` };
  }
}

function ruleSetIn(table: TableInfo, values: RangeData["values"], formats: RangeData["formats"]): RuleSet {
  const { rules, problems } = readGradeRuleTable(values, { formats });
  const waiting = new Set(problems.flatMap(({ piece }) => (piece === undefined ? [] : [piece])));
  return {
    ...{ table, rules, problems, waiting: [...waiting], failure: undefined },
    cells: tableToName(table.name, values),
    pieces: gradePieces.filter(({ name }) => !waiting.has(name)),
    mismatches: girthMismatches(rules, gradePieces).filter(
      ({ garment }) => !gradePieces.some((piece) => piece.garment === garment && waiting.has(piece.name)),
    ),
  };
}

function tableToName(name: string, values: RangeData["values"]): TableToName {
  return { name, values };
}

function gradeRuleTables(tables: readonly TableInfo[]): readonly TableInfo[] {
  return tables.filter(holdsGradeRules);
}

/** True for a table with a row for each point that moves. */
function holdsGradeRules({ headings }: TableInfo): boolean {
  const columns = tableColumns([headings]);
  return ["Piece", "Point", "Measure"].every((name) => columnNamed(columns, [name]) !== undefined);
}
