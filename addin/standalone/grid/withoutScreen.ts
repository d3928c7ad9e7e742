import type { IWorkbookData } from "@univerjs/core";
import {
  ICommandService,
  IUniverInstanceService,
  LifecycleService,
  LifecycleStages,
  LocaleType,
  LogLevel,
  Univer,
  UniverInstanceType,
} from "@univerjs/core";
import { UniverDataValidationPlugin } from "@univerjs/data-validation";
import { UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import { UniverSheetsPlugin } from "@univerjs/sheets";
import { UniverSheetsDataValidationPlugin } from "@univerjs/sheets-data-validation";
import { CalculationMode, UniverSheetsFormulaPlugin } from "@univerjs/sheets-formula";
import { UniverSheetsNotePlugin } from "@univerjs/sheets-note";
import { UniverSheetsTablePlugin } from "@univerjs/sheets-table";
import type { FunctionDescriptor } from "../../../functions/descriptor.ts";
import type { WorkbookContent } from "../../workbook/content.ts";
import { nextCalculation, whenCalculated } from "./calculated.ts";
import { FormulaErrors } from "./formulaErrors.ts";
import { useFreshLexer } from "./freshLexer.ts";
import { gridFunctions } from "./gridFunctions.ts";
import type { GridUnit } from "./gridSheets.ts";
import type { GridWorkbook } from "./gridWorkbook.ts";
import { createGridWorkbook } from "./gridWorkbook.ts";
import { groupedUndoOverride } from "./groupedUndo.ts";
import { suggestOnly } from "./pickLists.ts";
import { keepResults } from "./keepResults.ts";
import { toSnapshot } from "./toSnapshot.ts";

export interface GridWithoutScreen {
  readonly workbook: GridWorkbook;
  readonly unit: GridUnit;
  /** Resolves when every formula has been calculated once. */
  readonly opened: Promise<void>;
  /** Runs a command as a user’s hand would. */
  command(id: string, parameters: object): Promise<boolean>;
  /** Resolves when the formula engine has finished the next calculation. */
  calculated(): Promise<void>;
  close(): void;
}

/** The grid without its screen: the same engine, commands and undo list. */
export function openWithoutScreen(
  source: WorkbookContent | IWorkbookData,
  descriptors: readonly FunctionDescriptor[] = [],
): GridWithoutScreen {
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
  univer.registerPlugin(UniverDataValidationPlugin);
  univer.registerPlugin(UniverSheetsDataValidationPlugin);
  const snapshot = "sheetOrder" in source ? source : toSnapshot(source, "workbook");
  const injector = univer.__getInjector();
  useFreshLexer(injector);
  keepResults(injector);
  const opened = whenCalculated(injector.get(ICommandService), snapshot);
  univer.createUnit(UniverInstanceType.UNIVER_SHEET, snapshot);
  suggestOnly(injector);
  // Formulas wait for the screen; there is none to wait for.
  injector.get(LifecycleService).stage = LifecycleStages.Rendered;
  const unit = { injector, unitId: snapshot.id };
  injector.get(IUniverInstanceService).focusUnit(snapshot.id);
  const workbook = createGridWorkbook(unit, errors, snapshot);
  return {
    workbook,
    unit,
    opened,
    command: (id, parameters) => injector.get(ICommandService).executeCommand(id, parameters),
    calculated: () => nextCalculation(injector.get(ICommandService)),
    close: () => {
      workbook.close();
      univer.dispose();
    },
  };
}
