import type { IWorkbookData, Plugin, PluginCtor } from "@univerjs/core";
import {
  EDITOR_ACTIVATED,
  ICommandService,
  IContextService,
  LifecycleService,
  LifecycleStages,
  LocaleService,
  LocaleType,
  LogLevel,
  mergeLocales,
  Univer,
  UniverInstanceType,
} from "@univerjs/core";
import { UniverSheetsConditionalFormattingPreset } from "@univerjs/preset-sheets-conditional-formatting";
import conditionalFormattingEnUS from "@univerjs/preset-sheets-conditional-formatting/locales/en-US";
import "@univerjs/preset-sheets-conditional-formatting/lib/index.css";
import { ILayoutService, UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import coreEnUS from "@univerjs/preset-sheets-core/locales/en-US";
import "@univerjs/preset-sheets-core/lib/index.css";
import { UniverSheetsDataValidationPreset } from "@univerjs/preset-sheets-data-validation";
import dataValidationEnUS from "@univerjs/preset-sheets-data-validation/locales/en-US";
import "@univerjs/preset-sheets-data-validation/lib/index.css";
import { UniverSheetsFilterPreset } from "@univerjs/preset-sheets-filter";
import filterEnUS from "@univerjs/preset-sheets-filter/locales/en-US";
import "@univerjs/preset-sheets-filter/lib/index.css";
import { UniverSheetsNotePreset } from "@univerjs/preset-sheets-note";
import noteEnUS from "@univerjs/preset-sheets-note/locales/en-US";
import "@univerjs/preset-sheets-note/lib/index.css";
import { UniverSheetsSortPreset } from "@univerjs/preset-sheets-sort";
import sortEnUS from "@univerjs/preset-sheets-sort/locales/en-US";
import "@univerjs/preset-sheets-sort/lib/index.css";
import { UniverSheetsTablePreset, UniverSheetsTableUIPlugin } from "@univerjs/preset-sheets-table";
import tableEnUS from "@univerjs/preset-sheets-table/locales/en-US";
import "@univerjs/preset-sheets-table/lib/index.css";
import { SheetRangeThemeModel } from "@univerjs/sheets";
import { CalculationMode } from "@univerjs/sheets-formula";
import { descriptors } from "../../../functions/all.ts";
import type { WorkbookContent } from "../../workbook/content.ts";
import type { ActiveCell } from "./activeCell.ts";
import { watchActiveCell } from "./activeCell.ts";
import { goToTyped } from "./addressBox.ts";
import { whenCalculated } from "./calculated.ts";
import { nameControls } from "./controls.ts";
import { completeMore } from "./completions.ts";
import { gridTheme } from "./gridTheme.ts";
import { fitRows } from "./fitRows.ts";
import { FormulaErrors } from "./formulaErrors.ts";
import { useFreshLexer } from "./freshLexer.ts";
import { functionHelp, gridFunctions } from "./gridFunctions.ts";
import type { GridWorkbook } from "./gridWorkbook.ts";
import { createGridWorkbook } from "./gridWorkbook.ts";
import { groupedUndoOverride } from "./groupedUndo.ts";
import { keepSnapshotAsText } from "./keepAsText.ts";
import { keepResults } from "./keepResults.ts";
import { tableLook } from "./tableLook.ts";
import { suggestOnly } from "./pickLists.ts";
import { printSheet } from "./printSheet.ts";
import { progressWords } from "./progressWords.ts";
import { toSnapshot } from "./toSnapshot.ts";
import { mendSheetTabs } from "./sheetTabs.ts";
import { keepToolbarStill } from "./stillToolbar.ts";
import { showVerdicts } from "./verdictsShown.ts";
import { keepKeyboardInBar, keepTyped, leaveKeyboard } from "./whileTyping.ts";

export interface OpenGrid {
  readonly workbook: GridWorkbook;
  /** Resolves when every formula has been calculated once, and the cells take what is typed. */
  readonly calculated: Promise<void>;
  /** Called with the selected cell whenever it is another, or shows another value. Returns the unsubscriber. */
  onCell(listener: (cell: ActiveCell | undefined) => void): () => void;
  /** Put the keyboard into the cells. */
  focus(): void;
  /** Whether something is being typed into a cell. */
  isTyping(): boolean;
  close(): void;
}

export interface GridOptions {
  readonly darkMode: boolean;
  /** The row of buttons above the sheet; too much for a narrow screen. */
  readonly toolbar: boolean;
}

/** Open a workbook in the grid, within an element of the page. */
export function openGrid(
  container: HTMLElement,
  opened: WorkbookContent | IWorkbookData,
  options: GridOptions,
): OpenGrid {
  const errors = new FormulaErrors();
  const univer = new Univer({
    theme: gridTheme,
    darkMode: options.darkMode,
    locale: LocaleType.EN_US,
    locales: {
      [LocaleType.EN_US]: mergeLocales(
        coreEnUS,
        tableEnUS,
        conditionalFormattingEnUS,
        sortEnUS,
        filterEnUS,
        noteEnUS,
        dataValidationEnUS,
      ),
    },
    logLevel: LogLevel.ERROR,
    override: groupedUndoOverride,
  });
  for (const [plugin, config] of pluginsFor(container, options, errors))
    univer.registerPlugin(plugin, config);

  const snapshot = "sheetOrder" in opened ? opened : toSnapshot(opened, "workbook");
  keepSnapshotAsText(snapshot);
  const injector = univer.__getInjector();
  injector.get(LocaleService).load({ [LocaleType.EN_US]: progressWords });
  useFreshLexer(injector);
  keepResults(injector);
  keepToolbarStill(injector);
  const commands = injector.get(ICommandService);
  // The cells hear of no key before, though the keyboard can be on them; without formulas nothing is waited for else.
  const takesKeys = injector.get(LifecycleService).onStage(LifecycleStages.Rendered);
  const calculated = Promise.all([whenCalculated(commands, snapshot), takesKeys]);
  univer.createUnit(UniverInstanceType.UNIVER_SHEET, snapshot);
  suggestOnly(injector);
  showVerdicts(injector);
  injector.get(SheetRangeThemeModel).registerDefaultRangeTheme(tableLook());
  const unit = { injector, unitId: snapshot.id };
  const workbook = createGridWorkbook(unit, errors, snapshot);
  keepTyped(injector);
  leaveKeyboard(injector);
  const bar = keepKeyboardInBar(injector);
  const controls = nameControls(container, injector);
  const printing = printSheet(container, unit);
  completeMore(unit);
  const box = goToTyped(container, unit, (area) => {
    const focus = (): void => {
      injector.get(ILayoutService).focus();
    };
    workbook.select(area).then(focus, focus);
  });

  const tabs = mendSheetTabs(container, unit);

  return {
    workbook,
    calculated: calculated.then(() => {
      if (!("sheetOrder" in opened)) fitRows(unit);
    }),
    onCell: (listener) => {
      const watching = watchActiveCell(unit, workbook, listener);
      return () => {
        watching.dispose();
      };
    },
    focus: () => {
      injector.get(ILayoutService).focus();
    },
    isTyping: () => injector.get(IContextService).getContextValue(EDITOR_ACTIVATED),
    close: () => {
      bar.dispose();
      box.dispose();
      controls.dispose();
      printing.dispose();
      tabs.dispose();
      workbook.close();
      univer.dispose();
    },
  };
}

type PluginEntry = [PluginCtor<Plugin>, ConstructorParameters<PluginCtor<Plugin>>[0]];

/** The plugins of all presets. Two presets may bring the same one; the last wins. */
function pluginsFor(container: HTMLElement, options: GridOptions, errors: FormulaErrors): PluginEntry[] {
  const presets = [
    UniverSheetsCorePreset({
      container,
      toolbar: options.toolbar,
      footer: { zoomSlider: false, menus: false },
      ribbonType: "simple",
      disableAutoFocus: true,
      formula: {
        function: gridFunctions(descriptors, errors),
        description: descriptors.map(functionHelp),
        initialFormulaComputing: CalculationMode.FORCED,
      },
    }),
    UniverSheetsTablePreset(),
    UniverSheetsConditionalFormattingPreset(),
    UniverSheetsSortPreset(),
    UniverSheetsFilterPreset(),
    UniverSheetsNotePreset(),
    // The box to search in would take the keyboard from the cell in the middle of a word.
    UniverSheetsDataValidationPreset({ showSearchOnDropdown: false }),
  ];
  const byName = new Map<string, PluginEntry>();
  for (const entry of presets.flatMap((preset) => preset.plugins)) {
    const [plugin, config] = Array.isArray(entry) ? entry : [entry, undefined];
    byName.set(plugin.pluginName, [plugin, config]);
  }
  // The handle above a table would hide what stands there.
  byName.set(UniverSheetsTableUIPlugin.pluginName, [UniverSheetsTableUIPlugin, { hideAnchor: true }]);
  return [...byName.values()];
}
