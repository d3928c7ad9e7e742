import { formulaPieces } from "../../workbook/xlsx/formulaPieces.ts";

/** The end of what stands before a bracket: the name of a table. */
const tableName = /[\p{L}_\\][\p{L}\p{N}_.\\]*$/u;

/**
 * A formula with columns of a table called by other names.
 *
 * @param names names of columns as they were, with those that they have now
 * @example
 * withColumnNames("=SUM(Figures[Bust])", "Figures", new Map([["Bust", "Chest"]])); // "=SUM(Figures[Chest])"
 */
export function withColumnNames(formula: string, table: string, names: ReadonlyMap<string, string>): string {
  const pieces = formulaPieces(formula);
  return pieces
    .map((piece, i) => {
      const before = tableName.exec(pieces[i - 1] ?? "")?.[0];
      return i % 2 === 1 && piece.startsWith("[") && before?.toLowerCase() === table.toLowerCase()
        ? inBrackets(piece, names)
        : piece;
    })
    .join("");
}

/** `[Bust]`, or `[[#This Row],[Bust]:[Hip]]` with brackets within. */
function inBrackets(piece: string, names: ReadonlyMap<string, string>): string {
  const called = (name: string): string => names.get(name) ?? names.get(name.replace(/'(.)/g, "$1")) ?? name;
  if (!piece.startsWith("[[")) return `[${called(piece.slice(1, -1))}]`;
  return piece.replace(/\[((?:'.|[^[\]'])*)\]/g, (_, name: string) => `[${called(name)}]`);
}

/** Whether a column of that name can be named in a formula here: the grid does not know how signs of the notation are written. */
export function canBeNamed(heading: string): boolean {
  return heading.trim() === heading && heading !== "" && !/[[\]#'\n]/.test(heading);
}
