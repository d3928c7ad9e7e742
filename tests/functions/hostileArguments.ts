import { defaultGarmentClasses } from "../../addin/chart/garmentClass.ts";
import { garmentClassCells } from "../../addin/chart/readGarmentClasses.ts";
import { measures } from "../../addin/measures/dictionary.ts";
import type { FunctionDescriptor, NamedParameter } from "../../functions/descriptor.ts";
import { seeded } from "../similarity/condensedOf.ts";

/** A source of choices that can be repeated from its seed. */
interface Dice {
  /** From 0 to below 1. */
  real(): number;
  /** A whole number from 0 to below `size`. */
  below(size: number): number;
  one<T>(of: readonly T[]): T;
  chance(share: number): boolean;
}

type Cell = unknown;
type Table = readonly (readonly Cell[])[];

/** Arguments for one call: most of them meant well, some in every way that a worksheet or somebody’s hands can spoil them. */
export function hostileArguments({ name, parameters }: FunctionDescriptor, nth: number): readonly unknown[] {
  const dice = diceOf(hash(name) + nth);
  const chart = anyChart(dice);
  const patterns = anyPatterns(dice, chart);
  const given = parameters.map((parameter) => argument(parameter, dice, chart, patterns));
  return dice.chance(0.05) ? given.slice(0, dice.below(given.length + 1)) : given;
}

function argument(parameter: NamedParameter, dice: Dice, chart: Table, patterns: Table): unknown {
  if (parameter.optional && dice.chance(0.5)) return dice.one([undefined, null, "", 0, [[null]]]);
  if (dice.chance(0.04)) return dice.chance(0.5) ? anyCell(dice) : anyBlock(dice);
  switch (parameter.name) {
    case "chart":
    case "figures":
      return chart;
    case "patterns":
      return patterns;
    case "tolerances":
      return anyTolerances(dice, chart);
    case "rules":
      return parameter.help.includes("Piece") ? anyGradeRules(dice) : anyEaseRules(dice);
    case "classes":
      return anyClasses(dice);
    case "figure":
    case "other":
    case "base":
    case "target":
      if (parameter.type === "any" && parameter.help.includes("measures")) return anyBlock(dice);
      return dice.chance(0.85) ? nameFrom(dice, chart) : anyCell(dice);
    case "measure":
      return dice.chance(0.85) ? headingFrom(dice, chart) : anyCell(dice);
    case "measures":
      return dice.chance(0.7)
        ? [headingFrom(dice, chart), headingFrom(dice, chart)].join(", ")
        : anyBlock(dice);
    case "pattern":
      return dice.chance(0.85)
        ? patterns[1 + dice.below(Math.max(1, patterns.length - 1))]?.[0]
        : anyCell(dice);
    case "garment_class":
      return dice.chance(0.8) ? dice.one(defaultGarmentClasses).name : anyCell(dice);
    case "zone":
      return dice.chance(0.8) ? dice.one(["body", "all", "torso", "arms", "head", "Coat"]) : anyCell(dice);
  }
  if (parameter.choices && dice.chance(0.8)) return dice.one(parameter.choices.values).word;
  if (parameter.shape === "range") return anyBlock(dice);
  return dice.chance(0.6) ? plainLength(dice) : anyCell(dice);
}

/** As long as a cell can be, nearly. */
const hugeText = "🧵".repeat(16_000);
const oddNumbers = [
  0, -0, 1, -1, 0.1, 1 / 3, 1e-9, 5e-324, 1e-300, 1e15, 1e21, 1e200, 1.7e308, -1.7e308, 46_150, 45_000.5, 2 ** 53,
  Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY,
]; // prettier-ignore
const oddTexts = [
  ...["", " ", "\t\n", "-", "n/a", "?", "0", "-5", "5 3/8", '5⅜"', "13,65 cm", "1' 4 1/2\"", "101 to 103", "5-6", "1.234,5"],
  ...["1e400", "9".repeat(400), "1/0", "3/0", "∞", "NaN", "Infinity", "25%", "-25 %", "none", "TRUE", "8 May", "2026-05-08"],
  ...["__proto__", "constructor", "toString", "hasOwnProperty", "valueOf", "prototype", "undefined", "null", "[object Object]"],
  ...["🧵🪡👗", "👩🏽‍🦱", "مقاس الصدر", "מותן", "\u202eabc", "e\u0301", "İ", "ﬁt", "胸囲", "\u0000", "\ud800", "\u200b", "\ufeff"],
  ...["<b>x</b>", "=1+1", "'", '"', "“”", "a,b;c", "x".repeat(300), "Bust ".repeat(60), "a\nb\nc", "$1 $& $`", "%s", "\\"],
]; // prettier-ignore
const errors = [
  "#N/A",
  "#VALUE!",
  "#REF!",
  "#DIV/0!",
  "#NUM!",
  "#NAME?",
  "#NULL!",
  "#SPILL!",
  "#BUSY!",
  "x".repeat(500),
];

function anyCell(dice: Dice): Cell {
  switch (dice.below(12)) {
    case 0:
      return null;
    case 1:
      return undefined;
    case 2:
      return dice.chance(0.5);
    case 3:
      return { error: dice.one(errors) };
    case 4:
      return { type: "Error", basicValue: dice.one(errors), errorType: "Any" };
    case 5:
      return dice.one<Cell>([
        { type: "Empty", basicValue: "" },
        { type: "FormattedNumber", basicValue: plainLength(dice), numberFormat: "0.0" },
        { type: "Entity", text: "an entity", properties: {} },
        { type: "Double", basicValue: dice.one(oddNumbers) },
        { type: "String", basicValue: dice.one(oddTexts) },
        new Date(0),
        [],
        [[1]],
        {},
      ]);
    case 6:
    case 7:
      return dice.one(oddNumbers);
    case 8:
      return dice.chance(0.02) ? hugeText : plainLength(dice);
    case 9:
      return plainLength(dice);
    default:
      return dice.one(oddTexts);
  }
}

function plainLength(dice: Dice): number {
  return Math.round(50 + 400 * dice.real() ** 2) / dice.one([1, 2, 10]);
}

/** A range without any order, some of whose rows are short. */
function anyBlock(dice: Dice): unknown {
  const width = 1 + dice.below(5);
  const cell = dice.chance(0.5) ? plainLength : anyCell;
  return Array.from({ length: dice.below(6) }, () =>
    Array.from({ length: dice.chance(0.1) ? dice.below(9) : width }, () => cell(dice)),
  );
}

const figureNames = [
  ...["Linnet", "Dunnock", "Teal", "Siskin", "Wren 2", "Wren 10", "Wren", "Ardwen", "8", "10", "A, B", "a"],
  ...["__proto__", "constructor", "מותן", "أردوين", "👗", "e\u0301", "é", "İda", "x".repeat(120)],
]; // prettier-ignore
const ownHeadings = [
  "Wing span",
  "Tail (cm)",
  "Weight",
  "Size",
  "__proto__",
  "constructor",
  "מותן",
  "👗 (in)",
];
const attributes = ["Hands removable", "Head removable", "Wig", "Body", "Jointed", "Foot shape", "Notes"];

/** Figures of one build in many sizes, with noise, twins, gaps and slips; then perhaps spoilt. */
function anyChart(dice: Dice): Table {
  const columns = Array.from({ length: 1 + dice.below(dice.chance(0.1) ? 40 : 11) }, () => anyHeading(dice));
  const rows = dice.chance(0.04) ? 20 + dice.below(40) : 1 + dice.below(12);
  const names = shuffled(dice, figureNames);
  const gaps = dice.one([0, 0, 0.1, 0.5]);
  const slips = dice.one([0, 0.02, 0.1]);
  const body = columns.map(() => 60 + 200 * dice.real());
  const noise = dice.one([0, 0.001, 0.02, 0.2]);
  const table = Array.from({ length: rows }, (_, row) => {
    const size = dice.chance(0.2) ? 1 : Math.exp(dice.real() - 0.5);
    const name = dice.chance(0.03) ? anyCell(dice) : (names[row] ?? `Figure ${String(row)}`);
    return [
      name,
      ...body.map((mm, c) => {
        if (dice.chance(gaps)) return dice.one([null, "", "n/a", 0, undefined]);
        if (dice.chance(slips)) return anyCell(dice);
        const value = mm * size * Math.exp(noise * (dice.real() - 0.5)) * (dice.chance(slips) ? 10 : 1);
        if (attributes.includes(columns[c] ?? "")) return dice.one(["yes", "no", "soft", "heeled", ""]);
        return Math.round(value * 2) / 2 / (columns[c]?.includes("(in)") ? 25.4 : 1);
      }),
    ];
  });
  return spoilt(dice, [["Figure", ...columns], ...table]);
}

function anyHeading(dice: Dice): string {
  if (dice.chance(0.08)) return dice.one(ownHeadings);
  if (dice.chance(0.06)) return dice.one(attributes);
  const usual = dice.chance(0.6)
    ? dice.one(["Bust", "Waist", "Hip", "Height", "Arm length", "Inside leg"])
    : "";
  const name = usual || dice.one(measures).name;
  return name + dice.one(["", "", "", "", " (in)", " (cm)", " (left)", " (right)"]);
}

/** Now and then: ragged, turned round, with any cell anywhere, without headings, or with rows and columns that are empty. */
function spoilt(dice: Dice, table: readonly (readonly Cell[])[]): Table {
  if (dice.chance(0.75)) return table;
  switch (dice.below(7)) {
    case 0:
      return table.map((row) => row.slice(0, dice.below(row.length + 1)));
    case 1:
      return (table[0] ?? []).map((_, c) => table.map((row) => row[c]));
    case 2:
      return table.map((row) => row.map((cell) => (dice.chance(0.15) ? anyCell(dice) : cell)));
    case 3:
      return table.slice(1);
    case 4:
      return table.map((row) => [...row, null]).concat([[], [null, 0, ""]]);
    case 5:
      return [...table, ...table.slice(1, 3)];
    default:
      return dice.chance(0.5) ? [] : table.slice(0, 1);
  }
}

function anyTolerances(dice: Dice, chart: Table): Table {
  const headings = (chart[0] ?? []).slice(1).map((heading) => heading);
  const classes = dice.chance(0.4) ? ["Coat", "Corset"] : [];
  const tolerance = () =>
    dice.chance(0.06)
      ? anyCell(dice)
      : dice.one<Cell>([1, 2, 3, 0.5, 2.5, "2 mm", "3%", "2 mm or 3%", "", "1/8 in"]);
  const rows = shuffled(dice, headings)
    .slice(0, 1 + dice.below(8))
    .map((heading) => [heading, tolerance(), ...classes.map(tolerance)]);
  return spoilt(dice, [["Measure", dice.one(["Tolerance", "Tolerance (mm)"]), ...classes], ...rows]);
}

function anyPatterns(dice: Dice, chart: Table): Table {
  const finished = [...new Set(Array.from({ length: 1 + dice.below(4) }, () => dice.one(["Bust", "Waist", "Hip", "Foot length", "Head girth"])))]; // prettier-ignore
  const openings = ["Neck opening", "Cuff opening", "Hem opening", "Waist opening"].filter(() =>
    dice.chance(0.4),
  );
  const rows = Array.from({ length: 1 + dice.below(6) }, (_, i) => [
    dice.chance(0.05) ? anyCell(dice) : `P${String(i + 1)}`,
    dice.chance(0.06) ? anyCell(dice) : dice.one(defaultGarmentClasses).name,
    dice.chance(0.5) ? nameFrom(dice, chart) : "",
    dice.one<Cell>(["", "", 10, "25%", 0.2, anyCell(dice)]),
    dice.one<Cell>(["", "", 0.4, 1, anyCell(dice)]),
    dice.one<Cell>(["", "", `P${String(1 + dice.below(6))}`, "P1, P2", anyCell(dice)]),
    dice.one<Cell>(["back", "front", "none", "side", "full length", "", anyCell(dice)]),
    dice.one<Cell>(["", 30, 60, anyCell(dice)]),
    ...[...openings, ...finished].map(() =>
      dice.chance(0.05) ? anyCell(dice) : dice.one<Cell>(["", plainLength(dice)]),
    ),
  ]);
  const fixed = ["Pattern", "Garment class", "Drafted for", "Stretch %", "Thickness", "Worn over", "Opens", "Opening length"]; // prettier-ignore
  return spoilt(dice, [[...fixed, ...openings, ...finished], ...rows]);
}

function anyEaseRules(dice: Dice): Table {
  const amount = () => (dice.chance(0.06) ? anyCell(dice) : dice.one<Cell>(["", 2, 5, 10, "4%", -2]));
  const rows = Array.from({ length: 1 + dice.below(4) }, () => [
    dice.chance(0.08) ? anyCell(dice) : dice.one(defaultGarmentClasses).name,
    dice.chance(0.08) ? anyCell(dice) : dice.one(["Bust", "Waist", "Hip", "Thigh girth"]),
    ...[amount(), amount(), dice.one<Cell>(["", 20, 30]), dice.one<Cell>(["", 20, 50])],
  ]);
  return spoilt(dice, [
    ["Garment class", "Measure", "Least %", "Least (mm)", "Most %", "Most (mm)"],
    ...rows,
  ]);
}

function anyGradeRules(dice: Dice): unknown {
  const pieces = [
    "Bodice front",
    "Skirt front",
    "Skirt back",
    "Sleeve",
    "Bodice",
    "Hood",
    "Stocking",
    "Sleve",
  ];
  if (dice.chance(0.5)) return [dice.one(pieces), dice.one(pieces)].join(", ");
  const share = () => (dice.chance(0.1) ? anyCell(dice) : dice.one<Cell>(["1/4", 0.25, "25%", "", -0.25, 1]));
  const rows = Array.from({ length: 1 + dice.below(4) }, () => [
    dice.one(pieces),
    dice.chance(0.1) ? anyCell(dice) : dice.one(["Waist at side", "Hip at side", "Hem at side"]),
    dice.chance(0.1) ? anyCell(dice) : dice.one(["Waist", "Hip", "Bust"]),
    share(),
    share(),
  ]);
  return spoilt(dice, [["Piece", "Point", "Measure", "Share across", "Share along"], ...rows]);
}

function anyClasses(dice: Dice): Table {
  const [headings = [], ...rows] = garmentClassCells();
  const own = ["Cape", "whole body", 4, "neck", "", ""];
  return spoilt(dice, [headings, ...shuffled(dice, rows).slice(0, 3), own]);
}

function nameFrom(dice: Dice, chart: Table): Cell {
  return chart[1 + dice.below(Math.max(1, chart.length - 1))]?.[0];
}

function headingFrom(dice: Dice, chart: Table): Cell {
  const headings = chart[0] ?? [];
  return headings[1 + dice.below(Math.max(1, headings.length - 1))];
}

function shuffled<T>(dice: Dice, items: readonly T[]): readonly T[] {
  return items
    .map((item) => ({ item, at: dice.real() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
}

function diceOf(seed: number): Dice {
  const real = seeded(seed);
  const below = (size: number) => Math.floor(real() * size);
  return { real, below, one: (of) => of[below(of.length)]!, chance: (share) => real() < share };
}

function hash(text: string): number {
  return [...text].reduce((sum, letter) => (Math.imul(sum, 31) + letter.charCodeAt(0)) | 0, 7);
}
