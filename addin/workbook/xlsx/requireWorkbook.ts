import { startsWith } from "../../chart/import/encoding.ts";
import { looksLike } from "../../chart/import/fileKind.ts";
import { InputError } from "../../measures/inputError.ts";
import { partNames } from "./packageParts.ts";

const saveAsXlsx = "Open it in the program that it comes from, save it as .xlsx, and open that.";
const asXlsx = (what: string) => `The file looks like ${what}. ${saveAsXlsx}`;
const notWorkbook = (what: string) =>
  `The file looks like ${what}, not like a workbook. Choose an .xlsx file.`;

const officeContainer = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];
const zip = [0x50, 0x4b];

/**
 * Refuses bytes that are not an `.xlsx` workbook.
 *
 * @throws {InputError} saying what they look like and what to do
 */
export function requireWorkbook(bytes: Uint8Array): void {
  const reason = reasonAgainst(bytes);
  if (reason !== undefined) throw new InputError(reason);
}

function reasonAgainst(bytes: Uint8Array): string | undefined {
  if (bytes.length === 0) return "The file is empty. Choose another file.";
  if (startsWith(bytes, officeContainer)) return reasonAgainstContainer(bytes);
  if (startsWith(bytes, zip)) return reasonAgainstZip(partNames(bytes));
  const like = looksLike(bytes);
  if (like !== undefined) return notWorkbook(like);
  return "The file looks like plain text, for example CSV, not like an .xlsx workbook. Bring it in with Import instead.";
}

/** Workbooks with a password and files of the older Office share one container. */
function reasonAgainstContainer(bytes: Uint8Array): string {
  if (holds(bytes, "EncryptedPackage"))
    return "The workbook is protected with a password. Open it in your spreadsheet program, save a copy without the password, and open the copy.";
  if (holds(bytes, "Workbook") || holds(bytes, "Book"))
    return asXlsx("an Excel workbook of the older kind (.xls)");
  return notWorkbook("a document of an older Office program");
}

/** Whether a name stands in the container’s directory: two bytes a letter, ended by a zero. */
function holds(bytes: Uint8Array, name: string): boolean {
  const letters = new TextDecoder("utf-16le");
  const sought = `${name}\0`;
  // Directory entries lie at even places, 128 bytes each, in sectors of 512 bytes: every name starts an entry.
  for (let at = 512; at + sought.length * 2 <= bytes.length; at += 128)
    if (letters.decode(bytes.subarray(at, at + sought.length * 2)) === sought) return true;
  return false;
}

function reasonAgainstZip({ names, openDocumentType }: ReturnType<typeof partNames>): string | undefined {
  if (names.some((name) => name.endsWith("workbook.xml"))) return undefined;
  if (openDocumentType?.includes("spreadsheet")) return asXlsx("an OpenDocument spreadsheet (.ods)");
  if (openDocumentType !== undefined) return notWorkbook("an OpenDocument file");
  if (names.includes("xl/workbook.bin")) return asXlsx("a binary Excel workbook (.xlsb)");
  if (names.some((name) => name.startsWith("word/"))) return notWorkbook("a Word document (.docx)");
  if (names.some((name) => name.startsWith("ppt/"))) return notWorkbook("a presentation (.pptx)");
  return notWorkbook("a compressed folder (ZIP)");
}
