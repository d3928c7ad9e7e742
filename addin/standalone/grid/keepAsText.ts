import type { IDisposable, IWorkbookData } from "@univerjs/core";
import { CellValueType, ICommandService } from "@univerjs/core";
import { SetRangeValuesCommand, SetRangeValuesMutation } from "@univerjs/sheets";
import { cutText } from "../../workbook/cutText.ts";
import type { NotCalculated } from "../../workbook/keptFormula.ts";
import { notCalculated } from "../../workbook/keptFormula.ts";
import type { GridUnit } from "./gridSheets.ts";

/** Called with a formula that was typed, pasted or filled and is kept as text, and why. */
export type KeptAsText = (formula: string, why: NotCalculated) => void;

/** Keeps formulas that must not be calculated as text, whichever way they come into the sheet; so no text is too long. */
export function keepAsText({ injector }: GridUnit, tell: KeptAsText): IDisposable {
  return injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id !== SetRangeValuesCommand.id && id !== SetRangeValuesMutation.id) return;
    if (params && "value" in params) change(params.value, tell);
    if (params && "cellValue" in params) change(params.cellValue, tell);
  });
}

/** The same for a workbook that is about to open. Changes it where it stands. */
export function keepSnapshotAsText(snapshot: IWorkbookData): void {
  for (const sheet of Object.values(snapshot.sheets)) change(sheet.cellData, () => undefined);
}

/** Cells stand alone, in rows, or by row and column. */
function change(value: unknown, tell: KeptAsText): void {
  if (typeof value !== "object" || value === null) return;
  if (!("v" in value || "f" in value)) {
    for (const inner of Object.values(value)) change(inner, tell);
    return;
  }
  const cell: { v?: unknown; f?: unknown; si?: unknown; t?: unknown; p?: unknown } = value;
  const why = typeof cell.f === "string" ? notCalculated(cell.f) : undefined;
  if (why !== undefined) {
    tell(String(cell.f), why);
    Object.assign(cell, { v: cell.f, f: null, si: null, p: null, t: CellValueType.FORCE_STRING });
  }
  if (typeof cell.v === "string") cell.v = cutText(cell.v);
}
