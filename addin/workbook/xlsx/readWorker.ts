import { InputError } from "../../measures/inputError.ts";
import type { ReadingMessage } from "./readInWorker.ts";
import { readXlsx } from "./readXlsx.ts";

const tell = (message: ReadingMessage): void => {
  self.postMessage(message);
};

/** Reads one file beside the page. The page ends the worker to stop it. */
self.onmessage = ({ data }: MessageEvent<Uint8Array>) => {
  tell({ kind: "begun" });
  readXlsx(data).then(
    (workbook) => {
      tell({ kind: "read", workbook });
    },
    (error: unknown) => {
      const message = error instanceof Error ? error.message : String(error);
      tell({ kind: "failed", message, isInput: error instanceof InputError });
    },
  );
};
