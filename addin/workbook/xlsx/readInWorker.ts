import { InputError } from "../../measures/inputError.ts";
import { limits } from "../limits.ts";
import type { ReadWorkbook } from "./readXlsx.ts";

/** What the worker tells the page: that it runs, then what came out. */
export type ReadingMessage =
  | { readonly kind: "begun" }
  | { readonly kind: "read"; readonly workbook: ReadWorkbook }
  /** `isInput`: the message is for the user, who can mend it. */
  | { readonly kind: "failed"; readonly message: string; readonly isInput: boolean };

export interface ReadingOptions {
  /** Aborting ends the reading at once. */
  readonly signal?: AbortSignal;
  /** Begins a worker; the usual one when omitted. Returns `undefined` where there are no workers. */
  readonly begin?: () => Worker | undefined;
  /** Milliseconds after which the reading is ended; `limits.readingMs` when omitted. */
  readonly longestMs?: number;
}

/**
 * Reads an `.xlsx` file beside the page, which stays alive whatever the file asks for: it can be stopped, and is ended
 * when it takes too long or more memory than there is. Without workers the page reads it itself.
 *
 * @throws {InputError} as `readXlsx`, and when the reading was ended
 * @throws the signal’s reason when it was stopped
 */
export async function readInWorker(
  bytes: Uint8Array,
  { signal, begin = beginWorker, longestMs = limits.readingMs }: ReadingOptions = {},
): Promise<ReadWorkbook> {
  signal?.throwIfAborted();
  const worker = begin();
  if (!worker) return onPage(bytes);
  let end: ReturnType<typeof setTimeout> | undefined;
  let hasBegun = false;
  try {
    return await new Promise<ReadWorkbook>((resolve, reject) => {
      end = setTimeout(() => {
        reject(ended(`It took more than ${String(longestMs / 1000)} seconds.`));
      }, longestMs);
      signal?.addEventListener("abort", () => {
        reject(signal.reason as Error);
      });
      worker.onmessage = ({ data }: MessageEvent<ReadingMessage>) => {
        if (data.kind === "begun") hasBegun = true;
        else if (data.kind === "read") resolve(data.workbook);
        else reject(data.isInput ? new InputError(data.message) : new Error(data.message));
      };
      worker.onerror = () => {
        // Where the worker itself cannot be loaded, the page does the work; one that fell over must not be followed.
        if (hasBegun) reject(ended("It took more memory than there is."));
        else onPage(bytes).then(resolve, reject);
      };
      worker.postMessage(bytes);
    });
  } finally {
    clearTimeout(end);
    worker.terminate();
  }
}

function ended(why: string): InputError {
  return new InputError(
    `Reading the workbook was stopped. ${why} ` +
      "In the program that it comes from, copy the chart alone into a new workbook, and open that.",
  );
}

function beginWorker(): Worker | undefined {
  if (typeof Worker === "undefined") return undefined;
  return new Worker(new URL("./readWorker.ts", import.meta.url));
}

async function onPage(bytes: Uint8Array): Promise<ReadWorkbook> {
  const { readXlsx } = await import("./readXlsx.ts");
  return readXlsx(bytes);
}
