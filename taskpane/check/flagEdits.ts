import { isDateFormat } from "../../addin/chart/numberFormat.ts";
import type { Chart } from "../../addin/chart/chart.ts";
import type { Choice, Flag } from "../../addin/checking/checkChart.ts";
import { fromMm } from "../../addin/measures/units.ts";
import type { Area, CellAddress, Edit, RangeData } from "../../addin/workbook/port.ts";

/** The cell that a flag is about. */
export function cellOfFlag({ area }: RangeData, { row, column }: Pick<Flag, "row" | "column">): CellAddress {
  return { sheet: area.sheet, row: area.row + row, column: area.column + column };
}

/** What to show for a flag: its cell, or the whole row or column that it is about. */
export function areaOfFlag(data: RangeData, flag: Flag): Area {
  const { area } = data;
  if (flag.measure === "")
    return { ...cellOfFlag(data, { ...flag, column: 0 }), rows: 1, columns: area.columns };
  if (flag.figure === "") return { ...cellOfFlag(data, { ...flag, row: 0 }), rows: area.rows, columns: 1 };
  return { ...cellOfFlag(data, flag), rows: 1, columns: 1 };
}

/** The edits that take one of several choices. */
export function choose(data: RangeData, chart: Chart, flag: Flag, choice: Choice): readonly Edit[] {
  if ("correction" in choice) return correct(data, chart, { ...flag, corrections: [choice.correction] });
  return choice.headings.map(({ column, heading }) => ({
    kind: "cells",
    at: cellOfFlag(data, { row: 0, column }),
    cells: [[{ value: heading }]],
  }));
}

/** The edits that take a flag’s suggestion: every cell that it corrects, in the unit of its column, unmarked. */
export function correct(data: RangeData, chart: Chart, flag: Flag): readonly Edit[] {
  const cells = flag.corrections.map((correction) => cellOfFlag(data, correction));
  const writes = flag.corrections.map(({ row, column, mm }, i): Edit => {
    const unit = chart.measures.find((c) => c.position === column)?.unit ?? flag.unit;
    const value = Number(fromMm(mm, unit).toPrecision(12));
    const format = data.formats[row]?.[column] ?? "General";
    // A corrected fraction would go on showing as a date, a corrected text as text.
    const plain = isDateFormat(format) || format === "@" ? { format: "General" } : {};
    return { kind: "cells", at: cells[i] ?? cellOfFlag(data, flag), cells: [[{ value, ...plain }]] };
  });
  return writes.length === 0 ? [] : [...writes, { kind: "mark", cells, marked: false }];
}
