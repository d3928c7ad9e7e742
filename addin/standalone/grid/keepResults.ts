import type { Injector } from "@univerjs/core";
import { IResourceManagerService, UniverInstanceType } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { KeptResults } from "./keptResults.ts";
import { resultsName } from "./keptResults.ts";

/**
 * Keeps what formulas fill together with the workbook, so that it can be shown as it was before anything is calculated. The grid
 * keeps only what stands in the formulas’ own cells. Everything is calculated anew all the same.
 */
export function keepResults(injector: Injector): void {
  const model = injector.get(FormulaDataModel);
  injector.get(IResourceManagerService).registerPluginResource<KeptResults>({
    pluginName: resultsName,
    businesses: [UniverInstanceType.UNIVER_SHEET],
    toJson: (unitId) => {
      const cells = model.getArrayFormulaCellData()[unitId] ?? {};
      return JSON.stringify({ cells, areas: model.getArrayFormulaRange()[unitId] ?? {} });
    },
    parseJson: (text) => JSON.parse(text) as KeptResults,
    onLoad: (unitId, { cells, areas }) => {
      model.setArrayFormulaCellData({ ...model.getArrayFormulaCellData(), [unitId]: cells });
      model.setArrayFormulaRange({ ...model.getArrayFormulaRange(), [unitId]: areas });
    },
    onUnLoad: () => undefined,
  });
}
