import { useEffect, useState } from "react";
import type { PresentChart } from "../../addin/chart/import/importPlan.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { chartTables } from "../shell/chartTables.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { chartTable } from "./planEdits.ts";

/** The charts of the workbook, and the one that is imported into, as it stands now. */
export interface Destination {
  /** Those that can be charts. */
  readonly tables: readonly TableInfo[];
  readonly sheets: readonly string[];
  /** `undefined`: a new table will be made. */
  readonly table: TableInfo | undefined;
  readonly present: PresentChart | undefined;
  /** Why the table cannot be imported into, in words. */
  readonly obstacle: string | undefined;
}

/**
 * @param chosen name of the table to import into; without one, the table Figures where there is one
 * @returns `undefined` until the workbook has been read
 */
export function useDestination(chosen: string | undefined): Destination | undefined {
  const { workbook, version } = useSession();
  const [destination, setDestination] = useState<Destination>();
  useEffect(() => {
    let current = true;
    void readDestination().then((read) => {
      if (current) setDestination(read);
    });
    return () => {
      current = false;
    };

    async function readDestination(): Promise<Destination> {
      const nowhere = { tables: [], sheets: [], table: undefined, present: undefined };
      try {
        const all = await workbook.tables();
        const tables = chartTables(all);
        const sheets = await workbook.sheets();
        const name = (chosen ?? chartTable).toLowerCase();
        const table = all.find((t) => t.name.toLowerCase() === name);
        if (!table) return { ...nowhere, tables, sheets, obstacle: undefined };
        const { values, formats } = await workbook.readTable(table.name);
        try {
          const chart = readChart(values, { formats });
          return { tables, sheets, table, present: { cells: values, chart }, obstacle: undefined };
        } catch (error) {
          const why = `The table ${table.name} cannot be added to: ${failureText(error)}`;
          return { tables, sheets, table, present: undefined, obstacle: why };
        }
      } catch (error) {
        return { ...nowhere, obstacle: failureText(error) };
      }
    }
  }, [workbook, version, chosen]);
  return destination;
}
