import type { IDisposable } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import { SetSelectionsOperation } from "@univerjs/sheets";
import { cellText } from "../../chart/cell.ts";
import { cellName } from "../../workbook/address.ts";
import type { GridUnit } from "./gridSheets.ts";
import { spilledIn, workbookOf } from "./gridSheets.ts";
import type { GridWorkbook } from "./gridWorkbook.ts";
import { selectedCell } from "./gridWorkbook.ts";
import { toCell } from "./values.ts";

/** The selected cell; of an area, the one that is typed into. */
export interface ActiveCell {
  readonly sheet: string;
  /** For example B4. */
  readonly cell: string;
  /** What the cell shows; empty where it shows nothing. */
  readonly shown: string;
  /** The message behind an error value. */
  readonly problem: string | undefined;
}

/** Tells of every change of the selected cell: another one, another value, another error. */
export function watchActiveCell(
  unit: GridUnit,
  workbook: GridWorkbook,
  listener: (cell: ActiveCell | undefined) => void,
): IDisposable {
  const tell = (): void => {
    listener(read(unit, workbook));
  };
  return unit.injector.get(ICommandService).onCommandExecuted(({ id }) => {
    // Calculations may give the selected cell another value or error, or none.
    if (id === SetSelectionsOperation.id || id.startsWith("sheet.mutation.")) queueMicrotask(tell);
  });
}

function read(unit: GridUnit, workbook: GridWorkbook): ActiveCell | undefined {
  const at = selectedCell(unit);
  const sheet = at && workbookOf(unit).getSheetBySheetName(at.sheet);
  if (!sheet) return undefined;
  const { row, column } = at;
  const spilled = spilledIn(unit, sheet.getSheetId()).get(row, column);
  // What the sheet gives is formatted as the cell shows it.
  const shown = spilled ? cellText(toCell(spilled)) : String(sheet.getCell(row, column)?.v ?? "");
  return { sheet: at.sheet, cell: cellName(row, column), shown, problem: workbook.errorAt(at) };
}
