import type { IDataValidationRuleBase, IDisposable, IMutationInfo } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import { getRuleSetting, UpdateDataValidationMutation, UpdateRuleType } from "@univerjs/data-validation";
import { SetRangeValuesCommand, SetRangeValuesMutation } from "@univerjs/sheets";
import { SheetDataValidationModel } from "@univerjs/sheets-data-validation";
import { TableManager } from "@univerjs/sheets-table";
import * as z from "zod/mini";
import { cellText } from "../../chart/cell.ts";
import type { CellAddress } from "../../workbook/port.ts";
import type { EditableUnit } from "./applyEdit.ts";
import { canBeNamed, withColumnNames } from "./columnNames.ts";
import { filledCells } from "./fromGrid.ts";
import { sheetOf, workbookOf } from "./gridSheets.ts";
import { toCell } from "./values.ts";

/** A heading that was changed to one by which formulas cannot name its column. */
export interface LostHeading {
  readonly table: string;
  readonly heading: string;
  /** What stands there now. */
  readonly now: string;
  /** Where the heading stands. */
  readonly at: CellAddress;
  /** Cells with formulas that name the column; at least one. */
  readonly formulas: readonly CellAddress[];
}

const written = z.object({
  unitId: z.string(),
  subUnitId: z.string(),
  cellValue: z.record(z.string(), z.record(z.string(), z.unknown())),
});

type Table = ReturnType<TableManager["getTablesBySubunitId"]>[number];

/**
 * Formulas that name a column of a table follow when its heading is changed, as in Excel, in one step with it.
 *
 * @param tell called where they cannot
 */
export function followHeadings(unit: EditableUnit, tell: (lost: LostHeading) => void): IDisposable {
  const commands = unit.injector.get(ICommandService);
  const before = new Map<Table, readonly string[]>();
  const follow = (): void => {
    const changed = [...before];
    before.clear();
    for (const [table, headings] of changed) followOne(unit, table, headings, tell);
  };
  return commands.beforeCommandExecuted(({ id, params }, options) => {
    // Undo and redo bring back by themselves what formulas named.
    if (id !== SetRangeValuesMutation.id || unit.undo.isRunning) return;
    if (options?.applyFormulaCalculationResult === true) return;
    for (const table of tablesWritten(unit, params)) {
      if (before.has(table)) continue;
      // The command that this is a part of has to finish first.
      if (before.size === 0) queueMicrotask(follow);
      before.set(table, headingsOf(unit, table));
    }
  });
}

/** Tables of whose headings something is written. */
function tablesWritten({ injector, unitId }: EditableUnit, params: unknown): Table[] {
  const { data } = written.safeParse(params);
  if (data?.unitId !== unitId) return [];
  return injector
    .get(TableManager)
    .getTablesBySubunitId(unitId, data.subUnitId)
    .filter((table) => {
      const { startRow, startColumn, endColumn } = table.getRange();
      const columns = Object.keys(data.cellValue[startRow] ?? {}).map(Number);
      return columns.some((column) => column >= startColumn && column <= endColumn);
    });
}

function headingsOf(unit: EditableUnit, table: Table): string[] {
  const sheet = workbookOf(unit).getSheetBySheetId(table.getSubunitId());
  const { startRow, startColumn, endColumn } = table.getRange();
  return Array.from({ length: endColumn - startColumn + 1 }, (_, i) =>
    cellText(toCell(sheet?.getCellRaw(startRow, startColumn + i))),
  );
}

function followOne(
  unit: EditableUnit,
  table: Table,
  before: readonly string[],
  tell: (lost: LostHeading) => void,
): void {
  const now = headingsOf(unit, table);
  // Where headings are equal, formulas mean the first of them.
  const changed = before.flatMap((heading, i) =>
    heading !== (now[i] ?? "") && before.indexOf(heading) === i && heading !== "" ? [i] : [],
  );
  if (changed.length === 0) return;
  const name = table.getDisplayName();
  const isAlone = (heading: string): boolean => now.filter((other) => other === heading).length === 1;
  const followed = changed.filter((i) => canBeNamed(now[i] ?? "") && isAlone(now[i] ?? ""));
  rewrite(unit, name, new Map(followed.map((i) => [before[i] ?? "", now[i] ?? ""])));

  const sheet = workbookOf(unit).getSheetBySheetId(table.getSubunitId());
  const { startRow, startColumn } = table.getRange();
  for (const i of changed.filter((each) => !followed.includes(each))) {
    const heading = before[i] ?? "";
    const taken = now[i] ?? "";
    // By a heading that another column has too, formulas would mean the first of both.
    const formulas = formulasThatName(unit, name, new Map([heading, taken].map((each) => [each, ""])));
    if (formulas.length === 0) continue;
    const at = { sheet: sheet?.getName() ?? "", row: startRow, column: startColumn + i };
    tell({ table: name, heading, now: taken, at, formulas: formulas.map((each) => each.at) });
  }
}

function formulasThatName(unit: EditableUnit, table: string, names: ReadonlyMap<string, string>) {
  return filledCells(unit).flatMap(({ at, holds, isFormula }) => {
    if (!isFormula || typeof holds !== "string") return [];
    const renamed = withColumnNames(holds, table, names);
    return renamed === holds ? [] : [{ at, renamed }];
  });
}

function rewrite(unit: EditableUnit, table: string, names: ReadonlyMap<string, string>): void {
  if (names.size === 0) return;
  const bySheet = new Map<string, Record<number, Record<number, object>>>();
  for (const { at, renamed } of formulasThatName(unit, table, names)) {
    const cells = bySheet.get(at.sheet) ?? {};
    bySheet.set(at.sheet, cells);
    (cells[at.row] ??= {})[at.column] = { f: renamed, si: null };
  }
  const { injector, unitId, undo } = unit;
  const commands = injector.get(ICommandService);
  undo.extendLast(unitId, () => {
    for (const [sheet, value] of bySheet)
      void commands.executeCommand(SetRangeValuesCommand.id, {
        unitId,
        subUnitId: sheetOf(unit, sheet).getSheetId(),
        // Asked for, though the cells are named one by one.
        range: { startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 },
        value,
      });
    for (const [subUnitId, rules] of injector.get(SheetDataValidationModel).getUnitRules(unitId))
      for (const rule of rules) {
        const formula1 = withColumnNames(rule.formula1 ?? "", table, names);
        if (formula1 === (rule.formula1 ?? "")) continue;
        const settingTo = (setting: IDataValidationRuleBase): IMutationInfo => ({
          id: UpdateDataValidationMutation.id,
          params: {
            unitId,
            subUnitId,
            ruleId: rule.uid,
            payload: { type: UpdateRuleType.SETTING, payload: setting },
          },
        });
        // The grid’s own command refuses columns of tables.
        const before = getRuleSetting(rule);
        const [now, back] = [settingTo({ ...before, formula1 }), settingTo(before)];
        commands.syncExecuteCommand(now.id, now.params);
        undo.pushUndoRedo({ unitID: unitId, undoMutations: [back], redoMutations: [now] });
      }
  });
}
