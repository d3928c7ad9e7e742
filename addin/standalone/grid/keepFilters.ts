import type { IDisposable, IWorkbookData } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import { TableManager } from "@univerjs/sheets-table";
import * as z from "zod/mini";
import type { GridUnit } from "./gridSheets.ts";

const saved = z.record(z.string(), z.looseObject({ tableFilteredOutRows: z.optional(z.array(z.number())) }));

/** Rows come to other places. */
const movingRows = /^sheet\.mutation\.((insert|remove)-rows?|move-|reorder)/;
const onSheet = z.object({ unitId: z.string(), subUnitId: z.string() });

/**
 * Keeps out of sight the rows that a filter of a table has taken out of sight, no more and no fewer. The grid goes on
 * hiding rows by their number when others are inserted above, and filters anew when a workbook is opened, so that
 * formulas that leave out hidden rows would give something else than before.
 *
 * @param opened the workbook as it was opened
 */
export function keepFilters(unit: GridUnit, opened: IWorkbookData): IDisposable {
  restore(unit, opened);
  const asked = new Set<string>();
  return unit.injector.get(ICommandService).onCommandExecuted(({ id, params }) => {
    if (!movingRows.test(id)) return;
    const { data } = onSheet.safeParse(params);
    if (data?.unitId !== unit.unitId || asked.has(data.subUnitId)) return;
    asked.add(data.subUnitId);
    // The command that this is a part of has to finish first.
    queueMicrotask(() => {
      asked.delete(data.subUnitId);
      for (const table of filtered(unit, data.subUnitId)) table.again();
    });
  });
}

/** Tables with a filter, and the way to filter them again. */
function filtered({ injector, unitId }: GridUnit, sheetId: string) {
  const manager = injector.get(TableManager);
  return manager.getTablesBySubunitId(unitId, sheetId).flatMap((table) => {
    const filters = table.getTableFilters();
    const { startColumn, endColumn } = table.getRange();
    for (let i = 0; i <= endColumn - startColumn; i++) {
      const filter = filters.getColumnFilter(i);
      if (!filter) continue;
      const again = (): void => {
        manager.addFilter(unitId, table.getId(), i, filter);
      };
      return [{ filters, range: table.getRange(), again }];
    }
    return [];
  });
}

function restore(unit: GridUnit, opened: IWorkbookData): void {
  const text = opened.resources?.find(({ name }) => name === "SHEET_TABLE_PLUGIN")?.data;
  const { data } = saved.safeParse(text ? JSON.parse(text) : {});
  for (const [sheetId, { tableFilteredOutRows }] of Object.entries(data ?? {})) {
    if (!tableFilteredOutRows) continue;
    for (const { filters, range, again } of filtered(unit, sheetId)) {
      const { startRow, endRow } = range;
      const rows = new Set(tableFilteredOutRows.filter((row) => row >= startRow && row <= endRow));
      const filterAnew = filters.doFilter.bind(filters);
      let isRestoring = true;
      filters.getFilterOutRows = () => rows;
      filters.doFilter = (...given) => {
        if (isRestoring) return rows;
        Reflect.deleteProperty(filters, "getFilterOutRows");
        Reflect.deleteProperty(filters, "doFilter");
        return filterAnew(...given);
      };
      again();
      isRestoring = false;
    }
  }
}
