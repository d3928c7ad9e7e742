import type { Match } from "../../addin/fit/match.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import { areaName, sheetLimit } from "../../addin/workbook/address.ts";
import type { CellContent, SheetContent } from "../../addin/workbook/content.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { freeName } from "../shell/freeName.ts";
import { count } from "../ui/words.ts";
import type { Writing, WritingForm } from "../shell/writing.ts";
import { followed, headingRow, resultSheet, startOn } from "../shell/writing.ts";
import type { MatrixPart } from "./matrix.ts";
import type { UsedTables } from "./readFit.ts";

export interface MatrixToWrite {
  readonly match: Match;
  /** What the filters leave; only values keep to it. */
  readonly part: MatrixPart;
  readonly used: UsedTables;
  /** True where a table changes the garment classes that come with the project: the formula must name it. */
  readonly hasOwnClasses: boolean;
  /** The table that shows how exact readings are, where the verdicts go by it. */
  readonly readings?: TableInfo | undefined;
  /** Rows of the patterns that cannot be used: the formula lists them too. */
  readonly problems: number;
  readonly sheets: readonly string[];
}

/** Cells beyond which the spreadsheet takes its time. */
const manyCells = 100_000;

/**
 * Plans a new sheet with the verdict of every pattern on every figure.
 *
 * @throws {InputError} when it cannot be written in this form, saying why and what to do
 */
export function planMatrix(form: WritingForm, matrix: MatrixToWrite): Writing {
  const sheet = freeName("Fit", matrix.sheets);
  const { match, part, problems } = matrix;
  const whole = form === "formulas";
  const patterns = whole ? match.patterns.length : part.patterns.length;
  const figures = whole ? match.figures.length : part.figures.length;
  const rows = 1 + patterns + (whole ? problems : 0);
  const columns = 1 + figures;
  if (patterns === 0 || figures === 0)
    throw new InputError("Nothing is left to write. Choose other garments or verdicts.");
  if (columns > sheetLimit.columns) {
    throw new InputError(
      `${count(figures, "figure")} are more than a sheet has columns. Filter by a verdict, or keep fewer figures in the table.`,
    );
  }
  const formula = whole ? fitFormula("WHATFITS", matrix) : undefined;
  const size = `${count(patterns, "pattern")} on ${count(figures, "figure")}`;
  const where = `${areaName({ row: headingRow, column: 0, rows, columns })} of the new sheet “${sheet}”`;
  return {
    label: `Write the fit of ${size}`,
    preview:
      (formula === undefined
        ? `Writes ${size} as words into ${where}.`
        : `Writes ${formula} into A${String(headingRow + 1)}; it fills ${where} with ${size}.`) +
      (rows * columns > manyCells ? " That is large: the spreadsheet may take a while." : ""),
    done: `The fit of ${size} is on the sheet “${sheet}”.`,
    at: startOn(sheet),
    edits: () => [
      {
        kind: "sheet",
        sheet: sheetOf(
          sheet,
          columns,
          formula === undefined
            ? valuesOf(match, part)
            : followed(formula, {
                rows: rows - 1,
                looks: Array.from({ length: columns }, (_, i) => (i === 0 ? undefined : "verdicts")),
              }),
          whole,
        ),
      },
    ],
  };
}

/**
 * A formula about the fit, with the tables that are used.
 *
 * @param asked codes and names that stand between the figures and the rules
 */
export function fitFormula(
  name: string,
  { used, hasOwnClasses, readings }: Pick<MatrixToWrite, "used" | "hasOwnClasses" | "readings">,
  asked: readonly string[] = [],
): string {
  const { patterns, figures, easeRules, garmentClasses } = used;
  if (!patterns || !figures) throw new InputError("There are no patterns or no figures to judge.");
  const table = (of: TableInfo | undefined): string => (of ? `${of.name}[#All]` : "");
  const given = [
    ...[table(patterns), table(figures)],
    ...asked.map((text) => `"${text.replaceAll('"', '""')}"`),
    ...[table(easeRules), hasOwnClasses ? table(garmentClasses) : "", table(readings)],
  ];
  return `=FIT.${name}(${given.slice(0, given.findLastIndex((text) => text !== "") + 1).join(", ")})`;
}

function valuesOf(match: Match, { patterns, figures }: MatrixPart): SheetContent["cells"] {
  return [
    ["Pattern", ...figures.map((figure) => match.figures[figure])].map((value): CellContent => ({
      value,
      style: "heading",
    })),
    ...patterns.map((p) => [
      { value: match.patterns[p]?.code },
      ...figures.map((figure): CellContent => ({ value: match.verdict(p, figure), style: "verdict" })),
    ]),
  ];
}

function sheetOf(
  name: string,
  columns: number,
  cells: SheetContent["cells"],
  follows: boolean,
): SheetContent {
  const says = follows
    ? "Follows every change of the patterns and figures."
    : "As judged when it was written; it does not follow later changes.";
  return resultSheet({
    name,
    title: "Which garment goes on which figure",
    says,
    cells,
    columnWidths: Array.from({ length: columns }, () => 136),
  });
}
