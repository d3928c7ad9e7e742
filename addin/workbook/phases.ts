import { areasMeet } from "./address.ts";
import { widest } from "./checkEdits.ts";
import { sameName } from "./names.ts";
import type { Area, Edit } from "./port.ts";

/**
 * Edits cut into stretches within which every address means the same before and after: an edit that names
 * cells of a sheet starts a new stretch when an earlier one has added that sheet or made one of its tables
 * grow (which moves what stands below or beside it); so does one that names a table just made, one that
 * makes a table grow on a sheet where cells were just written or moved, and one that writes over cells just written.
 * What the edits of a stretch touch can then be saved in one go before the first of them is applied.
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
  const moved = unsettledSheets(earlier, sheetOf);
  if (edit.kind === "rows" || edit.kind === "column") {
    if (tablesMade(earlier).some((name) => sameName(name, edit.table))) return true;
    if (earlier.kind === "column" && edit.kind === "column") return false;
    const sheet = sheetOf(edit.table);
    const changed = earlier.kind === "cells" ? [earlier.at.sheet] : earlier.kind === "sheet" ? [] : moved;
    if (changed === "any" || (sheet === undefined && changed.length > 0)) return true;
    return sheet !== undefined && changed.some((name) => sameName(name, sheet));
  }
  if (edit.kind === "cells" && earlier.kind === "cells" && sameName(edit.at.sheet, earlier.at.sheet)) {
    return areasMeet(areaWritten(edit), areaWritten(earlier));
  }
  return sheetsNamed(edit).some((sheet) => moved === "any" || moved.some((name) => sameName(name, sheet)));
}

function areaWritten({ at, cells }: Extract<Edit, { kind: "cells" }>): Area {
  return { ...at, rows: cells.length, columns: widest(cells) };
}

function unsettledSheets(
  edit: Edit,
  sheetOf: (table: string) => string | undefined,
): readonly string[] | "any" {
  return edit.kind === "sheet" ? [edit.sheet.name] : movesCellsOn(edit, sheetOf);
}

/** The sheets on which an edit moves cells to make room; `"any"` where that cannot be told beforehand. */
export function movesCellsOn(
  edit: Edit,
  sheetOf: (table: string) => string | undefined,
): readonly string[] | "any" {
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
