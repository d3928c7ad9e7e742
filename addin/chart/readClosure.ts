import { headingKey } from "../measures/headingKey.ts";
import { InputError } from "../measures/inputError.ts";
import { didYouMean } from "../measures/nearNames.ts";
import { quote } from "../measures/quote.ts";
import type { TableColumn, TableRow } from "./tableRows.ts";
import { lengthAt, placeIn, textAt } from "./tableRows.ts";
import type { WornOn, Closure } from "./garmentTerms.ts";

/** What people write, and where the garment then opens; “top” is the neck of what hangs from it, else the waist. */
const closureWords: Readonly<Record<string, Closure | "top">> = {
  none: "none",
  no: "none",
  "pull on": "none",
  back: "top",
  "centre back": "top",
  "back placket": "top",
  "back zip": "top",
  front: "top",
  "centre front": "top",
  "front placket": "top",
  neck: "top",
  shoulder: "top",
  waist: "top",
  placket: "top",
  fly: "top",
  side: "side",
  "side seam": "side",
  "full length": "full length",
  "whole length": "full length",
  "all way": "full length",
  "back all way": "full length",
  "front all way": "full length",
  "back full length": "full length",
  "front full length": "full length",
  wrap: "full length",
};

/** The words to choose from. */
export const opensWords = ["none", "back", "front", "shoulder", "side", "waist", "full length"] as const;

/** True for a text that says where a garment opens. */
export function isClosure(text: string): boolean {
  return Object.hasOwn(closureWords, headingKey(text));
}

/**
 * Where a garment opens and how long the opening is.
 *
 * @throws {InputError} naming row and column: an unknown place, a length without a place, a place without a length
 */
export function readClosure(
  row: TableRow,
  opens: TableColumn | undefined,
  lengthColumn: TableColumn | undefined,
  wornOn: WornOn,
): { readonly closure: Closure; readonly closureMm?: number } {
  const said = textAt(row, opens);
  const closureMm = lengthAt(row, lengthColumn, { what: "the length of an opening" });
  const closure = said === "" ? "none" : closureNamed(row, opens, said, wornOn);
  if (closure === "full length") return { closure };
  if (closure === "none") {
    if (closureMm === undefined) return { closure };
    throw new InputError(
      `${placeIn(row, lengthColumn)}: there is a length, but “Opens” does not say where. Write back, front, side or full length there.`,
    );
  }
  if (closureMm !== undefined) return { closure, closureMm };
  throw new InputError(
    `${placeIn(row, lengthColumn ?? opens)}: the garment opens (${quote(said)}), but the length of the opening is missing. Type it under “Opening length”, or write “full length”.`,
  );
}

function closureNamed(row: TableRow, opens: TableColumn | undefined, said: string, wornOn: WornOn): Closure {
  const key = headingKey(said);
  const found = Object.hasOwn(closureWords, key) ? closureWords[key] : undefined;
  if (found === "top") return wornOn === "hips" || wornOn === "hips and legs" ? "waist" : "neck";
  if (found === "side") return wornOn === "hips" || wornOn === "hips and legs" ? "waist" : "side";
  if (found) return found;
  throw new InputError(
    `${placeIn(row, opens)}: ${quote(said)} is not a place where a garment opens. Write ${opensWords.join(", ")}.${didYouMean(said, opensWords)}`,
  );
}
