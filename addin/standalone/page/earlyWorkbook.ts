import type { IWorkbookData } from "@univerjs/core";
import { tableNamed } from "../../workbook/existing.ts";
import type { WorkbookContent } from "../../workbook/content.ts";
import type { Workbook, WorkbookChange } from "../../workbook/port.ts";
import type { StoredCells } from "../../workbook/readCells.ts";
import { contentCells, readStored, storedTables } from "../../workbook/readCells.ts";
import { snapshotCells, snapshotPreferences } from "./snapshotCells.ts";

export interface EarlyWorkbook {
  /** The port, from now on. */
  readonly workbook: Workbook;
  /** From here on the port is that of the sheet. */
  opened(sheet: Workbook): void;
  /** The sheet is calculated. */
  ready(): void;
}

/**
 * The port on a workbook before a sheet shows it, so that the pane need not wait for the grid: what is asked is read from what is
 * stored, what changes or selects waits for the sheet. Subscribers hear of all that the sheet then finds otherwise.
 */
export function earlyWorkbook(source: WorkbookContent | IWorkbookData): EarlyWorkbook {
  const stored = "sheetOrder" in source ? snapshotCells(source) : contentCells(source);
  const preferences = "sheetOrder" in source ? snapshotPreferences(source) : {};
  const listeners = new Set<(change: WorkbookChange) => void>();
  let sheet: Workbook | undefined;
  let arrived: (workbook: Workbook) => void = () => undefined;
  const waiting = new Promise<Workbook>((resolve) => {
    arrived = resolve;
  });
  let ready: () => void = () => undefined;
  const whenReady = new Promise<void>((resolve) => {
    ready = resolve;
  });

  const read = <T>(later: (from: Workbook) => Promise<T>, now: (from: StoredCells) => T): Promise<T> =>
    sheet ? later(sheet) : Promise.resolve().then(() => now(stored));
  const wait = async <T>(work: (from: Workbook) => Promise<T>): Promise<T> => work(sheet ?? (await waiting));

  return {
    workbook: {
      host: "standalone",
      sheets: () =>
        read(
          (from) => from.sheets(),
          (from) => from.sheets,
        ),
      tables: () => read((from) => from.tables(), storedTables),
      readTable: (name) =>
        read(
          (from) => from.readTable(name),
          (from) => readStored(from, tableNamed(storedTables(from), name).area),
        ),
      readArea: (area) =>
        read(
          (from) => from.readArea(area),
          (from) => readStored(from, area),
        ),
      usedArea: (name) => wait((from) => from.usedArea(name)),
      findCells: (isWanted) => wait((from) => from.findCells(isWanted)),
      readSelection: () => wait((from) => from.readSelection()),
      selectedCell: () => wait((from) => from.selectedCell()),
      select: (area) => wait((from) => from.select(area)),
      apply: (label, edits) => wait((from) => from.apply(label, edits)),
      lastAction: () => sheet?.lastAction(),
      undo: () => wait((from) => from.undo()),
      whenReady: () => whenReady,
      errorAt: (at) => sheet?.errorAt?.(at),
      subscribe: (listener) => {
        listeners.add(listener);
        return () => listeners.delete(listener);
      },
      preference: (key) =>
        read(
          (from) => from.preference(key),
          () => preferences[key],
        ),
      setPreference: (key, value) => wait((from) => from.setPreference(key, value)),
    },
    opened: (opened) => {
      sheet = opened;
      opened.subscribe((change) => {
        for (const listener of listeners) listener(change);
      });
      arrived(opened);
    },
    ready: () => {
      ready();
    },
  };
}
