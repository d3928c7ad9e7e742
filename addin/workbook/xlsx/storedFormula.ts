import { formulaPieces, mapCode } from "./formulaPieces.ts";
import { namedValues } from "./namedValues.ts";
import { storedFunctionName } from "./newerFunctions.ts";

/** Files store the functions of an add-in with this prefix and an underscore in place of the dot. */
const ours = "_xldudf_FIT_";

/** True when a formula calls one of our functions. */
export function callsOurs(formula: string): boolean {
  return formulaPieces(formula).some((piece, i) => i % 2 === 0 && /(?<![\w.])FIT\.\w+\s*\(/i.test(piece));
}

/**
 * A formula as a file stores it: without `=`, our functions and newer ones with their prefixes, references to
 * “this row” of a table written out.
 *
 * @param table the name of the table that the cell lies in, for references that leave it out
 * @example
 * storedFormula("=FIT.GROUPS(Figures[#All])"); // "_xldudf_FIT_GROUPS(Figures[#All])"
 */
export function storedFormula(formula: string, table?: string): string {
  const plain = formula.replace(/^=/, "").replace(/\r\n?/g, "\n");
  const names = namedValues(plain);
  const prefix = (code: string) =>
    code
      .replace(/(?<![\w.])FIT\.(\w+)(?=\s*\()/gi, (_, name: string) => ours + name.toUpperCase())
      .replace(/(?<![\w.$])[A-Za-z][\w.]*(?=\()/g, (name) =>
        names.has(name) ? name : storedFunctionName(name),
      )
      .replace(/(?<![\p{L}\w.$!])[\p{L}_][\p{L}\w.]*/gu, (name) =>
        names.has(name) ? `_xlpm.${name}` : name,
      );
  return mapCode(withTableNames(plain, table), prefix);
}

/**
 * A stored formula as it is typed, with the leading `=`.
 *
 * @example
 * typedFormula("_xldudf_FIT_GROUPS(Figures[#All])"); // "=FIT.GROUPS(Figures[#All])"
 */
export function typedFormula(stored: string): string {
  const typed = (code: string) =>
    code
      .replace(/_xldudf_FIT_(\w+)/gi, (_, name: string) => `FIT.${name.toUpperCase()}`)
      .replace(/_xlfn\.(?:_xlws\.)?|_xlpm\./gi, "");
  return `=${mapCode(stored.replace(/^=/, ""), typed)}`;
}

/** Writes out `[@Waist]` and, inside a table, references without the table’s name: files know neither. */
function withTableNames(formula: string, table: string | undefined): string {
  const pieces = formulaPieces(formula);
  return pieces
    .map((piece, i) => {
      if (i % 2 === 0 || !piece.startsWith("[")) return piece;
      const named = /[\p{L}\w.]$/u.test(pieces[i - 1] ?? "");
      // `[1]Sheet!A1` refers to another workbook.
      const elsewhere = /^[\p{L}\w]/u.test(pieces[i + 1] ?? "");
      const owner = named || elsewhere ? "" : (table ?? "");
      return owner + wholeThisRow(piece);
    })
    .join("");
}

/** `[@Waist]` → `[[#This Row],[Waist]]` */
function wholeThisRow(reference: string): string {
  if (!reference.startsWith("[@")) return reference;
  const column = reference.slice(2, -1);
  if (column === "") return "[#This Row]";
  return `[[#This Row],${column.startsWith("[") ? column : `[${column}]`}]`;
}
