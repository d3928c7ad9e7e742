import type { IDisposable } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import {
  FormulaDataModel,
  FormulaExecuteStageType,
  IFunctionService,
  ISuperTableService,
  SetArrayFormulaDataMutation,
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
  SetTriggerFormulaCalculationStartMutation,
} from "@univerjs/engine-formula";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import { TableManager } from "@univerjs/sheets-table";
import * as z from "zod/mini";
import { cellText } from "../../chart/cell.ts";
import type { FormulaErrors } from "./formulaErrors.ts";
import type { GridUnit, Rectangle } from "./gridSheets.ts";
import { spilledIn, workbookOf } from "./gridSheets.ts";
import { toCell } from "./values.ts";

/** Changes of what formulas point at: cells move to other addresses, tables and sheets come, go, grow or get another name. */
const moving =
  /^sheet\.mutation\.(insert-|remove-(row|col|sheet)|move-|reorder|set-sheet-table|(add|delete)-table|set-worksheet-name|set-table-filter|set-row-(hidden|visible))/;

const calculation = z.object({ forceCalculation: z.literal(true) });
const progress = z.object({
  stageInfo: z.object({ stage: z.literal(FormulaExecuteStageType.CALCULATION_COMPLETED) }),
});

/**
 * Formulas follow whatever moves. The grid calculates anew only what it thinks touched, from formulas as they were read
 * when tables had another size, and with results that fill cells no longer, so that some would go on answering for
 * cells of before. After such a change all of them are read and calculated anew, and messages, which are kept by
 * address, are forgotten.
 */
export function renewFormulas(unit: GridUnit, errors: FormulaErrors): IDisposable {
  const commands = unit.injector.get(ICommandService);
  const functions = unit.injector.get(IFunctionService);
  const results = unit.injector.get(FormulaDataModel);
  let isAsked = false;
  let isRenewing = false;
  /** What filled cells before, while a calculation begins that must not see it. */
  let filled: { cells: Filled; areas: FilledAreas } | undefined;

  const ask = (): void => {
    if (isAsked) return;
    isAsked = true;
    // The command that this is a part of has to finish first.
    queueMicrotask(() => {
      isAsked = false;
      void commands.executeCommand(
        SetTriggerFormulaCalculationStartMutation.id,
        { commands: [], forceCalculation: true },
        { onlyLocal: true },
      );
    });
  };
  const before = commands.beforeCommandExecuted(({ id, params }) => {
    if (id === SetFormulaCalculationStartMutation.id) {
      isRenewing = calculation.safeParse(params).success;
      if (!isRenewing) return;
      renewTables(unit);
      // Every key of what was read holds the empty text.
      functions.deleteFormulaAstCacheKey("");
      errors.forgetAll();
      filled = { cells: results.getArrayFormulaCellData(), areas: results.getArrayFormulaRange() };
      fill({}, {});
    } else if (id === SetFormulaCalculationNotificationMutation.id && isRenewing) {
      // The results come right after this notice.
      if (progress.safeParse(params).success) fill({}, {});
    }
  });
  const fill = (cells: Filled, areas: FilledAreas): void => {
    results.setArrayFormulaCellData(cells);
    results.setArrayFormulaRange(areas);
  };
  let areas = filledAreas(unit);
  const after = commands.onCommandExecuted(({ id, params }, options) => {
    if (id === SetArrayFormulaDataMutation.id) {
      const before = areas;
      areas = filledAreas(unit);
      // What was calculated meanwhile may have read cells that are filled no longer.
      if (!isRenewing && shrinks(before, areas)) ask();
    }
    if (id === SetFormulaCalculationStartMutation.id && filled) {
      // Shown until there are others.
      fill(filled.cells, filled.areas);
      filled = undefined;
    }
    if (moving.test(id)) ask();
    else if (id === SetRangeValuesMutation.id && options?.applyFormulaCalculationResult !== true)
      if (isHeading(unit, params)) ask();
  });
  return {
    dispose: () => {
      before.dispose();
      after.dispose();
    },
  };
}

type Filled = ReturnType<FormulaDataModel["getArrayFormulaCellData"]>;
type FilledAreas = ReturnType<FormulaDataModel["getArrayFormulaRange"]>;

/** The area that each formula fills, by its sheet and cell. */
function filledAreas(unit: GridUnit): Map<string, Rectangle> {
  const sheets = workbookOf(unit)
    .getSheets()
    .map((sheet) => sheet.getSheetId());
  return new Map(
    sheets.flatMap((sheetId) =>
      spilledIn(unit, sheetId).areas.map((area): [string, Rectangle] => [
        `${sheetId}:${String(area.startRow)}:${String(area.startColumn)}`,
        area,
      ]),
    ),
  );
}

function shrinks(before: ReadonlyMap<string, Rectangle>, now: ReadonlyMap<string, Rectangle>): boolean {
  return [...before].some(([cell, area]) => {
    const left = now.get(cell);
    return !left || left.endRow < area.endRow || left.endColumn < area.endColumn;
  });
}

const written = z.object({
  subUnitId: z.string(),
  cellValue: z.record(z.string(), z.record(z.string(), z.unknown())),
});

/** True when the heading of a table is among what was written. */
function isHeading({ injector, unitId }: GridUnit, params: unknown): boolean {
  const { data } = written.safeParse(params);
  if (!data) return false;
  return injector
    .get(TableManager)
    .getTablesBySubunitId(unitId, data.subUnitId)
    .some((table) => {
      const { startRow, startColumn, endColumn } = table.getRange();
      const columns = Object.keys(data.cellValue[startRow] ?? {}).map(Number);
      return columns.some((column) => column >= startColumn && column <= endColumn);
    });
}

/** Formulas know tables by the area and the headings that they have now. The first of equal headings counts. */
function renewTables({ injector, unitId }: GridUnit): void {
  const workbook = workbookOf({ injector, unitId });
  const known = injector.get(ISuperTableService);
  const manager = injector.get(TableManager);
  const names = new Set<string>();
  for (const { id, subUnitId } of manager.getTableList(unitId)) {
    const table = manager.getTableById(unitId, id);
    const sheet = workbook.getSheetBySheetId(subUnitId);
    if (!table || !sheet) continue;
    const range = table.getRange();
    const titleMap = new Map<string, number>();
    for (let i = 0; i <= range.endColumn - range.startColumn; i++) {
      const heading = cellText(toCell(sheet.getCellRaw(range.startRow, range.startColumn + i)));
      const column = table.getTableColumnByIndex(i);
      if (column) column.displayName = heading;
      if (!titleMap.has(heading)) titleMap.set(heading, i);
    }
    const name = table.getDisplayName();
    names.add(name);
    known.registerTable(unitId, name, { range: { ...range }, sheetId: subUnitId, titleMap });
  }
  for (const name of [...(known.getTableMap(unitId)?.keys() ?? [])])
    if (!names.has(name)) known.remove(unitId, name);
}
