import type { Cell } from "../../chart/cell.ts";
import { gradeRuleCells } from "../../chart/readGradeRules.ts";
import type { CellContent, SheetContent } from "../../workbook/content.ts";
import { widthsOf } from "./columnWidths.ts";
import { heading, plain, quiet, title } from "./parts.ts";

/** The grade rules that come with Measure Book, to be edited, as the table GradeRules. */
export function gradeRulesSheet(): SheetContent {
  const [headings = [], ...rules] = gradeRuleCells();
  const texts = headings.map(String);
  const rows = rules.map((rule) => rule.map(ruleCell));
  return {
    name: "Grade rules",
    cells: [
      [title("Grade rules")],
      [
        quiet(
          "Which share of a change moves each point: across to the right, along upwards. Around the body a garment must add up to 100 %.",
        ),
      ],
      texts.map(heading),
      ...rows,
    ],
    frozenRows: 3,
    frozenColumns: 2,
    columnWidths: widthsOf(texts, rows),
    tables: [{ name: "GradeRules", row: 2, column: 0, rows: rows.length + 1, columns: texts.length }],
  };
}

/** No share is an empty cell: the shares that there are then catch the eye. */
function ruleCell(value: Cell): CellContent {
  if (typeof value !== "number") return plain(value);
  return value === 0 ? { format: "0.0%" } : { value, format: "0.0%" };
}
