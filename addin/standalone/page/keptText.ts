import type { IWorkbookData } from "@univerjs/core";
import { z } from "zod";

const kept = z.object({
  format: z.literal(1),
  snapshot: z.custom<IWorkbookData>(
    (value) =>
      z
        .object({
          id: z.string(),
          sheetOrder: z.array(z.string()).min(1),
          sheets: z.record(z.string(), z.object({ id: z.string(), name: z.string() })),
        })
        .safeParse(value).success,
  ),
});

/** The grid’s workbook as the text that is kept. */
export function toKeptText(snapshot: IWorkbookData): string {
  return JSON.stringify({ format: 1, snapshot });
}

/** Kept text as the grid opens it; `undefined` when it is not a workbook of this page. */
export function fromKeptText(text: string): IWorkbookData | undefined {
  try {
    return kept.safeParse(JSON.parse(text)).data?.snapshot;
  } catch {
    return undefined;
  }
}
