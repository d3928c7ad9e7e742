import { InputError } from "../../measures/inputError.ts";
import { detectEncoding, startsWith } from "./encoding.ts";

/** What a file holds, told from its first bytes and never from its name. */
export type FileKind = "text" | "xlsx" | "office container" | "empty" | "other";

/** Workbooks with a password and files of the older Office begin alike. */
const officeContainer = [0xd0, 0xcf, 0x11, 0xe0];

/** Opening bytes of files that are taken for charts by mistake, as their format descriptions state them. */
const signatures: readonly (readonly [readonly number[], string])[] = [
  [[0x25, 0x50, 0x44, 0x46], "a PDF document"],
  [[0x89, 0x50, 0x4e, 0x47], "a picture (PNG)"],
  [[0xff, 0xd8, 0xff], "a picture (JPEG)"],
  [[0x47, 0x49, 0x46, 0x38], "a picture (GIF)"],
  [[0x52, 0x49, 0x46, 0x46], "a picture or sound (RIFF)"],
  [officeContainer, "an old Excel or Word file (.xls, .doc)"],
  [[0x1f, 0x8b], "a compressed file (gzip)"],
  [[0x37, 0x7a, 0xbc, 0xaf], "a compressed file (7z)"],
  [[0x52, 0x61, 0x72, 0x21], "a compressed file (rar)"],
  [[0x7b, 0x5c, 0x72, 0x74, 0x66], "a formatted text document (RTF)"],
  [[0x7f, 0x45, 0x4c, 0x46], "a program"],
  [[0x4d, 0x5a, 0x90], "a program"],
];

const zip = [0x50, 0x4b, 0x03, 0x04];

/**
 * What the bytes are. `"xlsx"` is a workbook to be read as one, whatever the file is called; `"office container"` is
 * one with a password, or a file of the older Office.
 */
export function fileKind(bytes: Uint8Array): FileKind {
  if (bytes.length === 0) return "empty";
  if (startsWith(bytes, zip)) return zipNames(bytes).includes("xl/") ? "xlsx" : "other";
  if (startsWith(bytes, officeContainer)) return "office container";
  return looksLike(bytes) === undefined ? "text" : "other";
}

/**
 * Refuses what is not a text file.
 *
 * @param name the file’s name, for the message
 * @throws {InputError} naming what the file looks like and what to do
 */
export function requireText(bytes: Uint8Array, name: string): void {
  if (bytes.length === 0) throw new InputError(`“${name}” is empty. Choose another file.`);
  const like = looksLike(bytes);
  if (like === undefined) return;
  throw new InputError(
    `“${name}” is not a text file: it looks like ${like}. ` +
      "Open it in the program that it was made with, save the chart as CSV or .xlsx, and import that.",
  );
}

/** In words, what the bytes look like when they are not text. */
export function looksLike(bytes: Uint8Array): string | undefined {
  if (startsWith(bytes, zip)) return zipLike(bytes);
  const known = signatures.find(([start]) => startsWith(bytes, start));
  if (known) return known[1];
  const head = new TextDecoder("windows-1252").decode(bytes.subarray(0, 512)).trimStart().toLowerCase();
  if (head.startsWith("<!doctype html") || head.startsWith("<html")) return "a web page";
  return hasControlBytes(bytes) ? "a file that is not text at all" : undefined;
}

function zipLike(bytes: Uint8Array): string {
  const names = zipNames(bytes);
  if (names.includes("xl/")) return "an Excel workbook (.xlsx)";
  if (names.includes("word/")) return "a Word document (.docx)";
  if (names.includes("opendocument.spreadsheet")) return "an OpenDocument spreadsheet (.ods)";
  return "a compressed folder (ZIP)";
}

/** File names inside a ZIP stand as plain letters at its start and, all of them, in the list at its end. */
function zipNames(bytes: Uint8Array): string {
  const letters = new TextDecoder("windows-1252");
  return letters.decode(bytes.subarray(0, 4096)) + letters.decode(bytes.subarray(-65_536));
}

/** Control bytes other than tab, line feed, vertical tab, form feed and carriage return do not occur in charts. */
function hasControlBytes(bytes: Uint8Array): boolean {
  if (detectEncoding(bytes).startsWith("utf-16")) return false;
  const sample = bytes.subarray(0, 1 << 16);
  const controls = sample.reduce((n, byte) => (byte < 9 || (byte > 13 && byte < 32) ? n + 1 : n), 0);
  return sample.includes(0) || controls > sample.length / 100;
}
