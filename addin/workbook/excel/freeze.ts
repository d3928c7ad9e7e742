import { sheetLimit } from "../address.ts";

export interface FreezePlace {
  readonly sheet: string;
  readonly rows: number;
  readonly columns: number;
}

/** How many rows and columns of sheets are frozen. */
export async function findFrozen(
  context: Excel.RequestContext,
  sheets: readonly string[],
): Promise<FreezePlace[]> {
  if (sheets.length === 0) return [];
  const found = sheets.map((sheet) => {
    const location = context.workbook.worksheets.getItem(sheet).freezePanes.getLocationOrNullObject();
    location.load(["rowCount", "columnCount"]);
    return { sheet, location };
  });
  await context.sync();
  return found.map(({ sheet, location }) =>
    location.isNullObject
      ? { sheet, rows: 0, columns: 0 }
      : {
          sheet,
          // Where only rows are frozen, Excel tells of whole rows, and likewise for columns.
          rows: location.rowCount >= sheetLimit.rows ? 0 : location.rowCount,
          columns: location.columnCount >= sheetLimit.columns ? 0 : location.columnCount,
        },
  );
}

export function putFrozen(sheet: Excel.Worksheet, rows: number, columns: number): void {
  if (rows > 0 && columns > 0) sheet.freezePanes.freezeAt(sheet.getRangeByIndexes(0, 0, rows, columns));
  else if (rows > 0) sheet.freezePanes.freezeRows(rows);
  else if (columns > 0) sheet.freezePanes.freezeColumns(columns);
  else sheet.freezePanes.unfreeze();
}
