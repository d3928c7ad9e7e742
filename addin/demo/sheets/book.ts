import type { CellContent, PickListContent } from "../../workbook/content.ts";
import { demoRows } from "../figuresTable.ts";
import { patterns } from "../patterns.ts";

/** What a formula needs before it can answer. */
export interface Need {
  /** A condition, as in a formula, that holds while it is missing. */
  readonly missing: string;
  /** What to do then, in words without quotation marks. */
  readonly words: string;
}

/** What the sheets of questions are for: the demo, where all is there to answer them, or a book without anything in it. */
export interface Book {
  /** A cell in which a question is asked, for example with the name of a figure. */
  readonly asked: (inDemo: string) => CellContent;
  /** The first cell of an answer. In an empty book it says what to do until there is something to read. */
  readonly answer: (formula: string, needs: readonly Need[]) => CellContent;
  /** Words that the demo has of its own. */
  readonly says: (inDemo: string, otherwise: string) => string;
  /** How many figures and patterns to make room for. */
  readonly figures: number;
  readonly patterns: number;
}

/** The book of the invented maker. */
export function demoBook(): Book {
  return {
    asked: (inDemo) => ({ value: inDemo }),
    answer: (formula) => ({ formula }),
    says: (inDemo) => inDemo,
    figures: demoRows().length,
    patterns: patterns.length,
  };
}

/** A book to be filled. */
export const emptyBook: Book = {
  asked: () => ({ format: "@" }),
  answer: (formula, needs) => ({
    formula: needs
      .reduceRight(
        (rest, { missing, words }) => `IF(${missing}, "${words}", ${rest})`,
        formula.replace(/^=/, ""),
      )
      .replace(/^/, "="),
    ...(needs[0] && { value: needs[0].words }),
  }),
  says: (_, otherwise) => otherwise,
  figures: 100,
  patterns: 100,
};

/** Names alone are nothing to compare. */
export const figuresNeeded: Need = {
  missing: "COUNTA(Figures[#Data])=COUNTA(Figures[Figure])",
  words: "Fill in the sheet Figures first",
};

export const patternsNeeded: Need = {
  missing: "COUNTA(Patterns[Pattern])=0",
  words: "Fill in the sheet Patterns first",
};

/** @param cell in A1 notation, where the figure, pattern or measure is to be named */
export function chosen(what: "figure" | "pattern" | "measure", cell: string): Need {
  return { missing: `${cell}=""`, words: `Choose a ${what} in ${cell}` };
}

/** The names that can be chosen there. Row and column from 0. */
export function choices(
  what: "figure" | "pattern" | "measure",
  row: number,
  column: number,
  rows = 1,
): PickListContent {
  const from = {
    figure: { table: "Figures", heading: "Figure" },
    pattern: { table: "Patterns", heading: "Pattern" },
    measure: { table: "Tolerances", heading: "Measure" },
  };
  return { row, column, rows, columns: 1, from: from[what] };
}
