import type { Cells } from "../../addin/chart/cell.ts";
import type { Chart } from "../../addin/chart/chart.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import { quote } from "../../addin/measures/quote.ts";
import { areaName } from "../../addin/workbook/address.ts";
import type { CellContent, SheetContent } from "../../addin/workbook/content.ts";
import type { FunctionDescriptor, Table } from "../../functions/descriptor.ts";
import { isTable } from "../../functions/descriptor.ts";
import { gradeFunction } from "../../functions/grade.ts";
import { resizeFunction } from "../../functions/resize.ts";
import { freeName } from "../shell/freeName.ts";
import type { ColumnLook, Writing, WritingForm } from "../shell/writing.ts";
import { followed, headingRow, resultSheet, startOn } from "../shell/writing.ts";

/** A table of the workbook: its name for a formula, and what it holds. */
export interface TableToName {
  readonly name: string;
  readonly values: Cells;
}

export interface GradeToWrite {
  readonly chart: Chart;
  readonly figures: TableToName;
  readonly tolerances: TableToName | undefined;
  /** A table of grade rules; it gives all its pieces. */
  readonly rules: TableToName | undefined;
  /** Name of a garment or piece where the rules are those of Measure Book; undefined for all. */
  readonly pieces: string | undefined;
  /** Rows of the chart. */
  readonly base: number;
  readonly targets: readonly number[];
  /** Headings of the measures that count, or the garment or piece that they move; undefined for all that decide fit. */
  readonly measures: readonly string[] | undefined;
  /** Seam allowance as typed, "" for none. */
  readonly allowance: string;
  readonly sheets: readonly string[];
}

/** Column widths, in pixels: of the grade up to the first target, of a print scale. */
const gradeWidths = { piece: 144, point: 168, length: 104, unit: 56, says: 420 } as const;
const printWidths = [176, 80, 80, 80, 80, 80, 96, 520] as const;
/** Of the empty column between two tables. */
const gapWidth = 24;

/**
 * Plans a new sheet: the movement of every point, and beside it the print scale to each target.
 *
 * @throws {InputError} when a formula could not name what is meant, or cannot be calculated, saying why and what to do
 */
export function planGrade(form: WritingForm, given: GradeToWrite): Writing {
  const { chart, base, targets } = given;
  for (const figure of [base, ...targets]) mustBeFound(chart, figure);
  const grade = call(gradeFunction, gradeArguments(given));
  const prints = targets.map((target) => call(resizeFunction, printArguments(given, target)));
  const name = freeName("Grade", given.sheets);
  const way = `${chart.figures[base] ?? ""} to ${targets.map((target) => chart.figures[target] ?? "").join(", ")}`;
  const isFormula = form === "formulas";
  const places = placesOf([grade, ...prints]);
  const [gradePlace = "", ...printPlaces] = places;
  const all = given.rules ? ` It gives every piece that the table ${given.rules.name} names.` : "";
  return {
    label: `Write the grade from ${way}`,
    preview: isFormula
      ? `On the new sheet “${name}”: ${[grade, ...prints].map(({ formula }, i) => `${formula} fills ${places[i] ?? ""}`).join("; ")}.${all}`
      : `On the new sheet “${name}”, as words and numbers: the movement of every point in ${gradePlace}, the print scale in ${printPlaces.join(" and ")}.${all}`,
    done: `The grade from ${way} is on the sheet “${name}”.`,
    at: startOn(name),
    edits: () => [
      {
        kind: "sheet",
        sheet: resultSheet({
          name,
          title: `Grade: ${way}`,
          says: `${isFormula ? "Follows every change of the tables." : "As it was when written; it does not follow later changes."} Across is away from the centre line or fold, along is up. Left over is what the print leaves to add; below zero it is too large.`,
          cells: sideBySide(
            [grade, ...prints].map(({ formula, result }) => ({
              rows: isFormula
                ? followed(formula, { rows: result.length, looks: looksOf(result) })
                : valueCells(result),
              width: widthOf(result),
            })),
          ),
          columnWidths: [
            ...[gradeWidths.piece, gradeWidths.point],
            ...targets.flatMap(() => [gradeWidths.length, gradeWidths.length]),
            ...[gradeWidths.unit, gradeWidths.says],
            ...prints.flatMap(() => [gapWidth, ...printWidths]),
          ],
        }),
      },
    ],
  };
}

/** Where tables stand beside one another, with an empty column between. */
function placesOf(tables: readonly Called[]): readonly string[] {
  return tables.map(({ result }, i) => {
    const column = tables.slice(0, i).reduce((sum, before) => sum + widthOf(before.result) + 1, 0);
    return areaName({ row: headingRow, column, rows: result.length, columns: widthOf(result) });
  });
}

function widthOf(result: Table): number {
  return result[0]?.length ?? 1;
}

/** An argument: as it stands in a formula, and its value. */
interface Argument {
  readonly written: string;
  readonly value: unknown;
}

const omitted: Argument = { written: "", value: undefined };

function gradeArguments(given: GradeToWrite): readonly Argument[] {
  const { chart, figures, tolerances, rules, pieces, base, targets } = given;
  return [
    table(figures),
    text(chart.figures[base] ?? ""),
    listOf(
      targets.map((target) => chart.figures[target] ?? ""),
      "figure",
    ),
    rules ? table(rules) : pieces === undefined ? omitted : text(pieces),
    tolerances ? table(tolerances) : omitted,
  ];
}

function printArguments(given: GradeToWrite, target: number): readonly Argument[] {
  const { chart, figures, tolerances, base, measures, allowance } = given;
  return [
    table(figures),
    text(chart.figures[base] ?? ""),
    text(chart.figures[target] ?? ""),
    measures ? listOf(measures, "measure") : omitted,
    allowance === "" ? omitted : text(allowance),
    tolerances ? table(tolerances) : omitted,
  ];
}

function table({ name, values }: TableToName): Argument {
  return { written: `${name}[#All]`, value: values };
}

/** Excel holds no text of more than 255 characters in a formula; longer ones are put together. */
const longestText = 250;

function text(value: string): Argument {
  const parts = value.match(new RegExp(`.{1,${String(longestText)}}`, "gsu")) ?? [""];
  return { written: parts.map((part) => `"${part.replaceAll('"', '""')}"`).join("&"), value };
}

/** Names in one text, with commas. */
function listOf(names: readonly string[], what: string): Argument {
  const bad = names.length > 1 ? names.find((name) => /[,;]/u.test(name)) : undefined;
  if (bad === undefined) return text(names.join(", "));
  throw new InputError(
    `The ${what} ${quote(bad)} has a comma in its name, so it cannot stand in a list of several. Leave it out, or rename it.`,
  );
}

/** A function as it stands in a cell, and what it gives. */
interface Called {
  readonly formula: string;
  readonly result: Table;
}

/** @throws {InputError} as the function does */
function call({ name, compute }: FunctionDescriptor, given: readonly Argument[]): Called {
  const used = given.slice(0, given.findLastIndex(({ written }) => written !== "") + 1);
  const result = compute(given.map(({ value }) => value));
  return {
    formula: `=FIT.${name}(${used.map(({ written }) => written).join(", ")})`,
    result: isTable(result) ? result : [[result]],
  };
}

/** A formula knows figures by name: two of one name are both taken for the first. */
function mustBeFound({ figures }: Chart, figure: number): void {
  const name = figures[figure] ?? "";
  if (figures.indexOf(name) === figure) return;
  throw new InputError(
    `${quote(name)} is in the chart twice, and a formula takes the first of the two. Give one of them another name.`,
  );
}

type Row = SheetContent["cells"][number];

function valueCells([headings = [], ...rows]: Table): readonly Row[] {
  const cell = (value: Table[number][number]): CellContent | undefined =>
    value === "" ? undefined : typeof value === "number" ? { value, ...hundredths } : { value };
  return [
    headings.map((value): CellContent => ({ value, style: "heading" })),
    ...rows.map((row) => row.map(cell)),
  ];
}

/** Movements and scales, with room to the words beside them. */
const hundredths = { format: '0.0#" "' } as const;

function looksOf([headings = [], ...rows]: Table): readonly ColumnLook[] {
  return headings.map((_, column) =>
    rows.some((row) => typeof row[column] === "number") ? hundredths : undefined,
  );
}

/** Each block in its columns, with an empty column between. */
function sideBySide(
  blocks: readonly { readonly rows: readonly Row[]; readonly width: number }[],
): readonly Row[] {
  const height = Math.max(...blocks.map(({ rows }) => rows.length));
  return Array.from({ length: height }, (_, r) =>
    blocks.flatMap(({ rows, width }) => Array.from({ length: width + 1 }, (_, c) => rows[r]?.[c])),
  );
}
