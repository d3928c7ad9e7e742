import { cellText } from "../../chart/cell.ts";
import type { SheetContent, TableContent } from "../content.ts";

/**
 * The headings of a table as a file must have them: text, none empty, no two alike in any case. Empty ones become
 * “Column1” and so on, and a number is put behind those that were there before, as spreadsheet programs do it.
 */
export function tableHeadings(table: TableContent, sheet: SheetContent): readonly string[] {
  const row = sheet.cells[table.row] ?? [];
  const taken = new Set<string>();
  return Array.from({ length: table.columns }, (_, i) => {
    const value = row[table.column + i]?.value;
    const text = typeof value === "string" ? value : cellText(value);
    const heading = distinct(text.trim() === "" ? `Column${String(i + 1)}` : text, taken);
    taken.add(heading.toLowerCase());
    return heading;
  });
}

function distinct(heading: string, taken: ReadonlySet<string>): string {
  const free = (n: number): string => {
    const name = n === 1 ? heading : heading + String(n);
    return taken.has(name.toLowerCase()) ? free(n + 1) : name;
  };
  return free(1);
}
