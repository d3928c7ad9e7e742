import type { Cell } from "../../chart/cell.ts";
import type { CellContent, SheetContent } from "../../workbook/content.ts";
import { formula, heading, plain, quiet, title } from "./parts.ts";

interface Sum {
  readonly question: string;
  readonly inputs: readonly Cell[];
  /** The row’s own inputs stand in B, C and D of row `r`. */
  readonly formula: (r: number) => string;
  readonly format?: string;
}

const sums: readonly Sum[] = [
  {
    question: "Bust of 182 mm and of 216 mm: what is the difference?",
    inputs: [182, 216],
    formula: (r) => `=FIT.DELTA(B${String(r)}, C${String(r)})`,
    format: "0.0",
  },
  {
    question: "Waist of 80 mm over cloth of 0.5 mm, two layers: what is it then?",
    inputs: [80, 0.5, 2],
    formula: (r) => `=FIT.OVER(B${String(r)}, C${String(r)}, D${String(r)})`,
    format: "0.0",
  },
  {
    question: "Bodice of 196 mm on a bust of 182 mm over 0.4 mm of underwear: how much ease?",
    inputs: [196, 182, 0.4],
    formula: (r) => `=FIT.EASE(B${String(r)}, C${String(r)}, D${String(r)})`,
    format: "0.0",
  },
  {
    question: "Dress of 143 mm on a bust of 135 mm: has it the right ease?",
    inputs: [143, 135, "Dress"],
    formula: (r) => `=FIT.EASECHECK(B${String(r)}, C${String(r)}, D${String(r)}, "Bust")`,
  },
  {
    question: "Neck opening of 150 mm, head of 165 mm, cloth that stretches 30 %: will it go over?",
    inputs: [150, 165, 0.3],
    formula: (r) => `=FIT.CLEARANCE(B${String(r)}, C${String(r)}, D${String(r)})`,
    format: "0.0",
  },
  {
    question: "5 3/8 inches in mm",
    inputs: ["5 3/8", "mm", "in"],
    formula: (r) => `=FIT.LENGTH(B${String(r)}, C${String(r)}, D${String(r)})`,
    format: "0.0",
  },
  {
    question: "136.5 mm on an inch tape, to the nearest eighth",
    inputs: [136.5, "mm", 8],
    formula: (r) => `=FIT.TAPE(B${String(r)}, C${String(r)}, D${String(r)})`,
  },
  {
    question: "A figure 406 mm tall that stands for a woman of 1680 mm: 1 to …",
    inputs: [406, 1680],
    formula: (r) => `=FIT.FIGURESCALE(B${String(r)}, C${String(r)})`,
    format: "0.00",
  },
  {
    question: "Two figures of the chart: how far apart are they, in tolerances?",
    inputs: ["Ardwen", "Dovelle"],
    formula: (r) => `=FIT.APART(Figures[#All], B${String(r)}, C${String(r)}, Tolerances[#All])`,
    format: "0.00",
  },
];

/** The same places, measured on two days, mm. */
const repeated: readonly (readonly [place: string, first: number, second: number])[] = [
  ["Bust", 182, 182.5],
  ["Waist", 134, 134],
  ["Hip", 194, 193.5],
  ["Thigh", 108, 109],
  ["Upper arm", 50, 50],
  ["Wrist", 33, 33.5],
];

const waists: readonly number[] = [134, 134.5, 134, 133.5, 134, 143];

/** Small examples of the functions that give one number, and of those that read a short list. */
export function smallSumsSheet(): SheetContent {
  const head: (CellContent | undefined)[][] = [
    [title("Small sums")],
    [quiet("Change the numbers. The answer is in the units of what you type.")],
    [],
    ["Question", "", "", "", "Answer"].map(headingOrGap),
  ];
  const sumRows = sums.map(({ question, inputs, formula: text, format }, i) => [
    plain(question),
    ...[0, 1, 2].map((k) => inputCell(inputs[k])),
    formula(text(head.length + i + 1), format),
  ]);
  const repeatedAt = head.length + sumRows.length + 1;
  const repeatedRows = [
    ["The same places measured twice, mm", "First", "Second", "", "Typical error of one reading"].map(
      heading,
    ),
    ...repeated.map((row, i) => [
      ...row.map(plain),
      undefined,
      i === 0
        ? formula(
            `=FIT.TEM(${rangeOf("B", repeatedAt + 2, repeated.length)}, ${rangeOf("C", repeatedAt + 2, repeated.length)})`,
            "0.00",
          )
        : undefined,
    ]),
  ];
  const waistsAt = repeatedAt + repeatedRows.length + 1;
  const waistRows = [
    ["Waists of one body, mm: which stands out?", "Waist", "", "", "Beyond 3.5 either way: look again"].map(
      heading,
    ),
    ...waists.map((waist, i) => [
      undefined,
      plain(waist),
      undefined,
      undefined,
      i === 0 ? formula(`=FIT.SCORE(${rangeOf("B", waistsAt + 2, waists.length)})`) : undefined,
    ]),
  ];
  return {
    name: "Small sums",
    cells: [...head, ...sumRows, [], ...repeatedRows, [], ...waistRows],
    columnWidths: [520, 100, 100, 100, 220],
  };
}

function headingOrGap(text: string): CellContent | undefined {
  return text === "" ? undefined : heading(text);
}

/** Text stays text: `5 3/8` must not become a date. */
function inputCell(value: Cell): CellContent | undefined {
  if (value === undefined) return undefined;
  return typeof value === "string" ? { value, format: "@" } : { value };
}

/** A1 notation of a column of cells; rows count from 1. */
function rangeOf(letter: string, firstRow: number, rows: number): string {
  return `${letter}${String(firstRow)}:${letter}${String(firstRow + rows - 1)}`;
}
