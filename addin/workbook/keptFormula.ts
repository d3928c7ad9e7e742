import { limits } from "./limits.ts";
import { formulaPieces } from "./xlsx/formulaPieces.ts";

/** Why a formula is not calculated: it asks another computer, or it is longer or deeper than can be calculated. */
export type NotCalculated = "asks" | "long" | "deep";

/**
 * Functions of spreadsheet programs that ask another computer, or another program, for what they show: with the
 * address they can send what stands in cells.
 * Source: Microsoft, “Excel functions (by category)”; Google, “Google spreadsheets function list”; both from memory.
 */
export const askingFunctions: readonly string[] = (
  "WEBSERVICE IMAGE RTD STOCKHISTORY CALL REGISTER.ID DDE SQL.REQUEST TRANSLATE DETECTLANGUAGE PY COPILOT " +
  "IMPORTDATA IMPORTFEED IMPORTHTML IMPORTRANGE IMPORTXML GOOGLEFINANCE GOOGLETRANSLATE " +
  "CUBEKPIMEMBER CUBEMEMBER CUBEMEMBERPROPERTY CUBERANKEDMEMBER CUBESET CUBESETCOUNT CUBEVALUE"
).split(" ");

/** As a word that is no table (`Image[…]`), sheet (`Image!A1`) or part of a longer name. Handed on, it needs no parenthesis. */
const asks = new RegExp(
  `(?<![\\p{L}\\w.])(?:_xl\\w+\\.)*(?:${askingFunctions.join("|").replaceAll(".", "\\.")})(?![\\p{L}\\w.[!])`,
  "iu",
);
/** `program|topic!item` asks a program on the same computer, and can start one. */
const asksProgram = /[\p{L}\w"]\|\S+!/iu;

/** Why a formula, with its leading `=`, must not be calculated; `undefined` for all others. */
export function notCalculated(formula: string): NotCalculated | undefined {
  if (formula.length > limits.formula + 1) return "long";
  const code = withoutTexts(formula);
  if (asks.test(code) || asksProgram.test(code)) return "asks";
  if ((code.slice(1).match(/[-+*/^&=<>%@#:]/g)?.length ?? 0) > limits.operators) return "long";
  return depthOf(formula) > limits.formulaDepth ? "deep" : undefined;
}

/** What is said of such formulas, after their number. */
export const notCalculatedWords: Readonly<Record<NotCalculated, string>> = {
  asks: "would ask another computer or program",
  long: `longer than ${limits.formula.toLocaleString("en-GB")} characters or ${limits.operators.toLocaleString("en-GB")} operators`,
  deep: `nested more than ${String(limits.formulaDepth)} deep`,
};

/** Quoted text, sheet names and what stands in square brackets may hold any word. */
function withoutTexts(formula: string): string {
  return formulaPieces(formula)
    .map((piece, i) => (i % 2 === 0 ? piece : piece.startsWith("[") ? "[]" : '""'))
    .join("");
}

function depthOf(formula: string): number {
  let depth = 0;
  let deepest = 0;
  let quote = "";
  for (const letter of formula) {
    if (quote !== "") quote = letter === quote ? "" : quote;
    else if (letter === '"' || letter === "'") quote = letter;
    else if ("({[".includes(letter)) deepest = Math.max(deepest, ++depth);
    else if (")}]".includes(letter)) depth--;
  }
  return deepest;
}
