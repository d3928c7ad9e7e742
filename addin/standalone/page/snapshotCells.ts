import type { ICellData, IStyleData, IWorkbookData, Nullable } from "@univerjs/core";
import type { Area } from "../../workbook/port.ts";
import type { StoredCells } from "../../workbook/readCells.ts";
import type { KeptResults } from "../grid/keptResults.ts";
import { resultsName } from "../grid/keptResults.ts";
import { formatOf, toCell } from "../grid/values.ts";

type Rows<T> = Readonly<Record<number, Readonly<Record<number, T>>>>;

interface KeptTable {
  readonly name: string;
  readonly range: {
    readonly startRow: number;
    readonly endRow: number;
    readonly startColumn: number;
    readonly endColumn: number;
  };
}

/** What stands in the cells of a kept workbook, checked by `fromKeptText`, without the grid. */
export function snapshotCells(snapshot: IWorkbookData): StoredCells {
  const sheets = snapshot.sheetOrder.map((id) => ({ id, sheet: snapshot.sheets[id] }));
  const idOf = new Map(sheets.map(({ id, sheet }) => [sheet?.name ?? "", id]));
  const results = resource<KeptResults>(snapshot, resultsName);
  const tables =
    resource<Record<string, KeptTable[] | { tables: KeptTable[] }>>(snapshot, "SHEET_TABLE_PLUGIN") ?? {};
  return {
    sheets: [...idOf.keys()],
    tables: sheets.flatMap(({ id, sheet }) => {
      const kept = tables[id] ?? [];
      return (Array.isArray(kept) ? kept : kept.tables).map(({ name, range }) => ({
        name,
        area: areaOf(sheet?.name ?? "", range),
      }));
    }),
    at: (name, row, column) => {
      const id = idOf.get(name) ?? "";
      const rows = snapshot.sheets[id]?.cellData as Rows<Nullable<ICellData>> | undefined;
      const cell = rows?.[row]?.[column];
      const value = toCell(results?.cells[id]?.[row]?.[column] ?? cell);
      const format = formatOf(styleOf(snapshot, cell));
      if (value === undefined && format === undefined) return undefined;
      return { ...(value !== undefined && { value }), ...(format !== undefined && { format }) };
    },
  };
}

/** Preferences that were kept with the workbook, by their keys. */
export function snapshotPreferences({ custom }: IWorkbookData): Readonly<Record<string, unknown>> {
  const kept: unknown = custom?.preferences;
  return typeof kept === "object" && kept !== null ? { ...kept } : {};
}

function styleOf({ styles }: IWorkbookData, cell: Nullable<ICellData>): Nullable<IStyleData> {
  return typeof cell?.s === "string" ? styles[cell.s] : cell?.s;
}

function resource<T>({ resources }: IWorkbookData, name: string): T | undefined {
  const data = resources?.find((each) => each.name === name)?.data;
  return data ? (JSON.parse(data) as T) : undefined;
}

function areaOf(sheet: string, { startRow, endRow, startColumn, endColumn }: KeptTable["range"]): Area {
  return {
    sheet,
    row: startRow,
    column: startColumn,
    rows: endRow - startRow + 1,
    columns: endColumn - startColumn + 1,
  };
}
