import { measureById } from "../measures/dictionary.ts";
import { InputError } from "../measures/inputError.ts";
import { didYouMean } from "../measures/nearNames.ts";
import { quote, someOf } from "../measures/quote.ts";
import type { Cells } from "./cell.ts";
import { cellText } from "./cell.ts";
import { figureKey } from "./find.ts";
import { defaultGradeRules, gradePieces } from "./gradeBlocks.ts";
import type { GradeRule } from "./gradeRule.ts";
import { measureNamed } from "./measureNamed.ts";
import type { TableColumn, TableOptions, TableRow } from "./tableRows.ts";
import { neededColumn, percentAt, placeIn, tableColumns, tableRows, textAt } from "./tableRows.ts";

const table = "grade rules";

/** A row of a table of grade rules that cannot be used. */
export interface GradeRuleProblem {
  /** Row within the range, from 0 (row 0 is the headings). */
  readonly row: number;
  /** Column within the range, from 0; undefined where the whole row is meant. */
  readonly column: number | undefined;
  /** The piece of the row, where it has one that is known: without this row its rules are not whole. */
  readonly piece: string | undefined;
  /** What was read and what to do, naming row and column. */
  readonly message: string;
}

export interface GradeRuleTable {
  /** The rules of the table, and those of the project for the pieces that it does not name. */
  readonly rules: readonly GradeRule[];
  /** The pieces that the table names. */
  readonly pieces: readonly string[];
  /** Rows that cannot be used: unknown piece, point or measure, one measure twice at a point, a share that is not a number or
   * more than the whole. */
  readonly problems: readonly GradeRuleProblem[];
}

/**
 * A table with the headings Piece, Point, Measure, Share across, Share along → grade rules, and the rows that cannot be used.
 * A share is a fraction or a percentage of what the measure changes by: 1/4, 0.25 or 25%; an empty one is none. A piece that
 * the table names goes by the table alone. That a set keeps its girths is not checked here.
 *
 * @throws {InputError} when a heading is missing or the table has no rows
 */
export function readGradeRuleTable(cells: Cells, options: TableOptions = {}): GradeRuleTable {
  const columns = readColumns(cells);
  const rows = tableRows(cells, table, options);
  if (rows.length === 0) {
    throw new InputError(
      "The grade rules have headings but no rows. Add a row for each point that moves, or leave them out.",
    );
  }
  const rules: GradeRule[] = [];
  const problems: GradeRuleProblem[] = [];
  const firstRow = new Map<string, number>();
  for (const row of rows) {
    try {
      const rule = readRule(row, columns);
      const key = [rule.piece, rule.point, rule.measure].join("\n");
      const before = firstRow.get(key);
      if (before !== undefined) {
        throw new InputError(
          `${placeIn(row)}: ${rule.piece}, ${rule.point}, ${measureById(rule.measure)?.name ?? rule.measure} is in row ${String(before + 1)} too. Keep one of them.`,
        );
      }
      firstRow.set(key, row.row);
      rules.push(rule);
    } catch (error) {
      problems.push(problemOf(error, row, columns));
    }
  }
  const named = new Set([
    ...rules.map(({ piece }) => piece),
    ...problems.flatMap(({ piece }) => (piece === undefined ? [] : [piece])),
  ]);
  return {
    rules: [...defaultGradeRules.filter(({ piece }) => !named.has(piece)), ...rules],
    pieces: [...named],
    problems,
  };
}

/**
 * As {@link readGradeRuleTable}, for a table in which every row must be sound.
 *
 * @throws {InputError} the first problem, with the number of further ones
 */
export function readGradeRules(cells: Cells, options: TableOptions = {}): GradeRuleTable {
  const read = readGradeRuleTable(cells, options);
  const [first, ...further] = read.problems;
  if (!first) return read;
  const more =
    further.length > 0
      ? ` There ${further.length > 1 ? "are" : "is"} ${String(further.length)} more to mend.`
      : "";
  throw new InputError(`${first.message}${more}`);
}

/** True for a range that has the heading of a table of grade rules. */
export function isGradeRuleTable(cells: Cells): boolean {
  return (cells[0] ?? []).some((cell) => cellText(cell).toLowerCase() === "piece");
}

/** Grade rules as the cells of a table that {@link readGradeRules} reads. */
export function gradeRuleCells(rules: readonly GradeRule[] = defaultGradeRules): Cells {
  return [
    ["Piece", "Point", "Measure", "Share across", "Share along"],
    ...rules.map(({ piece, point, measure, across, along }) => [
      piece,
      point,
      measureById(measure)?.name ?? measure,
      across,
      along,
    ]),
  ];
}

interface Columns {
  readonly piece: TableColumn;
  readonly point: TableColumn;
  readonly measure: TableColumn;
  readonly across: TableColumn;
  readonly along: TableColumn;
}

function readColumns(cells: Cells): Columns {
  const columns = tableColumns(cells);
  return {
    piece: neededColumn(columns, ["Piece"], table),
    point: neededColumn(columns, ["Point"], table),
    measure: neededColumn(columns, ["Measure", "measurement"], table),
    across: neededColumn(columns, ["Share across", "across"], table),
    along: neededColumn(columns, ["Share along", "along"], table),
  };
}

function readRule(row: TableRow, columns: Columns): GradeRule {
  const piece = oneOf(row, columns.piece, gradePieces, "a piece that has grade rules");
  const point = oneOf(row, columns.point, piece.points, `a point of the ${piece.name.toLowerCase()}`);
  return {
    piece: piece.name,
    point: point.name,
    measure: measureNamed(textAt(row, columns.measure), placeIn(row, columns.measure)).id,
    across: shareAt(row, columns.across),
    along: shareAt(row, columns.along),
    row: row.row,
  };
}

function problemOf(error: unknown, row: TableRow, columns: Columns): GradeRuleProblem {
  if (!(error instanceof InputError)) throw error;
  const { message } = error;
  const at = Object.values(columns).find((column: TableColumn) =>
    message.startsWith(`${placeIn(row, column)}:`),
  );
  const written = cellText(row.cells[columns.piece.position]);
  const piece = gradePieces.find(({ name }) => figureKey(name) === figureKey(written));
  return { row: row.row, column: at?.position, piece: piece?.name, message };
}

function oneOf<T extends { readonly name: string }>(
  row: TableRow,
  column: TableColumn,
  known: readonly T[],
  what: string,
): T {
  const written = textAt(row, column);
  const found = known.find(({ name }) => figureKey(name) === figureKey(written));
  if (found) return found;
  const names = known.map(({ name }) => name);
  throw new InputError(
    `${placeIn(row, column)}: ${quote(written)} is not ${what}.${didYouMean(written, names) || ` There is ${someOf(names, 40)}.`}`,
  );
}

function shareAt(row: TableRow, column: TableColumn): number {
  const share = fractionAt(row, column) ?? percentageAt(row, column);
  if (Math.abs(share) <= 1 + 1e-9) return share;
  throw new InputError(
    `${placeIn(row, column)}: ${quote(cellText(row.cells[column.position]))} is more than the whole change. Write a share such as 0.25 or 25%; a typed 1/4 may have become a date.`,
  );
}

/** `1/4`, `-1/8`, `¼` */
function fractionAt(row: TableRow, column: TableColumn): number | undefined {
  const text = textAt(row, column).normalize("NFKC").replace("⁄", "/").replace("−", "-");
  const [, sign, over, under] = /^\s*([-+]?)\s*(\d+)\s*\/\s*(\d+)\s*$/u.exec(text) ?? [];
  if (over === undefined || Number(under) === 0) return undefined;
  return ((sign === "-" ? -1 : 1) * Number(over)) / Number(under);
}

function percentageAt(row: TableRow, column: TableColumn): number {
  const found = percentAt(row, column);
  if (!found) return 0;
  const isPercent = found.isPercent === true || /[%％]/u.test(column.written);
  return isPercent ? found.value / 100 : found.value;
}
