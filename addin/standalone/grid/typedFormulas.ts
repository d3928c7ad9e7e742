import type { IDisposable } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import { SetRangeValuesCommand } from "@univerjs/sheets";
import * as z from "zod/mini";
import { areasMeet } from "../../workbook/address.ts";
import { toGridFormula } from "./gridFormula.ts";
import type { GridUnit } from "./gridSheets.ts";
import { tablesOf, workbookOf } from "./gridSheets.ts";

const place = z.object({
  subUnitId: z.optional(z.string()),
  range: z.optional(z.object({ startRow: z.number(), startColumn: z.number() })),
});

/** Lets users type `[@Bust]` in a formula, which the grid’s engine does not know. */
export function readTypedFormulas(unit: GridUnit): IDisposable {
  return unit.injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id !== SetRangeValuesCommand.id || params === undefined || !("value" in params)) return;
    const { value } = params;
    rewrite(value, () => tableAt(unit, params));
  });
}

/** Formulas stand in one cell, in rows of cells, or in cells by row and column; they are changed where they stand. */
function rewrite(value: unknown, table: () => string | undefined): void {
  if (typeof value !== "object" || value === null) return;
  if ("f" in value && typeof value.f === "string") {
    if (value.f.includes("[@")) value.f = toGridFormula(value.f, table());
    return;
  }
  for (const inner of Object.values(value)) rewrite(inner, table);
}

function tableAt(unit: GridUnit, params: object): string | undefined {
  const { subUnitId, range } = place.safeParse(params).data ?? {};
  const workbook = workbookOf(unit);
  const sheet = subUnitId === undefined ? workbook.getActiveSheet() : workbook.getSheetBySheetId(subUnitId);
  if (!sheet || !range) return undefined;
  const cell = { row: range.startRow, column: range.startColumn, rows: 1, columns: 1 };
  return tablesOf(unit).find(({ area }) => area.sheet === sheet.getName() && areasMeet(area, cell))?.name;
}
