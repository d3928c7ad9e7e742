import { cellText } from "../../addin/chart/cell.ts";
import { figureKey } from "../../addin/chart/find.ts";
import { readHeading } from "../../addin/measures/heading.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { StarterTable, TakenNames } from "../shell/starterTable.ts";
import { starterTable } from "../shell/starterTable.ts";
import type { FiguresToGroup } from "./readGroups.ts";
import { usualSecond } from "./secondReadings.ts";

/** The figures and measures of a chart as a table to be filled with second readings. */
export function secondStarter({ chart, data }: FiguresToGroup, taken: TakenNames): StarterTable {
  const top = (data.values[0] ?? []).map(cellText);
  const measures = chart.measures.map(({ position, unit }) => {
    const heading = top[position] ?? "";
    const withUnit = `${heading} (${unit})`;
    // A column without readings is known by its unit, also where the dictionary does not know the measure.
    const isStated = readHeading(heading, unit).unitStated;
    return isStated || top.some((each) => sameName(each, withUnit)) ? heading : withUnit;
  });
  const names = new Map([...chart.figures].reverse().map((figure) => [figureKey(figure), figure]));
  return starterTable("Second readings", usualSecond, taken, {
    says: "Measure some figures again, without looking at the first readings. Where a measure is read twice on 5 figures or more, it shows how exact your readings are.",
    cells: [
      [top[0] ?? "Figure", ...measures],
      ...[...names.values()].reverse().map((figure) => [figure, ...measures.map(() => undefined)]),
    ],
    widths: [128, ...measures.map(() => 96)],
  });
}
