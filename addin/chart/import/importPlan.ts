import type { Cell, Cells } from "../cell.ts";
import { cellText, isBlank } from "../cell.ts";
import type { Chart } from "../chart.ts";
import { isDateFormat } from "../numberFormat.ts";
import { dayText, serialToDay } from "../../measures/dateFractions.ts";
import { readHeading } from "../../measures/heading.ts";
import { headingKey } from "../../measures/headingKey.ts";
import type { LengthUnit } from "../../measures/units.ts";
import type { ImportColumn } from "./columns.ts";
import type { DecimalMark } from "../../measures/decimal.ts";
import type { ImportFigure } from "./figures.ts";
import { findColumn } from "./findColumn.ts";
import type { SourceCellReader } from "./readSourceCell.ts";
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

/** What one cell of the file becomes. */
export type PlannedCell =
  /** Nothing to store: not taken, or blank. */
  | { readonly kind: "blank" }
  /** Stored where there is nothing yet. */
  | { readonly kind: "new"; readonly value: Cell; readonly as: "reading" | "text" }
  /** Stored in place of `old`. */
  | { readonly kind: "changed"; readonly value: Cell; readonly old: Cell; readonly as: "reading" | "text" }
  /** The chart says the same already. */
  | { readonly kind: "same"; readonly value: Cell }
  /** Cannot be read as a length. */
  | { readonly kind: "refused"; readonly text: string; readonly reason: string; readonly old: Cell };

export interface ImportPlan {
  readonly laidOut: LaidOutSource;
  readonly targets: readonly TargetColumn[];
  readonly figures: readonly ImportFigure[];
  readonly present: PresentChart | undefined;
  /** What a figure’s cell becomes; both arguments are indices into `figures` and `targets`. */
  readonly cell: (figure: number, target: number) => PlannedCell;
}

const blank: PlannedCell = { kind: "blank" };

/** Puts together where every column goes and what every cell becomes. Changes nothing. */
export function planOf(options: {
  readonly laidOut: LaidOutSource;
  readonly columns: readonly ImportColumn[];
  readonly figures: readonly ImportFigure[];
  readonly decimalMark: DecimalMark | undefined;
  readonly present: PresentChart | undefined;
}): ImportPlan {
  const { laidOut, columns, figures, decimalMark, present } = options;
  const targets = columns.filter((c) => c.role !== "left out").map((c) => targetOf(c, present));
  const readers = targets.map((target) =>
    sourceCellReader(target.from.unit, target.unit, fractionUnitOf(target.from), (text) =>
      laidOut.source.texts(text, decimalMark),
    ),
  );
  const plan: ImportPlan = {
    laidOut,
    targets,
    figures,
    present,
    cell(figureIndex, targetIndex) {
      const figure = figures[figureIndex];
      const target = targets[targetIndex];
      const reader = readers[targetIndex];
      if (!figure || !target || !reader || figure.action === "skip") return blank;
      if (target.holds === "name")
        return figure.action === "add"
          ? { kind: "new", value: figure.name, as: "text" }
          : { kind: "same", value: figure.name };
      const cell = laidOut.source.rows[figure.row]?.[target.from.position];
      const format = laidOut.source.formats?.[figure.row]?.[target.from.position];
      return plannedCell(cell, format, target, reader, before(plan, figure, targetIndex));
    },
  };
  return plan;
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
  return present.cells[present.chart.rows[figure.target.figure] ?? -1]?.[position];
}

function plannedCell(
  cell: Cell,
  format: string | undefined,
  target: TargetColumn,
  read: SourceCellReader,
  old: Cell,
): PlannedCell {
  if (target.holds === "text") return isBlank(cell) ? blank : stored(plainValue(cell), "text", old);
  const reading = read(cell, format);
  if (reading.kind === "missing") return blank;
  if (reading.kind === "refused") {
    const text = refusedText(cell, format);
    return text === cellText(old)
      ? { kind: "same", value: old }
      : { kind: "refused", text, reason: reading.reason, old };
  }
  return stored(reading.value, "reading", old);
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
