import { sameName } from "../names.ts";
import { codeAlone, formulaPieces, mapCode } from "./formulaPieces.ts";
import { namedValues } from "./namedValues.ts";
import { storedFunctionName } from "./newerFunctions.ts";
import { readFormula, type ReadFormula, type Referable } from "./readFormula.ts";

/** Files store the functions of an add-in with this prefix and an underscore in place of the dot. */
const ours = "_xldudf_FIT_";

/** Functions of Excel whose result can fill more cells than their own. From memory. */
const filling = (
  "BYCOL BYROW CHOOSECOLS CHOOSEROWS DROP EXPAND FILTER GROUPBY HSTACK LAMBDA LET MAKEARRAY MAP PIVOTBY RANDARRAY " +
  "REGEXEXTRACT SCAN SEQUENCE SORT SORTBY TAKE TEXTSPLIT TOCOL TOROW TRIMRANGE UNIQUE VSTACK WRAPCOLS WRAPROWS"
).split(" ");

export interface StoredFormula {
  readonly formula: string;
  /** True when its result may fill more cells than its own. */
  readonly fills: boolean;
}

/**
 * A formula as a file stores it: without `=`, our functions and newer ones with their prefixes, references to
 * “this row” of a table written out, `A4#` and `@A1:A3` as the functions that stand for them in files.
 *
 * @param book what the formula can refer to
 * @param table the name of the table that the cell lies in, for references that leave it out
 * @returns a reason in words where Excel could not parse it: such a formula must not be in a file
 * @example
 * storedFormula("=FIT.GROUPS(Figures[#All])", book); // { formula: "_xldudf_FIT_GROUPS(Figures[#All])", fills: true }
 */
export function storedFormula(formula: string, book: Referable, table?: string): StoredFormula | string {
  const plain = withTableNames(formula.replace(/^=/, "").replace(/\r\n?/g, "\n"), table);
  const read = readFormula(plain, book);
  if (typeof read === "string") return read;
  const calls = [...read.functions];
  return {
    formula: prefixed(withDataBrackets(withFunctions(plain, read), book)),
    fills: read.spills.length > 0 || calls.some((name) => name.startsWith("FIT.") || filling.includes(name)),
  };
}

function prefixed(formula: string): string {
  const names = namedValues(formula);
  return mapCode(formula, (code) =>
    code
      .replace(/(?<![\w.])FIT\.(\w+)(?=\s*\()/gi, (_, name: string) => ours + name.toUpperCase())
      .replace(/(?<![\w.$])[A-Za-z][\w.]*(?=\()/g, (name) =>
        names.has(name) ? name : storedFunctionName(name),
      )
      .replace(/(?<![\p{L}\w.$!])[\p{L}_][\p{L}\w.]*/gu, (name) =>
        names.has(name) ? `_xlpm.${name}` : name,
      ),
  );
}

/** `A4#` → `ANCHORARRAY(A4)`, `@A1:A3` → `SINGLE(A1:A3)`. Source: [MS-XLSX], future-function-list. */
function withFunctions(formula: string, { spills, singles }: ReadFormula): string {
  const put = [
    ...spills.flatMap(({ start, end }) => [
      { at: start, cut: 0, text: "ANCHORARRAY(" },
      { at: end, cut: 1, text: ")" },
    ]),
    ...singles.flatMap(({ start, end }) => [
      { at: start, cut: 1, text: "SINGLE(" },
      { at: end, cut: 0, text: ")" },
    ]),
  ];
  // From the end, so that places stay true; at one place, what opens comes behind what closes.
  return put
    .toSorted((a, b) => b.at - a.at || (a.text === ")" ? 1 : -1))
    .reduce((text, edit) => text.slice(0, edit.at) + edit.text + text.slice(edit.at + edit.cut), formula);
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
  const signed = withSigns(stored.replace(/^=/, ""));
  return `=${mapCode(signed, typed).replace(/(?<=[\p{L}\w.])\[\](?=([^"]*"[^"]*")*[^"]*$)/gu, "[#Data]")}`;
}

/**
 * The rows of a table are `Figures[]` in files. Excel knows the other two forms as well, other programs take `Figures`
 * for the headings too. Source: [MS-XLSX] 2.2.2 (structure-reference).
 */
function withDataBrackets(formula: string, { tables }: Referable): string {
  const pieces = formulaPieces(formula);
  const isTable = (name: string) => tables.some((table) => sameName(table.name, name));
  return pieces
    .map((piece, i) => {
      if (i % 2 === 1) return /^\[#data\]$/i.test(piece) ? "[]" : piece;
      const isOpen = pieces[i + 1]?.startsWith("[") ?? false;
      return piece.replace(
        /(?<![\p{L}\w.$!\\])[\p{L}_\\][\p{L}\w.\\]*(?![\p{L}\w.(!])/gu,
        (name, at: number) =>
          isTable(name) && !(isOpen && at + name.length === piece.length) ? `${name}[]` : name,
      );
    })
    .join("");
}

/** Undoes `withFunctions`. */
function withSigns(stored: string): string {
  const code = codeAlone(stored);
  const call = /_xlfn\.(ANCHORARRAY|SINGLE)\(/i.exec(code);
  if (!call) return stored;
  const start = call.index + call[0].length;
  const end = closing(code, start);
  if (end === undefined) return stored;
  const inner = withSigns(stored.slice(start, end));
  const isSimple = !/[-+*/^&=<>,\s]/.test(withoutBrackets(codeAlone(inner)));
  const operand = isSimple ? inner : `(${inner})`;
  const signed = call[1]?.toUpperCase() === "SINGLE" ? `@${operand}` : `${operand}#`;
  return stored.slice(0, call.index) + signed + withSigns(stored.slice(end + 1));
}

/** Where the bracket closes that was opened before `start`. */
function closing(code: string, start: number): number | undefined {
  let depth = 1;
  for (let at = start; at < code.length; at++) {
    if (code[at] === "(") depth++;
    else if (code[at] === ")" && --depth === 0) return at;
  }
  return undefined;
}

function withoutBrackets(code: string): string {
  const inner = code.replace(/\([^()]*\)/g, "");
  return inner === code ? code : withoutBrackets(inner);
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
