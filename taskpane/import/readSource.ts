import type { Delimiter } from "../../addin/chart/import/rows.ts";
import { readRows } from "../../addin/chart/import/rows.ts";
import { detectDelimiter } from "../../addin/chart/import/delimiter.ts";
import type { Encoding } from "../../addin/chart/import/encoding.ts";
import { decodeText, detectEncoding } from "../../addin/chart/import/encoding.ts";
import { fileKind, requireText } from "../../addin/chart/import/fileKind.ts";
import type { SourceRows } from "../../addin/chart/import/source.ts";
import { textReader } from "../../addin/chart/import/texts.ts";
import type { WorkbookContent } from "../../addin/workbook/content.ts";
import { limits } from "../../addin/workbook/limits.ts";
import type { WorkbookPart } from "./workbookParts.ts";
import { rowsOfPart } from "./workbookParts.ts";

/** What the user brought. `name` stands in sentences: “chart.csv”, or “The pasted text”. */
export type ImportSource =
  | { readonly kind: "file"; readonly name: string; readonly bytes: Uint8Array }
  | { readonly kind: "text"; readonly name: string; readonly text: string }
  | {
      readonly kind: "workbook";
      readonly name: string;
      readonly content: WorkbookContent;
      /** What of the file was not kept, in short phrases. */
      readonly leftOut: readonly string[];
    };

export interface SourceSettings {
  readonly encoding?: Encoding | undefined;
  readonly delimiter?: Delimiter | undefined;
  /** For a workbook. */
  readonly part?: WorkbookPart | undefined;
}

export interface ReadSource {
  readonly source: SourceRows;
  /** Set for a file. */
  readonly encoding?: Encoding;
  /** Set for a file and for pasted text. */
  readonly delimiter?: Delimiter;
  readonly openQuote?: number;
}

/**
 * Tells a workbook from a text by its bytes, whatever the file is called; workbooks are read beside the page.
 *
 * @throws {InputError} when the workbook has a password, is of the older kind, or is damaged
 */
export async function openFile(name: string, bytes: Uint8Array, signal?: AbortSignal): Promise<ImportSource> {
  const kind = fileKind(bytes);
  // The reader of workbooks tells a workbook with a password from an old one, and says what to do.
  if (kind !== "xlsx" && kind !== "office container") return { kind: "file", name, bytes };
  const { readInWorker } = await import("../../addin/workbook/xlsx/readInWorker.ts");
  const { sheets, leftOut } = await readInWorker(bytes, signal ? { signal } : {});
  return { kind: "workbook", name, content: { sheets }, leftOut };
}

/**
 * Reads what the user brought into rows, detecting what the settings leave open.
 *
 * @param pause called between chunks with the share read, 0 to 1
 * @throws {InputError} when a file is not text
 * @throws the signal’s reason when reading is cancelled
 */
export async function readSource(
  source: ImportSource,
  settings: SourceSettings,
  pause: (share: number) => Promise<void>,
  signal: AbortSignal,
): Promise<ReadSource> {
  if (source.kind === "workbook")
    return {
      source: settings.part
        ? rowsOfPart(source.content, settings.part)
        : { rows: [], numbers: [], texts: textReader() },
    };
  if (source.kind === "file") requireText(source.bytes, source.name);
  const encoding = source.kind === "file" ? (settings.encoding ?? detectEncoding(source.bytes)) : undefined;
  const text = source.kind === "file" ? decodeText(source.bytes, encoding ?? "utf-8") : source.text;
  const texts = textReader();
  const delimiter = settings.delimiter ?? detectDelimiter(text, texts);
  const { rows, numbers, openQuote } = await readRows(text, {
    delimiter,
    pause,
    signal,
    most: { cells: limits.area, text: limits.text },
  });
  return {
    source: { rows, numbers, texts },
    delimiter,
    ...(encoding ? { encoding } : {}),
    ...(openQuote === undefined ? {} : { openQuote }),
  };
}
