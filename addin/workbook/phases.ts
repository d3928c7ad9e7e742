import { areasMeet } from "./address.ts";
import { widest } from "./checkEdits.ts";
import { sameName } from "./names.ts";
import type { Area, Edit } from "./port.ts";

/**
 * Edits cut into stretches within which every address means the same before and after: an edit that names
 * cells of a sheet starts a new stretch when an earlier one has added that sheet or made one of its tables
 * grow (which moves what stands below or beside it); so does one that names a table just made, and one that
 * writes over cells just written. What the
 * edits of a stretch touch can then be saved in one go before the first of them is applied.
 *
 * @param sheetOf the sheet that a table is on, `undefined` when the edits themselves make the table
 */
export function phases(
  edits: readonly Edit[],
  sheetOf: (table: string) => string | undefined,
): readonly (readonly Edit[])[] {
  return edits.reduce<readonly (readonly Edit[])[]>((done, edit) => {
    const last = done.at(-1);
    if (!last || last.some((earlier) => unsettles(earlier, edit, sheetOf))) return [...done, [edit]];
    return [...done.slice(0, -1), [...last, edit]];
  }, []);
}

function unsettles(earlier: Edit, edit: Edit, sheetOf: (table: string) => string | undefined): boolean {
  if (edit.kind === "rows" || edit.kind === "column") {
    return tablesMade(earlier).some((name) => sameName(name, edit.table));
  }
  if (edit.kind === "cells" && earlier.kind === "cells" && sameName(edit.at.sheet, earlier.at.sheet)) {
    return areasMeet(areaWritten(edit), areaWritten(earlier));
  }
  const moved = unsettledSheets(earlier, sheetOf);
  return sheetsNamed(edit).some((sheet) => moved === "any" || moved.some((name) => sameName(name, sheet)));
}

function areaWritten({ at, cells }: Extract<Edit, { kind: "cells" }>): Area {
  return { ...at, rows: cells.length, columns: widest(cells) };
}

function unsettledSheets(
  edit: Edit,
  sheetOf: (table: string) => string | undefined,
): readonly string[] | "any" {
  if (edit.kind === "sheet") return [edit.sheet.name];
  if (edit.kind !== "rows" && edit.kind !== "column") return [];
  const sheet = sheetOf(edit.table);
  return sheet === undefined ? "any" : [sheet];
}

function tablesMade(edit: Edit): readonly string[] {
  if (edit.kind === "table") return [edit.name];
  return edit.kind === "sheet" ? (edit.sheet.tables ?? []).map((table) => table.name) : [];
}

function sheetsNamed(edit: Edit): readonly string[] {
  switch (edit.kind) {
    case "cells":
    case "note":
      return [edit.at.sheet];
    case "table":
      return [edit.area.sheet];
    case "mark":
      return edit.cells.map((cell) => cell.sheet);
    case "freeze":
      return [edit.sheet];
    default:
      return [];
  }
}
