import type { DecimalMark } from "../../measures/decimal.ts";
import type { Written } from "../../measures/parseReading.ts";
import { readWritten } from "../../measures/parseReading.ts";

/** What the texts of one file say as readings, whatever unit is found for them. */
export type TextReader = (text: string, decimalMark?: DecimalMark) => Written;

/** Different texts that one reader remembers; tape readings repeat, so that few charts have as many. */
const remembered = 200_000;

/**
 * A reader that reads equal texts once: those who look for headings, roles and units, the preview and the edits all ask it.
 * A text without a point or comma says the same with every decimal mark.
 */
export function textReader(): TextReader {
  const known = new Map<string, Written>();
  return (text, decimalMark) => {
    const key = (decimalMark && /[.,]/.test(text) ? decimalMark : " ") + text;
    const before = known.get(key);
    if (before) return before;
    const written = readWritten(text, decimalMark);
    if (known.size < remembered) known.set(key, written);
    return written;
  };
}
