import type { IWorkbookData } from "@univerjs/core";
import {
  ICommandService,
  IUniverInstanceService,
  LocaleType,
  LogLevel,
  Univer,
  UniverInstanceType,
} from "@univerjs/core";
import { UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import { UniverSheetsPlugin } from "@univerjs/sheets";
import { CalculationMode, UniverSheetsFormulaPlugin } from "@univerjs/sheets-formula";
import { UniverSheetsNotePlugin } from "@univerjs/sheets-note";
import { UniverSheetsTablePlugin } from "@univerjs/sheets-table";
import { nextCalculation } from "../../../addin/standalone/grid/calculated.ts";
import { FormulaErrors } from "../../../addin/standalone/grid/formulaErrors.ts";
import { useFreshLexer } from "../../../addin/standalone/grid/freshLexer.ts";
import { gridFunctions } from "../../../addin/standalone/grid/gridFunctions.ts";
import type { GridWorkbook } from "../../../addin/standalone/grid/gridWorkbook.ts";
import { createGridWorkbook } from "../../../addin/standalone/grid/gridWorkbook.ts";
import { groupedUndoOverride } from "../../../addin/standalone/grid/groupedUndo.ts";
import type { GridUnit } from "../../../addin/standalone/grid/gridSheets.ts";
import { toSnapshot } from "../../../addin/standalone/grid/toSnapshot.ts";
import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import type { FunctionDescriptor } from "../../../functions/descriptor.ts";

export interface HeadlessGrid {
  readonly workbook: GridWorkbook;
  readonly unit: GridUnit;
  /** Runs a command as a user’s hand would. */
  command(id: string, parameters: object): Promise<boolean>;
  /** Resolves when the formula engine has finished the next calculation. */
  calculated(): Promise<void>;
  close(): void;
}

/** The grid without its screen: the same engine, commands and undo list. */
export function openHeadless(
  opened: WorkbookContent | IWorkbookData,
  descriptors: readonly FunctionDescriptor[] = [],
): HeadlessGrid {
  const errors = new FormulaErrors();
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: {} },
    logLevel: LogLevel.ERROR,
    override: groupedUndoOverride,
  });
  univer.registerPlugin(UniverFormulaEnginePlugin, { function: gridFunctions(descriptors, errors) });
  univer.registerPlugin(UniverSheetsPlugin);
  univer.registerPlugin(UniverSheetsFormulaPlugin, { initialFormulaComputing: CalculationMode.FORCED });
  univer.registerPlugin(UniverSheetsTablePlugin);
  univer.registerPlugin(UniverSheetsNotePlugin);
  const snapshot = "sheetOrder" in opened ? opened : toSnapshot(opened, "workbook");
  const injector = univer.__getInjector();
  useFreshLexer(injector);
  univer.createUnit(UniverInstanceType.UNIVER_SHEET, snapshot);
  const unit = { injector, unitId: snapshot.id };
  injector.get(IUniverInstanceService).focusUnit(snapshot.id);
  const workbook = createGridWorkbook(unit, errors);
  return {
    workbook,
    unit,
    command: (id, parameters) => injector.get(ICommandService).executeCommand(id, parameters),
    calculated: () => nextCalculation(injector.get(ICommandService)),
    close: () => {
      workbook.close();
      univer.dispose();
    },
  };
}
