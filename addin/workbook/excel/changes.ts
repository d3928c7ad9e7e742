import { cellNamed } from "../address.ts";
import type { TypedCell, WorkbookChange } from "../port.ts";
import { cellFrom } from "./ranges.ts";

type Listener = (change: WorkbookChange) => void;

interface SheetEvent {
  readonly worksheetId: string;
  readonly triggerSource?: string;
  readonly source?: string;
  readonly address?: string;
  /** Given where one cell alone was changed. */
  readonly details?: Pick<
    Excel.ChangedEventDetail,
    "valueBefore" | "valueAfter" | "valueTypeBefore" | "valueTypeAfter"
  >;
}

export interface Changes {
  subscribe(listener: Listener): () => void;
  /** Do work whose changes, and what Excel recalculates because of them, are not news. */
  ours<T>(work: () => Promise<T>): Promise<T>;
}

/**
 * Tells listeners, at most once in `settleMs` milliseconds, on which sheets the user has typed or sorted or
 * Excel has recalculated. Excel is asked to report only while somebody listens.
 */
export function watchChanges(settleMs: number): Changes {
  const listeners = new Set<Listener>();
  /** The sheets to tell of, with what was typed into them. */
  const waiting = new Map<string, readonly TypedCell[]>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let working = 0;
  let registered: Promise<readonly OfficeExtension.EventHandlerResult<unknown>[]> | undefined;

  const hear = (event: SheetEvent): Promise<void> => {
    // Older versions of Excel do not tell whose change it was.
    const isOurs = event.triggerSource === "ThisLocalAddin";
    if (isOurs || (event.triggerSource !== "Unknown" && working > 0)) return Promise.resolve();
    waiting.set(event.worksheetId, [...(waiting.get(event.worksheetId) ?? []), ...typedCells(event)]);
    clearTimeout(timer);
    // When the names cannot be had just now, the next change tells of it.
    timer = setTimeout(() => void tell().catch(() => undefined), settleMs);
    return Promise.resolve();
  };

  const tell = async (): Promise<void> => {
    const changed = new Map(waiting);
    waiting.clear();
    for (const { id, sheet } of await namesOf([...changed.keys()])) {
      const typed = changed.get(id) ?? [];
      for (const listener of [...listeners]) listener(typed.length > 0 ? { sheet, typed } : { sheet });
    }
  };

  return {
    subscribe(listener) {
      listeners.add(listener);
      registered ??= register(hear);
      return () => {
        listeners.delete(listener);
        if (listeners.size > 0 || !registered) return;
        void registered.then(unregister);
        registered = undefined;
      };
    },
    async ours(work) {
      working += 1;
      try {
        return await work();
      } finally {
        setTimeout(() => (working -= 1), settleMs);
      }
    },
  };
}

function register(
  hear: (event: SheetEvent) => Promise<void>,
): Promise<readonly OfficeExtension.EventHandlerResult<unknown>[]> {
  return Excel.run({ delayForCellEdit: true }, async (context) => {
    const { worksheets } = context.workbook;
    const handlers = [
      worksheets.onChanged.add(hear),
      worksheets.onRowSorted.add(hear),
      worksheets.onCalculated.add(hear),
    ];
    await context.sync();
    return handlers;
  }).catch(() => []);
}

async function unregister(handlers: readonly OfficeExtension.EventHandlerResult<unknown>[]): Promise<void> {
  const first = handlers[0];
  if (!first) return;
  await Excel.run(first.context, async (context) => {
    for (const handler of handlers) handler.remove();
    await context.sync();
  });
}

/** The names of sheets that are still there. */
function namesOf(ids: readonly string[]): Promise<{ readonly id: string; readonly sheet: string }[]> {
  return Excel.run({ delayForCellEdit: true }, async (context) => {
    const sheets = ids.map((id) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject(id);
      sheet.load("name");
      return { id, sheet };
    });
    await context.sync();
    return sheets.flatMap(({ id, sheet }) => (sheet.isNullObject ? [] : [{ id, sheet: sheet.name }]));
  });
}

/** The cell that was typed into here, not by somebody who works on the same workbook elsewhere. */
function typedCells({ address = "", details, source }: SheetEvent): readonly TypedCell[] {
  const at = cellNamed(address);
  if (!at || !details || source === "Remote") return [];
  const before = cellFrom(details.valueBefore, details.valueTypeBefore);
  const after = cellFrom(details.valueAfter, details.valueTypeAfter);
  return before === after ? [] : [{ ...at, before, after }];
}
