import type { Cell } from "../../chart/cell.ts";
import { easeRuleCells } from "../../chart/readEaseRules.ts";
import type { CellContent, SheetContent } from "../../workbook/content.ts";
import { plain } from "./parts.ts";
import type { TableColumn } from "./tableSheet.ts";
import { tableSheet, yesOrNo } from "./tableSheet.ts";

const columns: Readonly<Record<string, Omit<TableColumn, "heading">>> = {
  "Garment class": { choices: { table: "GarmentClasses", heading: "Garment class" } },
  "Least %": { note: "The smallest ease that fits: this much of the body …" },
  "Least (mm)": { note: "… and this length more. Both empty: no limit." },
  "Most %": { note: "The largest ease that fits: this much of the body …" },
  "Most (mm)": { note: "… and this length more. Both empty: no limit." },
  Required: { note: "Yes: the verdict is not known without this measure.", choices: yesOrNo },
  Source: { note: "Where the numbers come from: published, or a starting value of this project." },
};

/** The ease rules that come with Measure Book, to be edited, as the table EaseRules. */
export function easeRulesSheet(): SheetContent {
  const [headings = [], ...rules] = easeRuleCells();
  return tableSheet({
    name: "Ease rules",
    says: "How much larger than the body a garment must be and may be: percent of the body plus mm. Empty means no limit. Edit them.",
    table: "EaseRules",
    columns: headings.map((heading) => ({ heading: String(heading), ...columns[String(heading)] })),
    rows: rules.map((rule) => rule.map(ruleCell)),
    frozenColumns: 2,
  });
}

/** Percentages are text with their sign, so that no spreadsheet takes 4 % for 0.04 or the other way round. */
function ruleCell(value: Cell): CellContent {
  if (typeof value === "number") return { value, format: "0.0" };
  if (typeof value !== "string") return {};
  return value.endsWith("%") ? { value, format: "@" } : plain(value);
}
