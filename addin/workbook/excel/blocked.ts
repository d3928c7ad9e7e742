import { InputError } from "../../measures/inputError.ts";
import { sameName } from "../names.ts";
import type { Edit, TableInfo } from "../port.ts";

/**
 * Refuse edits that a protection would break off half-way, before anything is written.
 *
 * @throws {InputError} naming what is protected
 */
export async function refuseProtected(
  context: Excel.RequestContext,
  edits: readonly Edit[],
  known: { readonly sheets: readonly string[]; readonly tables: readonly TableInfo[] },
): Promise<void> {
  const names = known.sheets.filter((sheet) =>
    edits.some((edit) => sheetsWritten(edit, known.tables).some((name) => sameName(name, sheet))),
  );
  const sheets = names.map((name) => {
    const { protection } = context.workbook.worksheets.getItem(name);
    protection.load("protected");
    return { name, protection };
  });
  const structure = context.workbook.protection;
  structure.load("protected");
  await context.sync();
  const [closed] = sheets.filter(({ protection }) => protection.protected);
  if (closed) {
    throw new InputError(
      `The sheet “${closed.name}” is protected. Take its protection off under Review, then try again.`,
    );
  }
  if (structure.protected && edits.some((edit) => edit.kind === "sheet")) {
    throw new InputError(
      "The structure of the workbook is protected, so that no sheet can be added or removed. Take the protection off under Review, then try again.",
    );
  }
}

function sheetsWritten(edit: Edit, tables: readonly TableInfo[]): readonly string[] {
  switch (edit.kind) {
    case "cells":
    case "note":
      return [edit.at.sheet];
    case "table":
      return [edit.area.sheet];
    case "rows":
    case "column":
      return tables.flatMap(({ name, area }) => (sameName(name, edit.table) ? [area.sheet] : []));
    case "mark":
      return edit.cells.map((cell) => cell.sheet);
    case "freeze":
      return [edit.sheet];
    case "sheet":
      return [];
  }
}
