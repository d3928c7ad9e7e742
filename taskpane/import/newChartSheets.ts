import type { LengthUnit } from "../../addin/measures/units.ts";
import type { SheetContent } from "../../addin/workbook/content.ts";
import { sameName } from "../../addin/workbook/names.ts";
import { freeName } from "../shell/freeName.ts";
import type { TakenNames } from "../shell/starterTable.ts";

/**
 * The sheets of a new measurement chart: the whole starter workbook, or, where any of its names is taken, the sheet of
 * figures alone under free names, since the formulas of the others go by the names of tables.
 */
export async function newChartSheets(unit: LengthUnit, taken: TakenNames): Promise<readonly SheetContent[]> {
  // A chunk of its own: asked for seldom.
  const { starterFigures, starterWorkbook } = await import("../../addin/demo/starterWorkbook.ts");
  const { sheets } = starterWorkbook(unit);
  const tables = sheets.flatMap(({ tables = [] }) => tables.map(({ name }) => name));
  const isFree = (names: readonly string[], among: readonly string[]): boolean =>
    !names.some((name) => among.some((each) => sameName(each, name)));
  if (
    isFree(
      sheets.map(({ name }) => name),
      taken.sheets,
    ) &&
    isFree(tables, taken.tables)
  )
    return sheets;
  const alone = starterFigures(unit);
  return [
    {
      ...alone,
      name: freeName(alone.name, taken.sheets),
      tables: (alone.tables ?? []).map((table) => ({
        ...table,
        name: freeName(table.name, taken.tables, "_"),
      })),
    },
  ];
}
