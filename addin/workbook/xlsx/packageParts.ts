import { strFromU8, unzipSync } from "fflate";
import { InputError } from "../../measures/inputError.ts";

/** What a workbook file, which is a ZIP of parts, says of itself before its sheets are read. */
export interface PackageParts {
  readonly names: readonly string[];
  /** The text of `workbook.xml`, or empty. */
  readonly workbook: string;
  /** The text of the relationships of `workbook.xml`, or empty. */
  readonly relationships: string;
  /** What an OpenDocument file states as its type. */
  readonly openDocumentType: string | undefined;
}

/**
 * Lists the parts of a workbook file.
 *
 * @throws {InputError} when the ZIP cannot be read
 */
export function packageParts(bytes: Uint8Array): PackageParts {
  const names: string[] = [];
  const texts = unzipped(bytes, (name) => {
    names.push(name);
    return /(^mimetype|(^|\/)workbook\.xml(\.rels)?)$/.test(name);
  });
  const text = (ending: string) => texts.find(([name]) => name.endsWith(ending))?.[1];
  return {
    names,
    workbook: text("workbook.xml") ?? "",
    relationships: text("workbook.xml.rels") ?? "",
    openDocumentType: text("mimetype"),
  };
}

/** For a file that begins like a workbook and then does not hold what one must. */
export function damaged(): InputError {
  return new InputError(
    "The workbook is damaged or cut short: a part of it cannot be read. " +
      "Fetch the file again, or open it in the program that it comes from, save it as .xlsx, and open that.",
  );
}

function unzipped(
  bytes: Uint8Array,
  wanted: (name: string) => boolean,
): readonly (readonly [string, string])[] {
  try {
    const parts = unzipSync(bytes, { filter: ({ name }) => wanted(name) });
    return Object.entries(parts).map(([name, part]) => [name, strFromU8(part)]);
  } catch {
    throw damaged();
  }
}
