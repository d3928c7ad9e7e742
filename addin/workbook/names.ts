import { InputError } from "../measures/inputError.ts";

/** Spreadsheets do not tell names apart by case. */
export function sameName(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase();
}

/**
 * Check a new sheet name against the rules that Excel states.
 *
 * @throws {InputError} saying which rule the name breaks
 */
export function checkSheetName(name: string): void {
  const why =
    name.trim() === ""
      ? "is empty"
      : name.length > 31
        ? "is longer than 31 characters"
        : /[:\\/?*[\]]/.test(name)
          ? "holds one of : \\ / ? * [ ]"
          : /^'|'$/.test(name)
            ? "begins or ends with an apostrophe"
            : sameName(name, "History")
              ? "is kept by Excel for itself"
              : undefined;
  if (why) throw new InputError(`The sheet name “${name}” ${why}. Choose another name.`);
}

/**
 * Check a new table name against the rules that Excel states.
 *
 * @throws {InputError} saying which rule the name breaks
 */
export function checkTableName(name: string): void {
  const why =
    name === ""
      ? "is empty"
      : name.length > 255
        ? "is longer than 255 characters"
        : !/^[\p{L}_\\]/u.test(name)
          ? "does not begin with a letter"
          : /[^\p{L}\p{N}_.\\]/u.test(name)
            ? "holds something else than letters, digits, full stops and underscores"
            : /^([a-z]{1,3}\d+|r\d*c\d*|[rc])$/i.test(name)
              ? "looks like the name of a cell"
              : undefined;
  if (why) throw new InputError(`The table name “${name}” ${why}. Choose another name.`);
}
