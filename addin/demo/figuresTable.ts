import { formatFraction } from "../measures/formatFraction.ts";
import { fromMm } from "../measures/units.ts";
import type { CellContent } from "../workbook/content.ts";
import { figures, maker, type Figure } from "./figures.ts";
import { plantedErrors } from "./plantedErrors.ts";
import { bodies, bodyMeasures, feet, hands, type Body, type Feet } from "./sculpts.ts";

interface Column {
  readonly heading: string;
  readonly cell: (figure: Figure, row: number) => CellContent;
}

interface ReadingColumn extends Column {
  /** The heading without unit. */
  readonly measure: string;
  readonly unit: "mm" | "in";
}

/** How far a second reading of the same mould may lie from the first, mm. */
export const readingError = 0.5;

const text = (heading: string, of: (figure: Figure) => string): Column => ({
  heading,
  cell: (figure) => ({ value: of(figure) || undefined }),
});

const inMm = (measure: string, of: (figure: Figure) => number): ReadingColumn => ({
  heading: `${measure} (mm)`,
  measure,
  unit: "mm",
  cell: (figure, row) => ({ value: of(figure) + slack(row, measure), format: "0.0" }),
});

/** In inches as the tape shows them, as text so that no spreadsheet makes a date of a fraction. */
const inInches = (measure: string, of: (figure: Figure) => number): ReadingColumn => ({
  heading: `${measure} (in)`,
  measure,
  unit: "in",
  cell: (figure) => ({ value: formatFraction(fromMm(of(figure), "in")).replace('"', ""), format: "@" }),
});

const bodyColumn = (measure: (typeof bodyMeasures)[number]): ReadingColumn => {
  const position = bodyMeasures.indexOf(measure);
  const of = (figure: Figure) => bodyOf(figure).readings[position] ?? Number.NaN;
  return measure === "Inside leg" ? inInches(measure, of) : inMm(measure, of);
};

/** The columns of readings, from the head down. */
export const readingColumns: readonly ReadingColumn[] = [
  inInches("Height", (figure) => bodyOf(figure).neckHeight + figure.headHeight),
  inMm("Head", (figure) => figure.headGirth),
  ...bodyMeasures.slice(0, bodyMeasures.indexOf("Wrist") + 1).map(bodyColumn),
  inMm("Hand girth", (figure) => hands[figure.hands].girth),
  ...bodyMeasures.slice(bodyMeasures.indexOf("Inside leg")).map(bodyColumn),
  inMm("Heel girth", (figure) => feet[figure.feet].heelGirth),
  inMm("Foot girth", (figure) => feet[figure.feet].ballGirth),
  inMm("Foot length", (figure) => feet[figure.feet].length),
  inInches("Foot width", (figure) => (feet[figure.feet].widthSixteenths * 25.4) / 16),
  {
    heading: "Heel height (mm)",
    measure: "Heel height",
    unit: "mm",
    cell: (figure) => ({ value: heelHeightOf(figure), format: "0.0" }),
  },
];

const columns: readonly Column[] = [
  text("Figure", (figure) => figure.name),
  text("Maker", () => maker),
  text("Line", (figure) => bodyOf(figure).line),
  text("Body material", (figure) => bodyOf(figure).material),
  text("Head sculpt", (figure) => figure.head),
  ...readingColumns,
  text("Body", (figure) => (bodyOf(figure).isSoft ? "soft" : "hard")),
  text("Jointed", (figure) => (bodyOf(figure).isStiff ? "no" : "yes")),
  text("Hands removable", (figure) => yesOrNo(bodyOf(figure).comesOff.includes("hands"))),
  text("Head removable", (figure) => yesOrNo(bodyOf(figure).comesOff.includes("head"))),
  text("Hair", (figure) => bodyOf(figure).hair),
  text("Foot shape", (figure) => (heelHeightOf(figure) === undefined ? "flat" : "heeled")),
  text("Notes", (figure) => figure.notes ?? ""),
];

/** Readings that nobody has taken yet, and how the maker wrote that. */
const missing: readonly { readonly figure: string; readonly measure: string; readonly written?: string }[] = [
  { figure: "Fennick", measure: "Neck", written: "?" },
  { figure: "Ildrith", measure: "Ankle" },
  { figure: "Ostrey", measure: "Calf" },
  { figure: "Zinnow", measure: "Under-bust" },
  { figure: "Hollisane", measure: "Hand girth", written: "-" },
  { figure: "Isolmay", measure: "Heel girth" },
];

/** Readings that nobody can say who shares a body without, still to be taken: the first that the maker should measure next. */
const stillToTake: readonly { readonly figure: string; readonly measure: string }[] = [
  { figure: "Bryndle", measure: "Hip" },
  { figure: "Rushen", measure: "Bust" },
];

/** The headings of the Figures table, with units. */
export const figureHeadings: readonly string[] = columns.map((column) => column.heading);

/** The chart as it would be without slips: one row a figure, in the order of `figureHeadings`. */
export function trueRows(): CellContent[][] {
  return figures.map((figure, row) =>
    columns.map((column) => {
      const gap = missing.find(
        (one) => one.figure === figure.name && isReading(column) && one.measure === column.measure,
      );
      return gap ? { value: gap.written } : column.cell(figure, row);
    }),
  );
}

/** The chart as it stands in the demo: with the planted errors, readings still to take, a figure entered twice and a mould in two paints. */
export function demoRows(): CellContent[][] {
  const rows = trueRows();
  for (const planted of plantedErrors) {
    for (const { measure, cell } of planted.cells ?? []) {
      rows[rowOf(planted.figure)]![columnOf(measure)] = cell;
    }
    if (planted.dividedByTen) divideByTen(rows, planted.figure, planted.measure);
  }
  for (const { figure, measure } of stillToTake)
    rows[rowOf(figure)]![columnOf(measure)] = { value: undefined };
  return [...rows, secondWickory(), otherPaint()];
}

/** The same name again, with readings that differ by more than reading error. */
function secondWickory(): CellContent[] {
  const row = [...trueRows()[rowOf("Wickory")]!];
  row[columnOf("Waist")] = { value: 114, format: "0.0" };
  row[columnOf("Hip")] = { value: 130.5, format: "0.0" };
  row[columnOf("Foot length")] = { value: 3.7, format: "0.0" };
  row[row.length - 1] = { value: "After restringing" };
  return row;
}

/** All readings of another figure, under a name of its own. */
function otherPaint(): CellContent[] {
  const row = [...trueRows()[rowOf("Gwendry")]!];
  row[0] = { value: "Lumarel" };
  row[columnOf("Foot length")] = { value: 7.2, format: "0.0" };
  row[row.length - 1] = { value: "Gwendry in winter paint" };
  return row;
}

function divideByTen(rows: CellContent[][], figure: string, measure: string): void {
  trueRows().forEach((trueRow, i) => {
    if (figure !== "" && figures[i]?.name !== figure) return;
    columns.forEach((column, j) => {
      const cell = trueRow[j];
      if (!isReading(column) || (measure !== "" && column.measure !== measure)) return;
      if (typeof cell?.value !== "number" || column.unit !== "mm") return;
      rows[i]![j] = { value: Math.round(cell.value * 10) / 100, format: "0.00" };
    });
  });
}

/** A second reading of the same mould: the same, or half a millimetre more. Always the same for the same cell. */
function slack(row: number, measure: string): number {
  return measure !== "Head" && (row * 31 + measure.length * 17 + row * measure.length) % 5 < 2
    ? readingError
    : 0;
}

function bodyOf(figure: Figure): Body {
  return bodies[figure.body];
}

function heelHeightOf(figure: Figure): number | undefined {
  const foot: Feet = feet[figure.feet];
  return foot.heelHeight;
}

function yesOrNo(isSo: boolean): string {
  return isSo ? "yes" : "no";
}

function isReading(column: Column): column is ReadingColumn {
  return "measure" in column;
}

function rowOf(figure: string): number {
  return figures.findIndex((one) => one.name === figure);
}

function columnOf(measure: string): number {
  return columns.findIndex((column) => isReading(column) && column.measure === measure);
}
