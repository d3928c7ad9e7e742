import type { Worksheet } from "@univerjs/core";
import { ICommandService, WrapStrategy } from "@univerjs/core";
import { SheetInterceptorService } from "@univerjs/sheets";
import type { GridUnit, Rectangle } from "./gridSheets.ts";
import { styleOf, workbookOf } from "./gridSheets.ts";

const usualFontSize = 11;

/** Give rows the height that their text needs, where it is large or goes over several lines. */
export function fitRows(unit: GridUnit): void {
  const commands = unit.injector.get(ICommandService);
  const interceptors = unit.injector.get(SheetInterceptorService);
  for (const sheet of workbookOf(unit).getSheets()) {
    const ranges = tallRows(unit, sheet);
    if (ranges.length === 0) continue;
    const { redos } = interceptors.generateMutationsOfAutoHeight({
      unitId: unit.unitId,
      subUnitId: sheet.getSheetId(),
      ranges,
      autoHeightRanges: ranges,
    });
    for (const { id, params } of redos) commands.syncExecuteCommand(id, params);
  }
}

function tallRows(unit: GridUnit, sheet: Worksheet): Rectangle[] {
  const rows = new Set<number>();
  sheet.getCellMatrix().forValue((row, _, cell) => {
    const style = styleOf(unit, cell);
    if (style?.tb === WrapStrategy.WRAP || (style?.fs ?? usualFontSize) > usualFontSize) rows.add(row);
  });
  const endColumn = sheet.getColumnCount() - 1;
  return [...rows].map((row) => ({ startRow: row, endRow: row, startColumn: 0, endColumn }));
}
