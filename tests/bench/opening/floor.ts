/** The least that a page with this grid can take: the library with the parts that Measure Book uses, one cell, nothing of ours. */
import { LocaleType, LogLevel, mergeLocales, Univer, UniverInstanceType } from "@univerjs/core";
import { UniverSheetsConditionalFormattingPreset } from "@univerjs/preset-sheets-conditional-formatting";
import conditionalFormattingEnUS from "@univerjs/preset-sheets-conditional-formatting/locales/en-US";
import "@univerjs/preset-sheets-conditional-formatting/lib/index.css";
import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import coreEnUS from "@univerjs/preset-sheets-core/locales/en-US";
import "@univerjs/preset-sheets-core/lib/index.css";
import { UniverSheetsFilterPreset } from "@univerjs/preset-sheets-filter";
import filterEnUS from "@univerjs/preset-sheets-filter/locales/en-US";
import "@univerjs/preset-sheets-filter/lib/index.css";
import { UniverSheetsNotePreset } from "@univerjs/preset-sheets-note";
import noteEnUS from "@univerjs/preset-sheets-note/locales/en-US";
import "@univerjs/preset-sheets-note/lib/index.css";
import { UniverSheetsSortPreset } from "@univerjs/preset-sheets-sort";
import sortEnUS from "@univerjs/preset-sheets-sort/locales/en-US";
import "@univerjs/preset-sheets-sort/lib/index.css";
import { UniverSheetsTablePreset } from "@univerjs/preset-sheets-table";
import tableEnUS from "@univerjs/preset-sheets-table/locales/en-US";
import "@univerjs/preset-sheets-table/lib/index.css";
import { firstText } from "./firstText.ts";

const container = document.getElementById("root") ?? document.body;
const univer = new Univer({
  locale: LocaleType.EN_US,
  locales: {
    [LocaleType.EN_US]: mergeLocales(
      coreEnUS,
      tableEnUS,
      conditionalFormattingEnUS,
      sortEnUS,
      filterEnUS,
      noteEnUS,
    ),
  },
  logLevel: LogLevel.ERROR,
});
const presets = [
  UniverSheetsCorePreset({ container, ribbonType: "simple", disableAutoFocus: true }),
  UniverSheetsTablePreset(),
  UniverSheetsConditionalFormattingPreset(),
  UniverSheetsSortPreset(),
  UniverSheetsFilterPreset(),
  UniverSheetsNotePreset(),
];
const plugins = presets
  .flatMap((preset) => preset.plugins)
  .map((entry) => (Array.isArray(entry) ? entry : ([entry, undefined] as const)));
const byName = new Map(plugins.map((entry) => [entry[0].pluginName, entry]));
for (const [plugin, config] of byName.values()) univer.registerPlugin(plugin, config);
univer.createUnit(UniverInstanceType.UNIVER_SHEET, {
  id: "floor",
  sheetOrder: ["sheet"],
  sheets: { sheet: { id: "sheet", name: "Sheet", cellData: { 0: { 0: { v: firstText } } } } },
});
