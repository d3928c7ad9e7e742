import type { Injector, ISheetDataValidationRule, Workbook } from "@univerjs/core";
import {
  DataValidationErrorStyle,
  DataValidationRenderMode,
  DataValidationType,
  generateRandomId,
  IUniverInstanceService,
  UniverInstanceType,
} from "@univerjs/core";
import {
  SheetDataValidationModel,
  SheetsDataValidationValidatorService,
} from "@univerjs/sheets-data-validation";
import { sameName } from "../../workbook/names.ts";
import type { PickListContent } from "../../workbook/content.ts";
import type { GridUnit } from "./gridSheets.ts";
import { tablesOf, toArea, toRectangle } from "./gridSheets.ts";

/** The name under which the grid keeps lists to choose from with a workbook. */
export const pickListResource = "SHEET_DATA_VALIDATION_PLUGIN";

/** A column of a table as a list names it. */
const ofColumn = /^=([^[\]]+)\[([^[\]]+)\]$/;

/** A list to choose from as the grid has it. */
export function toRule({ from, ...area }: PickListContent): ISheetDataValidationRule {
  return {
    uid: generateRandomId(),
    type: DataValidationType.LIST,
    ranges: [toRectangle(area)],
    formula1: "table" in from ? `=${from.table}[${from.heading}]` : from.join(","),
    allowBlank: true,
    renderMode: DataValidationRenderMode.ARROW,
    // Something else can be typed all the same.
    showErrorMessage: false,
    errorStyle: DataValidationErrorStyle.INFO,
  };
}

/** The lists of a sheet; of those that a user has made himself only such as a file can hold. */
export function pickListsOf(unit: GridUnit, sheetId: string): PickListContent[] {
  const rules = unit.injector.get(SheetDataValidationModel).getRules(unit.unitId, sheetId);
  return rules.flatMap((rule) => {
    const from = rule.type === DataValidationType.LIST ? sourceOf(unit, rule.formula1 ?? "") : undefined;
    if (!from) return [];
    return rule.ranges.map((range) => {
      const { row, column, rows, columns } = toArea("", range);
      return { row, column, rows, columns, from };
    });
  });
}

function sourceOf(unit: GridUnit, formula: string): PickListContent["from"] | undefined {
  if (!formula.startsWith("=")) return formula === "" ? undefined : formula.split(",");
  const [, name = "", heading = ""] = ofColumn.exec(formula) ?? [];
  const table = tablesOf(unit).find((each) => sameName(each.name, name));
  return table && { table: table.name, heading };
}

/**
 * Lets lists suggest and no more. The grid would go through every cell that has a list, to mark what is not on it, also after
 * the workbook was closed. Rules that a user has made with a message are looked after as they were.
 */
export function suggestOnly(injector: Injector): void {
  const checks = injector.get(SheetsDataValidationValidatorService);
  const model = injector.get(SheetDataValidationModel);
  const instances = injector.get(IUniverInstanceService);
  const check = checks.validatorRanges.bind(checks);
  checks.validatorRanges = async (unitId, sheetId, ranges) => {
    const isOpen = instances
      .getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET)
      ?.getSheetBySheetId(sheetId);
    const isChecked = model
      .getRules(unitId, sheetId)
      .some(({ showErrorMessage }) => showErrorMessage !== false);
    return isOpen && isChecked ? check(unitId, sheetId, ranges) : [];
  };
}
