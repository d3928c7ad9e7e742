import { describe, expect, it } from "vitest";
import { figureKey } from "../../addin/chart/find.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import { descriptors } from "../../functions/all.ts";
import type { FunctionDescriptor, Result } from "../../functions/descriptor.ts";
import { isTable } from "../../functions/descriptor.ts";
import { hostileArguments } from "./hostileArguments.ts";

/**
 * Sets of arguments for each function. MEASURE_BOOK_FUZZ sets another number: 20,000 take some minutes a function. A failure
 * names the number of its set, from which the arguments can be made again.
 */
const sets = Number(process.env.MEASURE_BOOK_FUZZ ?? 150);
/** A message stands in a small box beside the cell. */
const longestMessage = 200;
/** “Excel specifications and limits”: total number of characters that a cell can contain. */
const longestText = 32_767;

/**
 * What the order of the rows of a chart leaves alone: the whole answer, or its rows, which then come in another order. STEPS goes
 * from row to row, WHATFITS has a column for each figure, and of two figures with the same readings FLAGS tells the lower.
 */
const untouchedByOrder: Readonly<Record<string, "answer" | "rows">> = {
  ...{ EXPECTED: "answer", COMPARE: "answer", APART: "answer", NEAREST: "answer", SHARES: "answer" },
  ...{ GRADE: "answer", RESIZE: "answer", BASES: "answer", MEASURENEXT: "answer", TREE: "answer" },
  ...{ REASONS: "answer", WARDROBE: "answer", WEARERS: "rows", GROUPS: "rows", FLAGS: "rows" },
};

const ofCharts = descriptors.filter(({ name }) => name in untouchedByOrder);

describe.each(ofCharts)("$name, with the rows of its chart in another order", (descriptor) => {
  const at = descriptor.parameters.findIndex(({ name }) => name === "chart" || name === "figures");

  it("gives the same", { timeout: 3_600_000 }, () => {
    const faults: string[] = [];
    let compared = 0;
    for (let nth = 0; nth < sets && faults.length < 5; nth++) {
      const given = hostileArguments(descriptor, nth);
      const chart = given[at];
      if (!isPlainChart(chart)) continue;
      compared++;
      const [headings, ...rows] = chart;
      const turned = [headings, ...rows.slice(1).reverse(), rows[0]];
      const one = told(descriptor, given);
      const other = told(descriptor, given.with(at, turned));
      if (one !== other) faults.push(`${String(nth)}: ${one}\nand ${other}`);
    }
    expect(faults).toEqual([]);
    expect(compared).toBeGreaterThan(sets / 4);
  });
});

const twins = "same readings, two names";

/** A chart in which every figure has a name of its own: of two with one name, a formula finds the first. */
function isPlainChart(chart: unknown): chart is readonly (readonly unknown[])[] {
  if (!Array.isArray(chart) || chart.length < 2 || !chart.every(Array.isArray)) return false;
  const keys = chart.slice(1).map((row) => figureKey(typeof row[0] === "string" ? row[0] : ""));
  return !keys.includes("") && new Set(keys).size === keys.length;
}

/** The answer as text, without binary dust; places in the chart, which the order changes, are left out. */
function told(descriptor: FunctionDescriptor, given: readonly unknown[]): string {
  try {
    const result = descriptor.compute(given);
    const table = (isTable(result) ? result : [[result]]).filter(([, , , flag]) => flag !== twins);
    const rows = table.map((row) =>
      row
        .map((value) => (typeof value === "number" ? value.toPrecision(9) : String(value)))
        .join(" | ")
        .replaceAll(/\b(rows?) [\d, and]+/gi, "$1 "),
    );
    return (untouchedByOrder[descriptor.name] === "rows" ? rows.sort() : rows).join("\n");
  } catch (failure) {
    return failure instanceof InputError ? failure.message : "threw";
  }
}

describe.each(descriptors)("$name, whatever it is given", (descriptor) => {
  it(
    "answers with numbers, texts and blanks, or says in a sentence what to mend",
    { timeout: 3_600_000 },
    () => {
      const faults: string[] = [];
      let slowest = 0;
      for (let nth = 0; nth < sets && faults.length < 5; nth++) {
        const given = frozen(hostileArguments(descriptor, nth));
        const before = process.cpuUsage();
        const fault = faultOf(descriptor, given);
        const { user, system } = process.cpuUsage(before);
        slowest = Math.max(slowest, (user + system) / 1000);
        if (fault !== undefined) faults.push(`${String(nth)}: ${fault}`);
      }
      if (process.env.MEASURE_BOOK_FUZZ) {
        console.log(
          `${descriptor.name}: ${String(sets)} sets, slowest ${slowest.toFixed(0)} ms of processor time`,
        );
      }
      expect(faults).toEqual([]);
    },
  );
});

function faultOf(descriptor: FunctionDescriptor, given: readonly unknown[]): string | undefined {
  try {
    return faultOfResult(descriptor, given, descriptor.compute(given));
  } catch (failure) {
    if (failure instanceof InputError) return faultOfMessage(descriptor, given, failure.message);
    return failure instanceof Error ? `threw ${failure.stack ?? failure.message}` : "threw something";
  }
}

function faultOfResult(
  descriptor: FunctionDescriptor,
  given: readonly unknown[],
  result: Result,
): string | undefined {
  const table = isTable(result) ? result : [[result]];
  if (isTable(result) !== (descriptor.result === "table")) return "is a table or not";
  if (table.length === 0 || table.some((row) => row.length !== table[0]?.length)) return "is no rectangle";
  for (const value of table.flat()) {
    if (typeof value === "number" ? !Number.isFinite(value) : typeof value !== "string")
      return `gives ${String(value)}`;
    if (typeof value !== "string") continue;
    if (value.length > longestText) return `gives a text of ${String(value.length)} characters`;
    const word = slips.find((each) => value.includes(each));
    if (word !== undefined && !says(given, word)) return `gives ${value}`;
  }
  return undefined;
}

/** A sentence of at most so many characters, which names an argument. */
function faultOfMessage(
  { parameters }: FunctionDescriptor,
  given: readonly unknown[],
  message: string,
): string | undefined {
  const { length } = [...message];
  if (length > longestMessage) return `says ${String(length)} characters: ${message}`;
  if (!/[.?!]”?$/u.test(message)) return `says no sentence: ${message}`;
  const word = slips.find((each) => message.includes(each));
  if (word !== undefined && !says(given, word)) return `says ${message}`;
  const said = message.toLowerCase();
  const names = parameters.flatMap(({ name }) => [name, name.replaceAll("_", " "), name.replace(/s$/, "")]);
  return names.some((name) => said.includes(name)) ? undefined : `names no argument: ${message}`;
}

/** Words that get into a text by a slip of ours. */
const slips = ["NaN", "Infinity", "undefined", "[object"];

function says(given: unknown, word: string): boolean {
  if (typeof given === "object" && given !== null && !(given instanceof Date)) {
    return Object.values(given).some((each) => says(each, word)) || String(given).includes(word);
  }
  return String(given).includes(word);
}

/** All that is given, so that a function which changes it throws. */
function frozen<T>(value: T): T {
  if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(frozen);
  }
  return value;
}
