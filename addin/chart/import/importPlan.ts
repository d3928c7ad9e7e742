import type { Cell, Cells } from "../cell.ts";
import { cellText, isBlank } from "../cell.ts";
import type { Chart } from "../chart.ts";
import { isDateFormat } from "../numberFormat.ts";
import { dayText, serialToDay } from "../../measures/dateFractions.ts";
import { readHeading } from "../../measures/heading.ts";
import { headingKey } from "../../measures/headingKey.ts";
import type { LengthUnit } from "../../measures/units.ts";
import type { ImportColumn, ImportKind } from "./columns.ts";
import type { DecimalMark } from "../../measures/decimal.ts";
import type { ImportFigure } from "./figures.ts";
import { findColumn } from "./findColumn.ts";
import { sourceCellReader } from "./readSourceCell.ts";
import type { LaidOutSource } from "./source.ts";
import { unitOfFraction } from "../unitsOfColumns.ts";

/** The chart that is imported into: its cells as they stand, and what was read from them. */
export interface PresentChart {
  readonly cells: Cells;
  readonly chart: Chart;
}

/** Where a column of the file goes. */
export interface TargetColumn {
  readonly from: ImportColumn;
  /** Column within the present chart, from 0; `undefined` for a new column. */
  readonly position: number | undefined;
  /** Heading in the chart, with the unit. */
  readonly heading: string;
  /** The unit that readings are stored in. */
  readonly unit: LengthUnit;
  readonly holds: "name" | "readings" | "text";
}

/** What one cell of the file becomes; `says` tells what the list itself does not say, and what that rests on. */
export type PlannedCell = { readonly says?: string } &
  /** Nothing to store: not taken, or blank. */
  (
    | { readonly kind: "blank" }
    /** Stored where there is nothing yet. */
    | { readonly kind: "new"; readonly value: Cell; readonly as: "reading" | "text" }
    /** Stored in place of `old`. */
    | { readonly kind: "changed"; readonly value: Cell; readonly old: Cell; readonly as: "reading" | "text" }
    /** The chart says the same already. */
    | { readonly kind: "same"; readonly value: Cell }
    /** Cannot be read as a length. */
    | { readonly kind: "refused"; readonly text: string; readonly reason: string; readonly old: Cell }
  );

/** The table that is imported into, as far as rows are written. */
export interface PresentRows {
  readonly cells: Cells;
  /** Row within the cells of each figure or pattern. */
  readonly rows: readonly number[];
}

export interface ImportPlan {
  readonly what: ImportKind;
  readonly laidOut: LaidOutSource;
  readonly targets: readonly TargetColumn[];
  readonly figures: readonly ImportFigure[];
  readonly present: PresentRows | undefined;
  /** What a figure’s cell becomes; both arguments are indices into `figures` and `targets`. */
  readonly cell: (figure: number, target: number) => PlannedCell;
}

const blank: PlannedCell = { kind: "blank" };

/** What a cell of the file says; with `says` it is a proposal, which fills only what is empty. */
export type CellRead =
  | { readonly kind: "missing"; readonly says?: string }
  | { readonly kind: "refused"; readonly reason: string }
  | { readonly kind: "value"; readonly value: Cell; readonly as: "reading" | "text"; readonly says?: string };

/** Reads a cell of one column, with its number format and the row that it stands in. */
export type CellReader = (cell: Cell, format: string | undefined, row: number) => CellRead;

/** Puts together where every column of a chart goes and what every cell becomes. Changes nothing. */
export function planOf(options: {
  readonly laidOut: LaidOutSource;
  readonly columns: readonly ImportColumn[];
  readonly figures: readonly ImportFigure[];
  readonly decimalMark: DecimalMark | undefined;
  readonly present: PresentChart | undefined;
}): ImportPlan {
  const { laidOut, columns, figures, decimalMark, present } = options;
  const targets = columns.filter((c) => c.role !== "left out").map((c) => targetOf(c, present));
  return planWith({
    what: "figures",
    ...{ laidOut, targets, figures },
    present: present && { cells: present.cells, rows: present.chart.rows },
    readers: targets.map((target) =>
      target.holds === "readings" ? lengthReader(target, laidOut, decimalMark) : readPlain,
    ),
  });
}

/** A plan out of its targets and a reader for each. */
export function planWith(
  options: Omit<ImportPlan, "cell"> & { readonly readers: readonly CellReader[] },
): ImportPlan {
  const { readers, ...parts } = options;
  const { laidOut, figures, targets } = parts;
  const plan: ImportPlan = {
    ...parts,
    cell(figureIndex, targetIndex) {
      const figure = figures[figureIndex];
      const target = targets[targetIndex];
      const read = readers[targetIndex];
      if (!figure || !target || !read || figure.action === "skip") return blank;
      if (target.holds === "name")
        return figure.action === "add"
          ? { kind: "new", value: figure.name, as: "text" }
          : { kind: "same", value: figure.name };
      const cell = laidOut.source.rows[figure.row]?.[target.from.position];
      const format = laidOut.source.formats?.[figure.row]?.[target.from.position];
      const old = before(plan, figure, targetIndex);
      const said = read(cell, format, figure.row);
      const says = said.kind === "refused" ? undefined : said.says;
      if (says !== undefined && !isBlank(old)) return { kind: "same", value: old };
      if (said.kind === "missing") return says === undefined ? blank : { kind: "blank", says };
      if (said.kind === "value")
        return { ...stored(said.value, said.as, old), ...(says !== undefined && { says }) };
      const text = refusedText(cell, format);
      return text === cellText(old)
        ? { kind: "same", value: old }
        : { kind: "refused", text, reason: said.reason, old };
    },
  };
  return plan;
}

/** Lengths in the unit of their target. */
export function lengthReader(
  { from, unit }: TargetColumn,
  laidOut: LaidOutSource,
  decimalMark: DecimalMark | undefined,
): CellReader {
  const read = sourceCellReader(from.unit, unit, fractionUnitOf(from), (text) =>
    laidOut.source.texts(text, decimalMark),
  );
  return (cell, format) => {
    const reading = read(cell, format);
    return reading.kind === "length" ? { kind: "value", value: reading.value, as: "reading" } : reading;
  };
}

/** Cells that stay what they are. */
export function readPlain(cell: Cell): CellRead {
  return isBlank(cell) ? { kind: "missing" } : { kind: "value", value: plainValue(cell), as: "text" };
}

/** A fraction is in inches where the heading of the file states no unit. */
function fractionUnitOf({ heading }: ImportColumn): LengthUnit | undefined {
  return readHeading(heading, "mm").unitStated ? undefined : unitOfFraction;
}

function targetOf(from: ImportColumn, present: PresentChart | undefined): TargetColumn {
  if (from.role === "figure")
    return { from, position: present && 0, heading: from.name, unit: from.unit, holds: "name" };
  if (from.role === "text") {
    const found = present?.chart.attributes.find(
      (c) => headingKey(c.heading) === headingKey(readHeading(from.name, "mm").name),
    );
    return {
      from,
      position: found?.position,
      heading: found?.heading ?? from.name,
      unit: from.unit,
      holds: "text",
    };
  }
  const found = present && findColumn(present.chart, from);
  const unit = found?.unit ?? from.unit;
  const heading = `${found?.heading ?? from.name} (${unit})`;
  return { from, position: found?.position, heading, unit, holds: "readings" };
}

/** What stands in a cell before this figure’s row of the file is reached. */
function before({ present, targets, cell }: ImportPlan, figure: ImportFigure, targetIndex: number): Cell {
  const position = targets[targetIndex]?.position;
  if (figure.target?.in === "the file") {
    const earlier = cell(figure.target.figure, targetIndex);
    return "value" in earlier ? earlier.value : undefined;
  }
  if (!present || !figure.target || position === undefined) return undefined;
  return present.cells[present.rows[figure.target.figure] ?? -1]?.[position];
}

/** A date goes by its day, not by the number behind it, so that the fraction it may have been can still be told. */
function refusedText(cell: Cell, format: string | undefined): string {
  const day = typeof cell === "number" && isDateFormat(format ?? "") ? serialToDay(cell) : undefined;
  return day ? dayText(day) : cellText(cell);
}

function stored(value: Cell, as: "reading" | "text", old: Cell): PlannedCell {
  if (isBlank(old)) return { kind: "new", value, as };
  return isSame(value, old) ? { kind: "same", value } : { kind: "changed", value, old, as };
}

/** Attributes stay numbers where a worksheet has numbers; error values are kept as what they say. */
function plainValue(cell: Cell): Cell {
  return typeof cell === "number" || typeof cell === "boolean" ? cell : cellText(cell);
}

function isSame(a: Cell, b: Cell): boolean {
  if (typeof a === "number" && typeof b === "number")
    return Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a));
  return cellText(a) === cellText(b);
}
