import type { Cells } from "../../../addin/chart/cell.ts";
import type { ComparedColumn } from "../../../addin/similarity/columns.ts";
import { columnsOfPart } from "../../../addin/similarity/columns.ts";
import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import type { FiguresToGroup, GroupsInput } from "../../../taskpane/groups/readGroups.ts";
import { readGroups } from "../../../taskpane/groups/readGroups.ts";
import { openBook } from "../../../taskpane/shell/book.ts";
import type { MemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { sheetOf } from "../fit/wardrobe.ts";

/** Invented figures; lengths in mm. Linnet, Dunnock and Pipit are alike, and so are Teal and Siskin. */
export const figures: Cells = [
  ["Figure", "Head", "Bust", "Waist", "Hip", "Note"],
  ["Teal", 150, 190, 155, 200, undefined],
  ["Linnet", 110, 135, 100, 140, undefined],
  ["Dunnock", 116, 136, 101, 142, "first mould"],
  ["Siskin", 151, 192, 154, 201, undefined],
  [undefined, undefined, undefined, undefined, undefined, undefined],
  ["Pipit", 110, 137, 101, 141, undefined],
  ["Wren", 80, 90, 70, 95, undefined],
  ["Dipper", 111, undefined, 100, 140, undefined],
];

export const tolerances: Cells = [
  ["Measure", "Tolerance", "Fitted clothes", "Loose clothes", "Hats"],
  ["Bust", 3, 2, 12, undefined],
  ["Waist", 2, 1.5, undefined, undefined],
  ["Hip", 3, 2, 12, undefined],
  ["Head", 3, undefined, undefined, 3],
];

export interface Grouped {
  readonly workbook: MemoryWorkbook;
  readonly input: GroupsInput;
  readonly figures: FiguresToGroup;
  readonly columns: readonly ComparedColumn[];
}

export function workbookOf(chart: Cells = figures, allowed: Cells = tolerances): WorkbookContent {
  return { sheets: [sheetOf("Figures", chart), sheetOf("Tolerances", allowed)] };
}

/** A workbook as the section Groups reads it. */
export async function grouped(content = workbookOf()): Promise<Grouped> {
  const workbook = createMemoryWorkbook(content);
  const input = await readGroups(openBook(workbook)(), {});
  if (!input.figures) throw new Error(input.failure ?? "There is nothing to group.");
  const { chart, tolerances: allowed, garments } = input.figures;
  const columns = columnsOfPart(chart, "body", { tolerances: allowed, garments });
  return { workbook, input, figures: input.figures, columns };
}
