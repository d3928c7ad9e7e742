import { measureById } from "../measures/dictionary.ts";
import { headingKey } from "../measures/headingKey.ts";
import { InputError } from "../measures/inputError.ts";
import { quote } from "../measures/quote.ts";
import type { Cells } from "./cell.ts";
import { defaultEaseRules } from "./defaultEaseRules.ts";
import type { EaseAmount, EaseRule } from "./easeRule.ts";
import { isTurnedRound } from "./easeRule.ts";
import type { GarmentClass } from "./garmentClass.ts";
import { defaultGarmentClasses, garmentClassNamed } from "./garmentClass.ts";
import { measureNamed } from "./measureNamed.ts";
import type { TableColumn, TableOptions, TableRow } from "./tableRows.ts";
import {
  columnNamed,
  neededColumn,
  percentAt,
  placeIn,
  signedLengthAt,
  tableColumns,
  tableRows,
  textAt,
  withoutZeros,
} from "./tableRows.ts";

const table = "ease rules";

/** Below this, and not 0, a plain number may as well be a percentage that arrives as a share: 4 % as 0.04. */
const leastPlainPercent = 0.5;

export interface EaseRuleOptions extends TableOptions {
  readonly classes?: readonly GarmentClass[];
}

/**
 * A table with the headings Garment class and Measure, and Least %, Least (mm), Most %, Most (mm), Required, Source →
 * ease rules. A rule is percent of the body + length; a blank pair is no limit. A class that the table names is judged
 * by the table alone; the project’s own rules stand for the other classes.
 *
 * @throws {InputError} naming row and column: unknown class or measure, least above most, one measure twice, not a number
 */
export function readEaseRules(cells: Cells, options: EaseRuleOptions = {}): readonly EaseRule[] {
  const columns = readColumns(cells, options);
  const read = tableRows(cells, table, options).map((row) => ({
    row,
    rule: readRule(row, columns, options),
  }));
  for (const [i, { row, rule }] of read.entries()) {
    const first = read.slice(0, i).find(({ rule: before }) => isSame(before, rule));
    if (first) {
      throw new InputError(
        `${placeIn(row)}: ${rule.garmentClass}, ${measureName(rule)} is in row ${String(first.row.row + 1)} too. Keep one of them.`,
      );
    }
  }
  const named = new Set(read.map(({ rule }) => rule.garmentClass));
  return [
    ...defaultEaseRules.filter(({ garmentClass }) => !named.has(garmentClass)),
    ...read.map(({ rule }) => rule),
  ];
}

/** Ease rules as the cells of a table that {@link readEaseRules} reads. */
export function easeRuleCells(rules: readonly EaseRule[] = defaultEaseRules): Cells {
  return [
    ["Garment class", "Measure", "Least %", "Least (mm)", "Most %", "Most (mm)", "Required", "Source"],
    ...rules.map((rule) => [
      rule.garmentClass,
      measureName(rule),
      percentText(rule.least),
      rule.least?.mm,
      percentText(rule.most),
      rule.most?.mm,
      rule.required ? "yes" : "no",
      rule.source,
    ]),
  ];
}

/** As text, so that no host takes the sign for a share of one. */
function percentText(amount: EaseAmount | undefined): string | undefined {
  return amount && `${String(amount.percent)}%`;
}

interface Columns {
  readonly garmentClass: TableColumn;
  readonly measure: TableColumn;
  readonly leastPercent: TableColumn | undefined;
  readonly leastMm: TableColumn | undefined;
  readonly mostPercent: TableColumn | undefined;
  readonly mostMm: TableColumn | undefined;
  readonly required: TableColumn | undefined;
  readonly source: TableColumn | undefined;
}

function readColumns(cells: Cells, options: TableOptions): Columns {
  const columns = tableColumns(cells, options.unit);
  const least = ["Least", "least ease", "minimum", "min"];
  const most = ["Most", "most ease", "maximum", "max"];
  const found: Columns = {
    garmentClass: neededColumn(columns, ["Garment class", "class"], table),
    measure: neededColumn(columns, ["Measure", "measurement"], table),
    leastPercent: columnNamed(columns, least, true),
    leastMm: columnNamed(columns, least, false),
    mostPercent: columnNamed(columns, most, true),
    mostMm: columnNamed(columns, most, false),
    required: columnNamed(columns, ["Required", "needed"]),
    source: columnNamed(columns, ["Source", "note"]),
  };
  if (!found.leastPercent && !found.leastMm && !found.mostPercent && !found.mostMm) {
    throw new InputError(
      "The ease rules have neither a least nor a most ease. Add the headings “Least %”, “Least (mm)”, “Most %” and “Most (mm)”.",
    );
  }
  return found;
}

function readRule(row: TableRow, columns: Columns, options: EaseRuleOptions): EaseRule {
  const { name } = garmentClassNamed(
    textAt(row, columns.garmentClass),
    options.classes ?? defaultGarmentClasses,
    placeIn(row, columns.garmentClass),
  );
  const least = amountAt(row, columns.leastPercent, columns.leastMm);
  // A most ease of nothing is far rarer than an empty pair of cells that a host hands over as 0.
  const upper = options.zeroIsEmpty ? withoutZeros(row) : row;
  const most = amountAt(upper, columns.mostPercent, columns.mostMm);
  if (isTurnedRound(least, most)) {
    throw new InputError(
      `${placeIn(row, columns.leastPercent ?? columns.leastMm)}: the least ease (${amountText(least)}) is above the most ease (${amountText(most)}). Swap or mend them.`,
    );
  }
  return {
    garmentClass: name,
    measure: measureNamed(textAt(row, columns.measure), placeIn(row, columns.measure)).id,
    ...(least ? { least } : {}),
    ...(most ? { most } : {}),
    required: yesOrNo(row, columns.required),
    source: textAt(row, columns.source) || "Your own table",
  };
}

function amountText(amount: EaseAmount | undefined): string {
  return amount ? `${String(amount.percent)} % + ${String(amount.mm)} mm` : "no limit";
}

function amountAt(
  row: TableRow,
  percentColumn: TableColumn | undefined,
  lengthColumn: TableColumn | undefined,
): EaseAmount | undefined {
  const percent = percentAt(row, percentColumn);
  const mm = signedLengthAt(row, lengthColumn);
  if (percent && percent.isPercent === undefined && isDoubtful(percent.value)) {
    throw new InputError(
      `${placeIn(row, percentColumn)}: ${quote(percent.written)} can be ${percent.written} % or ${String(percent.value * 100)} %. Type it with its sign, as text.`,
    );
  }
  if (!percent && mm === undefined) return undefined;
  return { percent: percent?.value ?? 0, mm: mm ?? 0 };
}

function isDoubtful(value: number): boolean {
  return value !== 0 && Math.abs(value) < leastPlainPercent;
}

function yesOrNo(row: TableRow, column: TableColumn | undefined): boolean {
  const said = headingKey(textAt(row, column));
  if (["", "yes", "y", "true", "1", "x", "required"].includes(said)) return true;
  if (["no", "n", "false", "0", "not required", "optional"].includes(said)) return false;
  throw new InputError(`${placeIn(row, column)}: ${quote(textAt(row, column))} is neither yes nor no.`);
}

function isSame(a: EaseRule, b: EaseRule): boolean {
  return a.garmentClass === b.garmentClass && a.measure === b.measure;
}

function measureName({ measure }: EaseRule): string {
  return measureById(measure)?.name ?? measure;
}
