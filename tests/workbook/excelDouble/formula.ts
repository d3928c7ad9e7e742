import { columnLetters } from "../../../addin/chart/columnLetters.ts";

/*
 * Enough of Excel’s formula language to refuse what does not parse, to move references with their cells, and to work
 * out the rules of conditional formats. The grammar follows Microsoft’s “Overview of formulas in Excel”, “Calculation
 * operators and precedence in Excel” and “Using structured references with Excel tables”.
 */

type Kind =
  | "space"
  | "text"
  | "number"
  | "error"
  | "sheet"
  | "cell"
  | "lines"
  | "structure"
  | "function"
  | "name"
  | "operator";

export interface Token {
  readonly kind: Kind;
  readonly text: string;
}

const patterns: readonly (readonly [Kind, RegExp])[] = [
  ["space", /[ \n]+/y],
  ["text", /"(?:[^"]|"")*"/y],
  ["error", /#(?:N\/A|VALUE!|REF!|DIV\/0!|NAME\?|NUM!|NULL!|SPILL!|CALC!)/y],
  ["sheet", /(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!/uy],
  // R1C1 notation is known from A1 notation by the caller.
  ["lines", /\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}(?![\p{L}\p{N}_.(])|\$?\d+:\$?\d+/uy],
  [
    "cell",
    /\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6}(?![\p{L}\p{N}_.([])|R(?:\[-?\d+\]|\d+)?C(?:\[-?\d+\]|\d+)?(?![\p{L}\p{N}_.([])/uy,
  ],
  ["number", /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y],
  ["function", /[\p{L}_][\p{L}\p{N}_.]*(?=\()/uy],
  ["structure", /[\p{L}_\\][\p{L}\p{N}_.\\]*(?=\[)|(?=\[)/uy],
  ["name", /[\p{L}_\\][\p{L}\p{N}_.\\]*/uy],
  ["operator", /<>|<=|>=|[-+*/^&=<>%(){},;:@#]/y],
];

/** A formula that Excel would not take, with why. */
export class FormulaError extends Error {}

export function tokens(formula: string): Token[] {
  if (!formula.startsWith("=")) throw new FormulaError("It does not begin with =.");
  const found: Token[] = [];
  for (let at = 1; at < formula.length;) {
    const token = tokenAt(formula, at);
    if (!token) throw new FormulaError(`“${formula.slice(at, at + 10)}” is not understood.`);
    found.push(token);
    at += token.text.length;
  }
  return found;
}

function tokenAt(formula: string, at: number): Token | undefined {
  for (const [kind, pattern] of patterns) {
    pattern.lastIndex = at;
    const text = pattern.exec(formula)?.[0];
    if (text === undefined) continue;
    if (kind === "structure") return { kind, text: text + brackets(formula, at + text.length) };
    if (text !== "") return { kind, text };
  }
  return undefined;
}

/** `[…]` with all that is nested in it; an apostrophe keeps the next character from being read as a bracket. */
function brackets(formula: string, at: number): string {
  let depth = 0;
  for (let i = at; i < formula.length; i++) {
    if (formula[i] === "'") i++;
    else if (formula[i] === "[") depth++;
    else if (formula[i] === "]" && --depth === 0) return formula.slice(at, i + 1);
  }
  throw new FormulaError("A bracket [ is not closed.");
}

export type Node =
  | { readonly kind: "value"; readonly value: string | number | boolean }
  | { readonly kind: "error"; readonly error: string }
  | { readonly kind: "reference"; readonly text: string }
  | { readonly kind: "structure"; readonly table: string; readonly columns: readonly string[] }
  | { readonly kind: "name"; readonly name: string }
  | { readonly kind: "call"; readonly name: string; readonly of: readonly (Node | undefined)[] }
  | { readonly kind: "operation"; readonly operator: string; readonly of: readonly Node[] };

const binary = [["=", "<>", "<=", ">=", "<", ">"], ["&"], ["+", "-"], ["*", "/"], ["^"]];

/** @throws {FormulaError} when Excel would not take the formula */
export function parse(formula: string): Node {
  const list = tokens(formula).filter(({ kind }) => kind !== "space");
  let at = 0;
  const peek = () => list[at]?.text ?? "";
  const isOperator = (...wanted: readonly string[]) =>
    list[at]?.kind === "operator" && wanted.includes(peek());
  const expect = (wanted: string) => {
    if (!isOperator(wanted)) throw new FormulaError(`“${wanted}” is missing before “${peek()}”.`);
    at++;
  };

  const level = (depth: number): Node => {
    const operators = binary[depth];
    if (!operators) return sign();
    let left = level(depth + 1);
    while (isOperator(...operators)) {
      const operator = peek();
      at++;
      left = { kind: "operation", operator, of: [left, level(depth + 1)] };
    }
    return left;
  };
  const sign = (): Node => {
    if (isOperator("+", "-", "@")) {
      const operator = `unary ${peek()}`;
      at++;
      return { kind: "operation", operator, of: [sign()] };
    }
    let inner = range();
    while (isOperator("%")) {
      at++;
      inner = { kind: "operation", operator: "%", of: [inner] };
    }
    return inner;
  };
  const range = (): Node => {
    let left = spilled();
    while (isOperator(":")) {
      at++;
      left = { kind: "operation", operator: ":", of: [left, spilled()] };
    }
    return left;
  };
  const spilled = (): Node => {
    const inner = atom();
    if (!isOperator("#")) return inner;
    if (inner.kind !== "reference") throw new FormulaError("# stands after something that is not a cell.");
    at++;
    return { kind: "operation", operator: "#", of: [inner] };
  };
  const list_ = (end: string): (Node | undefined)[] => {
    const items: (Node | undefined)[] = [];
    if (isOperator(end)) {
      at++;
      return items;
    }
    for (;;) {
      items.push(isOperator(",", end) ? undefined : level(0));
      if (isOperator(end)) break;
      expect(",");
    }
    at++;
    return items;
  };
  const constants = (): Node => {
    const of: Node[] = [];
    for (;;) {
      of.push(sign());
      if (isOperator("}")) break;
      if (!isOperator(",", ";")) throw new FormulaError("A list in { } is not closed.");
      at++;
    }
    at++;
    return { kind: "operation", operator: "{}", of };
  };
  const atom = (): Node => {
    const token = list[at];
    if (!token) throw new FormulaError("The formula ends too early.");
    at++;
    switch (token.kind) {
      case "text":
        return { kind: "value", value: token.text.slice(1, -1).replaceAll('""', '"') };
      case "number":
        return { kind: "value", value: Number(token.text) };
      case "error":
        return { kind: "error", error: token.text };
      case "cell":
      case "lines":
        return { kind: "reference", text: token.text };
      case "sheet": {
        const inner = atom();
        if (inner.kind !== "reference") throw new FormulaError(`Nothing to find on ${token.text}`);
        return { kind: "reference", text: token.text + inner.text };
      }
      case "structure":
        return structure(token.text);
      case "function": {
        at++;
        return { kind: "call", name: token.text.toUpperCase(), of: list_(")") };
      }
      case "name":
        if (/^(true|false)$/i.test(token.text)) return { kind: "value", value: /^true$/i.test(token.text) };
        return { kind: "name", name: token.text };
      case "operator":
        if (token.text === "(") {
          const inner = level(0);
          expect(")");
          return inner;
        }
        if (token.text === "{") return constants();
        throw new FormulaError(`“${token.text}” stands where a value is needed.`);
      case "space":
        throw new FormulaError("Unreachable.");
    }
  };

  const node = level(0);
  if (at < list.length) throw new FormulaError(`“${peek()}” is one too many.`);
  return node;
}

/** `Figures[#All]`, `Figures[[#Headers],[Bust]:[Waist]]`, `[@Bust]`. */
function structure(text: string): Node {
  const table = /^[^[]*/.exec(text)?.[0] ?? "";
  const inside = text.slice(table.length + 1, -1);
  const parts = inside.includes("[")
    ? [...inside.matchAll(/\[((?:'.|[^\]])*)\]/g)].map(([, part]) => part ?? "")
    : [inside];
  const names = parts.map((part) => part.replace(/^@/, "").trim());
  const specials = ["#all", "#data", "#headers", "#totals", "#this row"];
  for (const name of names) {
    if (name.startsWith("#") && !specials.includes(name.toLowerCase()))
      throw new FormulaError(`There is nothing like “${name}” in tables.`);
  }
  const columns = names.filter((name) => name !== "" && !name.startsWith("#"));
  return { kind: "structure", table, columns: columns.map((name) => name.replace(/'(.)/g, "$1")) };
}

/** Every node of a formula, itself included. */
export function everyNode(node: Node): readonly Node[] {
  if (node.kind !== "call" && node.kind !== "operation") return [node];
  return [node, ...node.of.flatMap((inner) => (inner ? everyNode(inner) : []))];
}

/** A1 notation → R1C1 notation, as the formula reads in the cell at that row and column (from 0). */
export function toR1C1(formula: string, row: number, column: number): string {
  return mapCells(formula, (text) => {
    const [, fixedColumn, letters = "", fixedRow, digits] = /^(\$?)([A-Za-z]+)(\$?)(\d+)$/.exec(text) ?? [];
    if (digits === undefined) return text;
    const [atRow, atColumn] = [Number(digits) - 1, columnNumber(letters)];
    return `R${fixedRow ? String(atRow + 1) : relative(atRow - row)}C${fixedColumn ? String(atColumn + 1) : relative(atColumn - column)}`;
  });
}

/** R1C1 notation → A1 notation in that cell. */
export function toA1(formula: string, row: number, column: number): string {
  return mapCells(formula, (text) => {
    const [match, r, c] = /^R(\[-?\d+\]|\d+)?C(\[-?\d+\]|\d+)?$/.exec(text) ?? [];
    if (match === undefined) return text;
    const [atRow, atColumn] = [place(r, row), place(c, column)];
    if (atRow < 0 || atColumn < 0) return "#REF!";
    const isFixed = (part: string | undefined) => part !== undefined && !part.startsWith("[");
    return `${isFixed(c) ? "$" : ""}${columnLetters(atColumn)}${isFixed(r) ? "$" : ""}${String(atRow + 1)}`;
  });
}

/** Row or column (from 0) that one half of an R1C1 reference means in a cell. */
function place(part: string | undefined, from: number): number {
  if (part === undefined) return from;
  return part.startsWith("[") ? from + Number(part.slice(1, -1)) : Number(part) - 1;
}

function relative(by: number): string {
  return by === 0 ? "" : `[${String(by)}]`;
}

function mapCells(formula: string, map: (text: string) => string): string {
  return `=${tokens(formula)
    .map(({ kind, text }) => (kind === "cell" ? map(text) : text))
    .join("")}`;
}

function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

export type Value = string | number | boolean | undefined | { readonly error: string };

/** What a cell holds, by row and column from 0. */
export type Look = (row: number, column: number) => Value;

/** Works out a formula in A1 notation; `undefined` for what the double does not know. */
export function evaluate(formula: string, look: Look): Value | undefined {
  try {
    return valueOf(parse(formula), look);
  } catch (error) {
    if (error instanceof Unknown) return { error: "#NAME?" };
    throw error;
  }
}

class Unknown extends Error {}

function valueOf(node: Node, look: Look): Value {
  switch (node.kind) {
    case "value":
      return node.value;
    case "error":
      return { error: node.error };
    case "reference": {
      const [, letters = "", digits] = /^\$?([A-Za-z]+)\$?(\d+)$/.exec(node.text) ?? [];
      if (digits === undefined) throw new Unknown();
      return look(Number(digits) - 1, columnNumber(letters));
    }
    case "operation":
      return operated(
        node.operator,
        node.of.map((each) => valueOf(each, look)),
      );
    case "call": {
      const call = functions[node.name];
      if (!call) throw new Unknown();
      return call(...node.of.map((each) => each && valueOf(each, look)));
    }
    case "structure":
    case "name":
      throw new Unknown();
  }
}

function operated(operator: string, [a, b]: readonly Value[]): Value {
  if (isError(a)) return a;
  if (isError(b)) return b;
  switch (operator) {
    case "=":
      return same(a, b);
    case "<>":
      return !same(a, b);
    case "<=":
      return numeric(a, b, (x, y) => x <= y);
    case ">":
      return numeric(a, b, (x, y) => x > y);
    case "+":
      return numeric(a, b, (x, y) => x + y);
    case "-":
      return numeric(a, b, (x, y) => x - y);
    case "*":
      return numeric(a, b, (x, y) => x * y);
    case "/":
      return numeric(a, b, (x, y) => (y === 0 ? { error: "#DIV/0!" } : x / y));
    case "unary -":
      return numeric(0, a, (x, y) => x - y);
    default:
      throw new Unknown();
  }
}

/** As Excel compares: text in any case; a blank cell is 0, "" and FALSE. */
function same(a: Value, b: Value): boolean {
  if (typeof a === "string" && typeof b === "string") return a.toLowerCase() === b.toLowerCase();
  const blank = (other: Value) => other === undefined || other === 0 || other === "" || other === false;
  if (a === undefined) return blank(b);
  if (b === undefined) return blank(a);
  return a === b;
}

function numeric(a: Value, b: Value, of: (x: number, y: number) => Value): Value {
  const [x, y] = [a, b].map((value) => (value === undefined ? 0 : Number(value)));
  return x === undefined || y === undefined || Number.isNaN(x) || Number.isNaN(y)
    ? { error: "#VALUE!" }
    : of(x, y);
}

function isError(value: Value): value is { readonly error: string } {
  return typeof value === "object";
}

function textOf(value: Value): string {
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return value === undefined || isError(value) ? "" : String(value);
}

const functions: Readonly<Record<string, (...of: Value[]) => Value>> = {
  AND: (...of) => of.find(isError) ?? of.every((value) => value !== false && value !== 0),
  ABS: (value) => (isError(value) ? value : numeric(value, 0, (x) => Math.abs(x))),
  LEN: (value) => (isError(value) ? value : textOf(value).length),
  LEFT: (value, count) => (isError(value) ? value : textOf(value).slice(0, Number(count ?? 1))),
  EXACT: (a, b) => (isError(a) ? a : isError(b) ? b : textOf(a) === textOf(b)),
  ISBLANK: (value) => value === undefined,
  ISNUMBER: (value) => typeof value === "number",
  ISTEXT: (value) => typeof value === "string",
  ISLOGICAL: (value) => typeof value === "boolean",
  ISERROR: (value) => isError(value),
};
