import type { Cells } from "../addin/chart/cell.ts";
import { isCellError } from "../addin/chart/cell.ts";
import type { Chart } from "../addin/chart/chart.ts";
import type { Flag } from "../addin/checking/checkChart.ts";
import { checkChart } from "../addin/checking/checkChart.ts";
import { flaggedText } from "../addin/checking/flag.ts";
import { chartCells, chartOf, tableFrom, withoutZeros } from "./arguments.ts";
import { cutShort, quote } from "../addin/measures/quote.ts";
import { defineFunction } from "./descriptor.ts";
import type { Value } from "./descriptor.ts";
import { emptyChart } from "./failures.ts";
import { readingFlagsOf } from "./listed.ts";
import { shownLength } from "./shown.ts";

export const flagsFunction = defineFunction({
  name: "FLAGS",
  summary:
    "The readings of a chart that deserve a second look, with the reason and, where there is one, a better value.",
  details:
    "Worst first. Reading and Suggested are in the unit of their column; Reading is blank where a flag is about a whole row or column, and an error stands in quotation marks. Columns whose heading states no unit are named, with the unit that is assumed. Nothing is changed: a flag may be right. A " +
    "chart without anything to look at gives the headings alone.",
  parameters: { chart: chartCells() },
  result: "table",
  examples: [
    {
      formula: 'FIT.FLAGS({"Figure","Bust (mm)","Waist";"Linnet",135,100;"Dunnock",136,"101 to 103"})',
      values: [
        [
          ["Figure", "Bust (mm)", "Waist"],
          ["Linnet", 135, 100],
          ["Dunnock", 136, "101 to 103"],
        ],
      ],
      gives: [
        ["Figure", "Measure", "Reading", "Flag", "Why", "Suggested"],
        [
          "Dunnock",
          "Waist",
          "101 to 103",
          "not a length",
          "“101 to 103” looks like a range or a sum. Give one reading.",
          "",
        ],
        [
          "",
          "Waist",
          "",
          "unit assumed",
          "Waist states no unit; it is taken to be in mm. Write the unit into the heading, such as Waist (mm).",
          "",
        ],
      ],
    },
  ],
  failures: [emptyChart],
  source:
    "What is in proportion: as EXPECTED. Iglewicz and Hoaglin (1993) for the limit of 3.5 spreads. How often each slip happens " +
    "is this project’s own judgement.",
  compute: ({ chart: cells }) => [
    ["Figure", "Measure", "Reading", "Flag", "Why", "Suggested"],
    ...flagsOf(chartOf(tableFrom(withoutZeros(cells)))).map((flag) => [
      flag.figure,
      flag.measure,
      readingOf(flag, cells),
      flag.kind,
      flag.why,
      shownLength(flag.suggestedMm ?? Number.NaN, flag.unit),
    ]),
  ],
});

const flagsOf = (chart: Chart): readonly Flag[] => checkChart(chart, readingFlagsOf(chart));

/**
 * What stands in the cell: the length in the unit of its column, or the text that is not one. Blank for a whole row or
 * column, whose cell is a name or a heading.
 */
function readingOf(flag: Flag, cells: Cells): Value {
  if (flag.figure === "" || flag.measure === "") return "";
  if (flag.readingMm !== undefined) return shownLength(flag.readingMm, flag.unit);
  const cell = cells[flag.row]?.[flag.column];
  // Spreadsheets take the bare text of an error for the error itself.
  return isCellError(cell) ? quote(cell.error) : cutShort(flaggedText(flag, cell));
}
