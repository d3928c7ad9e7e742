import type { Cell } from "../../chart/cell.ts";
import { easeRuleCells } from "../../chart/readEaseRules.ts";
import type { CellContent, SheetContent } from "../../workbook/content.ts";
import { widthsOf } from "./columnWidths.ts";
import { heading, plain, quiet, title } from "./parts.ts";

/** The ease rules that come with Measure Book, to be edited, as the table EaseRules. */
export function easeRulesSheet(): SheetContent {
  const [headings = [], ...rules] = easeRuleCells();
  const texts = headings.map(String);
  const rows = rules.map((rule) => rule.map(ruleCell));
  return {
    name: "Ease rules",
    cells: [
      [title("Ease rules")],
      [
        quiet(
          "How much larger than the body a garment must be and may be: percent of the body plus mm. Empty means no limit. Edit them.",
        ),
      ],
      texts.map(heading),
      ...rows,
    ],
    frozenRows: 3,
    frozenColumns: 2,
    columnWidths: widthsOf(texts, rows),
    tables: [{ name: "EaseRules", row: 2, column: 0, rows: rows.length + 1, columns: texts.length }],
  };
}

/** Percentages are text with their sign, so that no spreadsheet takes 4 % for 0.04 or the other way round. */
function ruleCell(value: Cell): CellContent {
  if (typeof value === "number") return { value, format: "0.0" };
  if (typeof value !== "string") return {};
  return value.endsWith("%") ? { value, format: "@" } : plain(value);
}
