import type { Cell } from "../../chart/cell.ts";
import { gradeRuleCells } from "../../chart/readGradeRules.ts";
import type { CellContent, SheetContent } from "../../workbook/content.ts";
import { plain } from "./parts.ts";
import type { TableColumn } from "./tableSheet.ts";
import { tableSheet } from "./tableSheet.ts";

const columns: Readonly<Record<string, Omit<TableColumn, "heading">>> = {
  Measure: { note: "The measure of the figure that the point follows." },
  "Share across": { note: "Of what the measure changes by, how much the point moves to the right." },
  "Share along": { note: "Of what the measure changes by, how much the point moves upwards." },
};

/** The grade rules that come with Measure Book, to be edited, as the table GradeRules. */
export function gradeRulesSheet(): SheetContent {
  const [headings = [], ...rules] = gradeRuleCells();
  return tableSheet({
    name: "Grade rules",
    says: "Which share of a change moves each point: across to the right, along upwards. Around the body a garment must add up to 100 %.",
    table: "GradeRules",
    columns: headings.map((heading) => ({ heading: String(heading), ...columns[String(heading)] })),
    rows: rules.map((rule) => rule.map(ruleCell)),
    frozenColumns: 2,
  });
}

/** No share is an empty cell: the shares that there are then catch the eye. */
function ruleCell(value: Cell): CellContent {
  if (typeof value !== "number") return plain(value);
  return value === 0 ? { format: "0.0%" } : { value, format: "0.0%" };
}
