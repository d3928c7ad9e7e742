import type { IDisposable } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import type { IInsertSheetMutationParams } from "@univerjs/sheets";
import { InsertSheetMutation } from "@univerjs/sheets";
import type { EditableUnit } from "./applyEdit.ts";
import { least } from "./toSnapshot.ts";

/** A result that does not fit on its sheet shows an error, so a sheet that the user adds gets the room of ours. */
export function roomyNewSheets({ injector, unitId }: EditableUnit): IDisposable {
  return injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id !== InsertSheetMutation.id || !isInsertion(params) || params.unitId !== unitId) return;
    params.sheet.rowCount = Math.max(least.rows, params.sheet.rowCount);
    params.sheet.columnCount = Math.max(least.columns, params.sheet.columnCount);
  });
}

function isInsertion(params: object | undefined): params is IInsertSheetMutationParams {
  return params !== undefined && "sheet" in params && "unitId" in params;
}
