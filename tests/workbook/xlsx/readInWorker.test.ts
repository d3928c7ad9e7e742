import { describe, expect, it } from "vitest";
import type { ReadingMessage } from "../../../addin/workbook/xlsx/readInWorker.ts";
import { readInWorker } from "../../../addin/workbook/xlsx/readInWorker.ts";
import { writeXlsx } from "../../../addin/workbook/xlsx/writeXlsx.ts";

const { bytes } = await writeXlsx({ sheets: [{ name: "Chart", cells: [[{ value: 1 }]] }] });

/** A worker that does on being asked what the test says, and remembers that it was ended. */
function worker(answer: (tell: (message: ReadingMessage) => void, fall: () => void) => void) {
  const double = {
    isEnded: false,
    onmessage: undefined as unknown as (event: { readonly data: ReadingMessage }) => void,
    onerror: (): void => undefined,
    postMessage: () => {
      queueMicrotask(() => {
        answer(
          (data) => {
            double.onmessage({ data });
          },
          () => {
            double.onerror();
          },
        );
      });
    },
    terminate: () => {
      double.isEnded = true;
    },
  };
  return { double, begin: () => double as unknown as Worker };
}

describe("reading a workbook beside the page", () => {
  it("ends a reading that takes too long, and says what may be done", async () => {
    const { double, begin } = worker((tell) => {
      tell({ kind: "begun" });
    });
    await expect(readInWorker(bytes, { begin, longestMs: 20 })).rejects.toThrow(
      /^Reading the workbook was stopped\. It took more than 0\.02 seconds\. .* copy the chart alone/,
    );
    expect(double.isEnded).toBe(true);
  });

  it("stops when it is told to", async () => {
    const stopping = new AbortController();
    const { double, begin } = worker(() => {
      stopping.abort(new Error("Stopped by hand."));
    });
    await expect(readInWorker(bytes, { begin, signal: stopping.signal })).rejects.toThrow("Stopped by hand.");
    expect(double.isEnded).toBe(true);
  });

  it("does not read on the page what made the worker fall over", async () => {
    const { begin } = worker((tell, fall) => {
      tell({ kind: "begun" });
      fall();
    });
    await expect(readInWorker(bytes, { begin })).rejects.toThrow(/more memory than there is/);
  });

  it("reads on the page where the worker cannot be loaded, or there is none", async () => {
    const { begin } = worker((_, fall) => {
      fall();
    });
    const expected = { sheets: [{ name: "Chart", cells: [[{ value: 1 }]] }], leftOut: [] };
    expect(await readInWorker(bytes, { begin })).toEqual(expected);
    expect(await readInWorker(bytes, { begin: () => undefined })).toEqual(expected);
  });
});
