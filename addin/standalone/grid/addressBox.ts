import type { IDisposable } from "@univerjs/core";
import { cellNamed } from "../../workbook/address.ts";
import type { Area } from "../../workbook/port.ts";
import type { GridUnit } from "./gridSheets.ts";
import { sheetNames, tablesOf } from "./gridSheets.ts";

/** The box above the sheet that shows the address of the selected cell. */
export const addressBox = "[data-u-comp=defined-name] input";

/**
 * Lets the box above the sheet go to cells of other sheets (`Fit!B3`, `'My chart'!A1:B2`) and to tables by their name. The
 * grid takes the cells of the sheet in sight instead, and gives the name of a table to the selected cell.
 *
 * @param goTo selects the area, and gives the keyboard back to the cells
 */
export function goToTyped(container: HTMLElement, unit: GridUnit, goTo: (area: Area) => void): IDisposable {
  const pressed = (event: KeyboardEvent): void => {
    if (event.key !== "Enter" || !(event.target instanceof HTMLInputElement)) return;
    if (!event.target.matches(addressBox)) return;
    const area = areaTyped(unit, event.target.value.trim());
    if (!area) return;
    event.preventDefault();
    event.stopPropagation();
    goTo(area);
  };
  // Before the grid hears of it.
  container.addEventListener("keydown", pressed, { capture: true });
  return {
    dispose: () => {
      container.removeEventListener("keydown", pressed, { capture: true });
    },
  };
}

/** The area that an address with a sheet, or the name of a table, stands for. */
export function areaTyped(unit: GridUnit, typed: string): Area | undefined {
  const same = (name: string, other: string): boolean => name.toLowerCase() === other.toLowerCase();
  const table = tablesOf(unit).find(({ name }) => same(name, typed));
  if (table) return table.area;
  const [, quoted, bare = "", first = "", last = first] =
    /^(?:'((?:[^']|'')+)'|([^'!]+))!(\$?[a-z]+\$?\d+)(?::(\$?[a-z]+\$?\d+))?$/i.exec(typed) ?? [];
  const wanted = quoted?.replaceAll("''", "'") ?? bare;
  const sheet = sheetNames(unit).find((name) => same(name, wanted));
  const [a, b] = [first, last].map(cellNamed);
  if (sheet === undefined || !a || !b) return undefined;
  const [row, column] = [Math.min(a.row, b.row), Math.min(a.column, b.column)];
  return {
    sheet,
    row,
    column,
    rows: Math.abs(a.row - b.row) + 1,
    columns: Math.abs(a.column - b.column) + 1,
  };
}
