import { strFromU8, zipSync } from "fflate";
import { InputError } from "../../measures/inputError.ts";
import { limits } from "../limits.ts";
import { counted, megabytes, tooLarge } from "../tooLarge.ts";
import { expanded, zipParts, type ZipPart } from "./zip.ts";

/** What a workbook file, which is a ZIP of parts, says of itself before its sheets are read. */
export interface PackageParts {
  readonly names: readonly string[];
  /** The text of `workbook.xml`, or empty. */
  readonly workbook: string;
  /** The text of the relationships of `workbook.xml`, or empty. */
  readonly relationships: string;
  /** Every part that is XML and read, expanded, by name. */
  readonly xml: ReadonlyMap<string, Uint8Array>;
}

/**
 * The names of the parts of a workbook file, and what an OpenDocument file states as its type.
 *
 * @throws {InputError} when the ZIP cannot be read
 */
export function partNames(bytes: Uint8Array): {
  readonly names: readonly string[];
  readonly openDocumentType: string | undefined;
} {
  const parts = listed(bytes);
  const type = parts.find(({ name, size }) => name === "mimetype" && size < 200);
  return { names: parts.map(({ name }) => name), openDocumentType: type && strFromU8(opened(type)) };
}

/**
 * Expands the parts of a workbook file that are XML. Of pictures, macros and the like only the names are kept.
 *
 * @throws {InputError} when the ZIP cannot be read, or holds more than can be opened; nothing is expanded then
 */
export function packageParts(bytes: Uint8Array): PackageParts {
  const parts = listed(bytes);
  if (parts.length > limits.parts) throw tooLarge(`more than ${counted(limits.parts)} parts`);
  const wanted = parts.filter(({ name }) => /\.(xml|rels)$/i.test(name) && !/pivotCacheRecords/.test(name));
  const size = wanted.reduce((sum, part) => sum + part.size, 0);
  if (size > limits.expandedBytes)
    throw tooLarge(
      `${megabytes(size)} when it is unpacked; at most ${megabytes(limits.expandedBytes)} can be opened`,
    );
  const xml = new Map(wanted.map((part) => [part.name, opened(part)]));
  const text = (ending: string) => {
    const part = [...xml].find(([name]) => name.endsWith(ending))?.[1];
    return part ? strFromU8(part) : "";
  };
  return {
    names: parts.map(({ name }) => name),
    workbook: text("workbook.xml"),
    relationships: text("workbook.xml.rels"),
    xml,
  };
}

/** A workbook file of these parts and no other. Those that are not XML are there by name and empty. */
export function packaged({ names, xml }: Pick<PackageParts, "names" | "xml">): Uint8Array {
  const parts = names.filter((name) => !name.endsWith("/"));
  return zipSync(Object.fromEntries(parts.map((name) => [name, xml.get(name) ?? new Uint8Array()])), {
    level: 0,
  });
}

/** For a file that begins like a workbook and then does not hold what one must. */
export function damaged(): InputError {
  return new InputError(
    "The workbook is damaged or cut short: a part of it cannot be read. " +
      "Fetch the file again, or open it in the program that it comes from, save it as .xlsx, and open that.",
  );
}

function listed(bytes: Uint8Array): readonly ZipPart[] {
  try {
    return zipParts(bytes, limits.parts + 1);
  } catch {
    throw damaged();
  }
}

function opened(part: ZipPart): Uint8Array {
  try {
    return expanded(part);
  } catch {
    throw damaged();
  }
}
