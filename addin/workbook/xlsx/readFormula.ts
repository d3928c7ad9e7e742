import { columnNumber } from "../address.ts";
import { sameName } from "../names.ts";
import { argumentCount, mostArguments } from "./argumentCounts.ts";

/** What a formula can refer to. */
export interface Referable {
  readonly sheets: readonly string[];
  readonly tables: readonly { readonly name: string; readonly headings: readonly string[] }[];
}

/** Places within a formula, from 0, `end` not included. */
export interface Place {
  readonly start: number;
  readonly end: number;
}

/** A formula that Excel can parse. */
export interface ReadFormula {
  /** What stands before each `#` that means “and what it fills”. */
  readonly spills: readonly Place[];
  /** Each `@` with what stands behind it. */
  readonly singles: readonly Place[];
  /** The functions that it calls, in capitals. */
  readonly functions: ReadonlySet<string>;
}

// Source: Microsoft, “Excel specifications and limits”.
const deepest = 64;
const longestText = 255;
const lastRow = 1_048_576;
const lastColumn = 16_384;

/** Functions of Excel that give a reference, so that `:` may stand beside them. The newer ones from memory. */
const givingReferences = new Set(
  "ANCHORARRAY CHOOSE DROP IF IFS INDEX INDIRECT LET OFFSET SINGLE SWITCH TAKE TRIMRANGE XLOOKUP".split(" "),
);

const errors = /#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|GETTING_DATA)/iy;
const number = /(?:\d+\.?\d*|\.\d+)(?:E[+-]?\d+)?/iy;
const text = /"(?:[^"]|"")*"/y;
const wholeRows = /\$?(\d{1,7}):\$?(\d{1,7})(?![\p{L}\w.])/uy;
const wholeColumns = /\$?([A-Z]{1,3}):\$?([A-Z]{1,3})(?![\p{L}\w.(!])/iuy;
const cell = /\$?([A-Z]{1,3})\$?(\d{1,7})(?![\p{L}\w.(!])/iuy;
const word = /[\p{L}_\\][\p{L}\p{N}_.\\?]*/uy;
const quotedSheet = /'((?:[^']|'')+)'!/y;
const bareSheet = /([\p{L}_][\p{L}\p{N}_.]*)(?::([\p{L}_][\p{L}\p{N}_.]*))?!/uy;
const operator = /<>|<=|>=|[-+*/^&=<>]/y;
const brackets = /\[(?:'.|[^[\]']|\[(?:'.|[^[\]'])*\])*\]/suy;
const space = /[ \n\r\t]*/y;

/** A reason in words, to be followed by nothing. */
class CannotParse extends Error {}

/**
 * Reads a formula as Excel does when it opens a file; one that it cannot parse makes it call the file damaged.
 *
 * @param formula without `=`, as typed, the names of tables written out
 * @returns a reason in words where Excel cannot parse it
 * Source: ECMA-376 part 1, 18.17.2 (syntax); [MS-XLSX] 2.2.2 (formulas) for structure references
 */
export function readFormula(formula: string, { sheets, tables }: Referable): ReadFormula | string {
  const spills: Place[] = [];
  const singles: Place[] = [];
  const functions = new Set<string>();
  let at = 0;
  let depth = 0;

  const take = (pattern: RegExp): RegExpExecArray | undefined => {
    pattern.lastIndex = at;
    const found = pattern.exec(formula) ?? undefined;
    if (found) at = pattern.lastIndex;
    return found;
  };
  const skip = () => take(space);
  const next = (mark: string): boolean => {
    const found = formula.startsWith(mark, at);
    if (found) at += mark.length;
    return found;
  };
  const refuse = (why: string): never => {
    throw new CannotParse(why);
  };
  const unexpected = (): never =>
    refuse(
      at < formula.length ? `“${formula.slice(at, at + 12)}” is not expected there` : "it ends too early",
    );
  const inside = <T>(read: () => T): T => {
    if (++depth > deepest) refuse("it is nested too deep");
    const result = read();
    depth--;
    return result;
  };

  /**
   * Operands with operators between them. Which goes first does not matter to whether they can be parsed.
   *
   * @returns true for a reference and nothing else
   */
  const expression = (): boolean => {
    const isReference = signed();
    skip();
    if (!take(operator)) return isReference;
    do signed();
    while ((skip(), take(operator)));
    return false;
  };

  const signed = (): boolean => {
    skip();
    let isPlain = true;
    while (next("-") || next("+")) {
      isPlain = false;
      skip();
    }
    const start = at;
    const isSingle = next("@");
    skip();
    const isReference = range();
    if (isSingle) singles.push({ start, end: at });
    const end = at;
    skip();
    while (next("%")) {
      isPlain = false;
      skip();
    }
    if (isPlain) at = end;
    return isReference && isPlain && !isSingle;
  };

  /** References joined by `:`, or by a space for where they meet; or one operand that is none. */
  const range = (): boolean => {
    const isReference = operand();
    for (;;) {
      const end = at;
      skip();
      const joined = next(":") || (isReference && at > end && begins());
      if (!joined) {
        at = end;
        return isReference;
      }
      skip();
      if (!isReference || !operand()) refuse("“:” needs a reference on both sides");
    }
  };

  const begins = (): boolean => /[\p{L}\p{N}_\\$'"([{#]/u.test(formula[at] ?? "");

  /** True for a reference. */
  const operand = (): boolean => {
    const start = at;
    const isReference = single();
    while (formula[at] === "#" && isReference) {
      spills.push({ start, end: at });
      at++;
    }
    return isReference;
  };

  const single = (): boolean => {
    if (next("(")) return inParentheses();
    const quoted = take(text);
    if (quoted) {
      const length = quoted[0].slice(1, -1).replaceAll('""', '"').length;
      if (length > longestText)
        refuse(`a text in it has ${String(length)} characters, and ${String(longestText)} are allowed`);
      return false;
    }
    if (next("{")) return arrayConstant();
    const isOwn = onSheet();
    const error = take(errors);
    if (error) return /ref/i.test(error[0]);
    if (reference()) return true;
    if (isOwn && take(number)) return false;
    return named(isOwn);
  };

  const inParentheses = (): boolean =>
    inside(() => {
      const isReference = expression();
      skip();
      while (next(",")) {
        if (!isReference || !expression()) refuse("a comma outside of a function joins references only");
        skip();
      }
      if (!next(")")) unexpected();
      return isReference;
    });

  const arrayConstant = (): boolean => {
    let width: number | undefined;
    let columns = 0;
    for (;;) {
      skip();
      const sign = next("-") || next("+");
      if (!take(number) && (sign || (!take(text) && !take(errors) && !take(/TRUE|FALSE/iy)))) unexpected();
      columns++;
      skip();
      if (next(",")) continue;
      if (width !== undefined && width !== columns) refuse("the rows of its array differ in length");
      width = columns;
      columns = 0;
      if (next("}")) return false;
      if (!next(";")) unexpected();
    }
  };

  /** Passes over a sheet’s name; false when there was one. */
  const onSheet = (): boolean => {
    if (formula[at] === "[" && /^\[[^\]]*\][^[\],]*!/u.test(formula.slice(at)))
      refuse("it refers to another workbook");
    const quoted = take(quotedSheet)?.[1]?.replaceAll("''", "'");
    const [, first, last] = quoted === undefined ? (take(bareSheet) ?? []) : [];
    const ends = quoted === undefined ? [first, last] : sheetNames(quoted);
    if (quoted?.includes("[")) refuse("it refers to another workbook");
    if (first !== undefined && /^([A-Z]{1,3}\d+|R\d*C?\d*|C\d*)$/i.test(first))
      refuse(`the sheet name “${first}” needs apostrophes around it`);
    for (const name of ends)
      if (name !== undefined && !sheets.some((sheet) => sameName(sheet, name)))
        refuse(`there is no sheet “${name}”`);
    return ends[0] === undefined;
  };

  const sheetNames = (quoted: string): readonly string[] =>
    sheets.some((sheet) => sameName(sheet, quoted)) ? [quoted] : quoted.split(":");

  const reference = (): boolean => {
    const start = at;
    const isRow = (digits = "") => Number(digits) >= 1 && Number(digits) <= lastRow;
    const isColumn = (letters = "") => columnNumber(letters) <= lastColumn;
    const rows = take(wholeRows);
    if (rows && isRow(rows[1]) && isRow(rows[2])) return true;
    at = start;
    const columns = take(wholeColumns);
    if (columns && isColumn(columns[1]) && isColumn(columns[2])) return true;
    at = start;
    const one = take(cell);
    if (one && isColumn(one[1]) && isRow(one[2])) return true;
    at = start;
    return false;
  };

  const named = (isOwn: boolean): boolean => {
    const name = take(word)?.[0];
    if (name === undefined) return unexpected();
    if (formula[at] === "(") {
      const isReference = call(name);
      // What a LAMBDA gives can be called in turn.
      while (formula[at] === "(") call("");
      return isReference;
    }
    if (formula[at] === "[") return ofTable(name);
    return !(isOwn && /^(true|false)$/i.test(name));
  };

  const call = (name: string): boolean => {
    const plain = name.replace(/^_xlfn\.(?:_xlws\.)?/i, "").toUpperCase();
    at++;
    const given = inside(argumentsGiven);
    const allowed = argumentCount(plain) ?? { least: 0, most: mostArguments };
    if (given < allowed.least) refuse(`${plain} needs more entries in its brackets`);
    if (given > allowed.most) refuse(`${plain} has too many entries in its brackets`);
    if (plain !== "") functions.add(plain);
    return argumentCount(plain) === undefined || givingReferences.has(plain);
  };

  const argumentsGiven = (): number => {
    skip();
    if (next(")")) return 0;
    for (let given = 1; ; given++) {
      skip();
      if (formula[at] !== "," && formula[at] !== ")") expression();
      if (next(")")) return given;
      if (!next(",")) unexpected();
    }
  };

  const ofTable = (name: string): boolean => {
    const table = tables.find((each) => sameName(each.name, name));
    if (!table) return refuse(`there is no table “${name}”`);
    const inner = take(brackets)?.[0].slice(1, -1);
    if (inner === undefined) return unexpected();
    for (const column of columnsNamed(inner.trim()))
      if (!table.headings.some((heading) => sameName(heading, column)))
        refuse(`the table “${name}” has no column “${column}”`);
    return true;
  };

  /** The columns that stand between the brackets behind a table’s name. */
  const columnsNamed = (inner: string): readonly string[] => {
    if (inner === "" || isItem(inner)) return [];
    if (!inner.startsWith("[")) return [unescaped(inner)];
    if (!/^\[(?:'.|[^[\]'])*\](?:\s*[,:]\s*\[(?:'.|[^[\]'])*\])*$/su.test(inner))
      return refuse(`“[${inner}]” does not name columns of a table`);
    return [...inner.matchAll(/\[((?:'.|[^[\]'])*)\]/gsu)]
      .map(([, part = ""]) => part)
      .filter((part) => !isItem(part))
      .map(unescaped);
  };

  try {
    expression();
    if (at < formula.length) unexpected();
    return { spills, singles, functions };
  } catch (error) {
    if (error instanceof CannotParse) return error.message;
    throw error;
  }
}

function isItem(part: string): boolean {
  return /^#(all|data|headers|totals|this row)$/i.test(part.trim());
}

/** In brackets, an apostrophe stands before characters that would mean something else. */
function unescaped(column: string): string {
  return column.replace(/'(.)/gsu, "$1");
}
