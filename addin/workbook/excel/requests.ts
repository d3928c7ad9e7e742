import { InputError } from "../../measures/inputError.ts";

/** Something to queue in a request, with about how many bytes it adds to it. */
export interface Operation {
  readonly bytes: number;
  readonly queue: (context: Excel.RequestContext) => void;
}

/**
 * Most bytes of one request. Excel on the web refuses requests of more than 5 MB; what Office.js wraps around
 * our data is not counted here, so a good part of that is left free.
 */
const requestLimit = 3_000_000;

/** Bytes from which on Excel’s own view is worth holding still. */
const largeRequest = 20_000;

export function operation(queue: Operation["queue"], bytes = 200): Operation {
  return { bytes, queue };
}

/** Bytes that a value takes in a request. */
export function bytesOf(value: unknown): number {
  return new TextEncoder().encode(JSON.stringify(value)).length;
}

/** Items in groups, in order, each group as large as the limit allows. */
export function inGroups<T extends { readonly bytes: number }>(items: readonly T[], limit: number): T[][] {
  const groups: T[][] = [];
  let room = 0;
  for (const item of items) {
    if (item.bytes > room) {
      groups.push([]);
      room = limit;
    }
    groups.at(-1)?.push(item);
    room -= item.bytes;
  }
  return groups;
}

/** Send operations to Excel, in order, in as few requests as their size allows. */
export async function send(context: Excel.RequestContext, operations: readonly Operation[]): Promise<void> {
  await inTurn(inGroups(operations, requestLimit), async (group) => {
    if (group.reduce((sum, { bytes }) => sum + bytes, 0) > largeRequest) {
      context.application.suspendScreenUpdatingUntilNextSync();
    }
    for (const { queue } of group) queue(context);
    await context.sync();
  });
}

/** Do asynchronous work for each item, one after the other. */
export function inTurn<T, R>(items: readonly T[], work: (item: T) => Promise<R>): Promise<R[]> {
  return items.reduce<Promise<R[]>>(
    async (done, item) => [...(await done), await work(item)],
    Promise.resolve([]),
  );
}

export function supports(version: string): boolean {
  return Office.context.requirements.isSetSupported("ExcelApi", version);
}

/** What is used without asking: sorting as an event and comments came last of it. */
export const leastApi = "1.10";

/** @throws {InputError} when this Excel is older than the pane needs */
export function requireExcel(): void {
  if (supports(leastApi)) return;
  throw new InputError(
    "This Excel is too old for the pane. It needs Excel for Microsoft 365, Excel 2021 or later, or Excel on the web.",
  );
}
