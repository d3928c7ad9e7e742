import { cellNamed } from "./address.ts";

/** An argument of a call within a formula. */
export interface CallArgument {
  /** Tells the calls of one formula apart. */
  readonly call: number;
  /** The function, in capitals. */
  readonly name: string;
  /** Place of the argument, from 0. */
  readonly argument: number;
}

/** A text, or a reference to cells, where it stands in a formula. */
export type FormulaPart = {
  /** The arguments that it stands in, the innermost first. */
  readonly within: readonly CallArgument[];
} & (
  | {
      readonly kind: "text";
      /** Places in the formula, from 0, with the quotation marks; `end` not included. */
      readonly start: number;
      readonly end: number;
      readonly text: string;
    }
  | {
      readonly kind: "area";
      /** `undefined` for the sheet of the formula. */
      readonly sheet: string | undefined;
      readonly row: number;
      readonly column: number;
      readonly rows: number;
      readonly columns: number;
    }
  | {
      readonly kind: "table";
      /** `undefined` for the table that the formula stands in. */
      readonly table: string | undefined;
      /** The columns named, of a stretch of them the first and the last; none for all. */
      readonly columns: readonly string[];
      readonly isThisRow: boolean;
    }
);

const cell = String.raw`\$?[a-z]{1,3}\$?\d{1,7}`;
const word = String.raw`[\p{L}_\\][\p{L}\p{N}_.\\?]*`;
const token = new RegExp(
  [
    String.raw`(?<text>"(?:[^"]|"")*")`,
    String.raw`(?:'(?<quoted>(?:[^']|'')+)'!|(?<bare>[\p{L}_][\p{L}\p{N}_.]*)!)?(?<from>${cell})(?::(?<to>${cell}))?(?![\p{L}\p{N}_.(!\[])`,
    String.raw`(?<table>${word})?\[(?<inside>(?:'.|[^\[\]']|\[(?:'.|[^\[\]'])*\])*)\]`,
    String.raw`'(?:[^']|'')*'`,
    String.raw`(?<call>${word})\s*\(`,
    String.raw`(?:${word}|[\d.]+(?:e[+-]?\d+)?)`,
    String.raw`(?<mark>[(){},])`,
    String.raw`[^]`,
  ].join("|"),
  "giu",
);

/**
 * The texts of a formula, and the cells and tables that it names, each with the arguments that it stands in. Whole columns
 * and rows, such as `A:A`, and names that were given to cells are left out.
 *
 * @param formula with its leading `=`, in English with commas
 */
export function formulaParts(formula: string): readonly FormulaPart[] {
  const parts: FormulaPart[] = [];
  const open: { readonly call: number; readonly name: string; argument: number }[] = [];
  let calls = 0;
  for (const found of formula.matchAll(token)) {
    const { text, quoted, bare, from, to, table, inside, call, mark } = found.groups ?? {};
    const within = open
      .filter(({ name }) => name !== "")
      .map((each) => ({ ...each }))
      .reverse();
    if (text !== undefined) {
      const end = found.index + text.length;
      parts.push({ kind: "text", start: found.index, end, text: unquoted(text), within });
    } else if (from !== undefined) {
      const area = areaOf(from, to ?? from);
      if (area) parts.push({ kind: "area", sheet: bare ?? quoted?.replaceAll("''", "'"), ...area, within });
    } else if (inside !== undefined) {
      parts.push({ kind: "table", table, ...columnsIn(inside), within });
    } else if (call !== undefined) {
      open.push({ call: calls++, name: call.toUpperCase(), argument: 0 });
    } else if (mark === "(" || mark === "{") {
      open.push({ call: -1, name: "", argument: 0 });
    } else if (mark === ")" || mark === "}") {
      open.pop();
    } else if (mark === ",") {
      const last = open.at(-1);
      if (last) last.argument++;
    }
  }
  return parts;
}

/** A text as it stands in a formula, with its quotation marks. */
export function quotedText(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

function unquoted(text: string): string {
  return text.slice(1, -1).replaceAll('""', '"');
}

function areaOf(from: string, to: string) {
  const [a, b] = [cellNamed(from), cellNamed(to)];
  if (!a || !b) return undefined;
  return {
    row: Math.min(a.row, b.row),
    column: Math.min(a.column, b.column),
    rows: Math.abs(a.row - b.row) + 1,
    columns: Math.abs(a.column - b.column) + 1,
  };
}

/** What stands between the brackets behind a table’s name. Source: [MS-XLSX] 2.2.2 (structure-reference). */
function columnsIn(inside: string): { readonly columns: readonly string[]; readonly isThisRow: boolean } {
  const isShort = inside.startsWith("@");
  const given = isShort ? inside.slice(1) : inside;
  const parts = given.startsWith("[")
    ? [...given.matchAll(/\[((?:'.|[^[\]'])*)\]/gsu)].map(([, part = ""]) => part)
    : [given];
  const isItem = (part: string) => part.trim() === "" || part.trim().startsWith("#");
  return {
    columns: parts.filter((part) => !isItem(part)).map((part) => part.trim().replace(/'(.)/gsu, "$1")),
    isThisRow: isShort || parts.some((part) => /^#this row$/i.test(part.trim())),
  };
}
