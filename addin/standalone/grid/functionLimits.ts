import type { BaseValueObject } from "@univerjs/engine-formula";
import { ArrayValueObject } from "@univerjs/engine-formula";
import { limits } from "../../workbook/limits.ts";

interface Size {
  readonly rows: number;
  readonly columns: number;
}

/** Pairs of cells that a function may compare or multiply. */
const mostPairs = 100_000_000;

/** Why a function would give, or go through, more than can be held; `undefined` when it would not. */
export function tooMuchFor(name: string, given: readonly BaseValueObject[]): string | undefined {
  const asked = sizeAsked(name, given);
  if (asked && asked.rows * asked.columns > limits.resultCells)
    return `${name} would give ${words(asked.rows)} rows by ${words(asked.columns)} columns; at most ${words(limits.resultCells)} cells are possible.`;
  const length = lengthAsked(name, given);
  if (length > limits.text)
    return `${name} would give a text of ${words(length)} characters; a cell holds ${words(limits.text)}.`;
  if (workFor(name, given) > mostPairs)
    return `${name} would go through more than ${words(mostPairs)} pairs of cells. Let it read fewer.`;
  return undefined;
}

/** The size of a result, where it is not that of what is given. */
function sizeAsked(name: string, given: readonly BaseValueObject[]): Size | undefined {
  const sizes = given.map(sizeOf);
  switch (name) {
    case "SEQUENCE":
    case "RANDARRAY":
    case "MAKEARRAY":
      return { rows: numberIn(given[0], 1), columns: numberIn(given[1], 1) };
    case "MUNIT":
      return { rows: numberIn(given[0], 1), columns: numberIn(given[0], 1) };
    case "EXPAND":
      return {
        rows: numberIn(given[1], sizes[0]?.rows ?? 1),
        columns: numberIn(given[2], sizes[0]?.columns ?? 1),
      };
    case "VSTACK":
      return { rows: sum(sizes.map(({ rows }) => rows)), columns: most(sizes.map(({ columns }) => columns)) };
    case "HSTACK":
      return { rows: most(sizes.map(({ rows }) => rows)), columns: sum(sizes.map(({ columns }) => columns)) };
    case "WRAPROWS":
    case "WRAPCOLS":
      return { rows: sum(sizes.map(({ rows, columns }) => rows * columns)), columns: 1 };
    case "MMULT":
      return { rows: sizes[0]?.rows ?? 1, columns: sizes[1]?.columns ?? 1 };
    default:
      // A row and a column together make a rectangle, in whatever is worked out cell by cell.
      return isByCell(name)
        ? { rows: most(sizes.map(({ rows }) => rows)), columns: most(sizes.map(({ columns }) => columns)) }
        : undefined;
  }
}

/** The length of a text that grows by more than what is given. */
function lengthAsked(name: string, given: readonly BaseValueObject[]): number {
  const [first, second, third] = given;
  switch (name) {
    case "REPT":
      return longestIn(first) * Math.max(0, numberIn(second, 1));
    case "SUBSTITUTE":
      return longestIn(first) > 1000
        ? (longestIn(first) * Math.max(1, longestIn(third))) / Math.max(1, longestIn(second))
        : 0;
    default:
      return 0;
  }
}

/** How often two cells are looked at together. */
function workFor(name: string, given: readonly BaseValueObject[]): number {
  const [first, second] = given.map(sizeOf);
  if (name === "MMULT") return (first?.rows ?? 1) * (first?.columns ?? 1) * (second?.columns ?? 1);
  if (name === "MINVERSE" || name === "MDETERM") return (first?.rows ?? 1) ** 3;
  if (!comparing.test(name)) return 0;
  const [largest = 1, next = 1] = given
    .map(sizeOf)
    .map(({ rows, columns }) => rows * columns)
    .sort((a, b) => b - a);
  return largest * next;
}

/** Functions that look for each of some cells among others. */
const comparing =
  /LOOKUP|MATCH|^(COUNT|SUM|AVERAGE|MAX|MIN)IFS?$|^(RANK|PERCENTRANK|MODE|FREQUENCY|UNIQUE|REGEX|TEXTSPLIT|FILTERXML)/;

/** Operators and functions of single values, which the grid works out for every cell of what is given. */
function isByCell(name: string): boolean {
  return /^(COMPARE|DIVIDED|MINUS|MULTIPLY|PLUS|CUBE|CONCATENATE|POWER|ATAN2|MOD|ROUND(UP|DOWN)?|LEFT|RIGHT|MID|FIND|SEARCH|REPLACE|SUBSTITUTE|TEXT|DATE|TIME|IF|IFS|SWITCH|IFERROR|IFNA|CHOOSE|ADDRESS|LOG|BITAND|BITOR|BITXOR|QUOTIENT|COMBIN|PERMUT|CEILING|FLOOR|MROUND|EXACT|REPT)$/.test(
    name,
  );
}

function sizeOf(value: BaseValueObject): Size {
  if (value instanceof ArrayValueObject)
    return { rows: value.getRowCount(), columns: value.getColumnCount() };
  return { rows: 1, columns: 1 };
}

/** The largest number of an argument; what is left out or no number counts as the usual. */
function numberIn(value: BaseValueObject | undefined, usual: number): number {
  if (!value || value.isNull()) return usual;
  let largest = -Infinity;
  eachIn(value, (each) => {
    const number = Number(each.getValue());
    if (Number.isFinite(number)) largest = Math.max(largest, number);
  });
  return largest === -Infinity ? usual : Math.floor(largest);
}

function longestIn(value: BaseValueObject | undefined): number {
  let longest = 0;
  if (value)
    eachIn(value, (each) => {
      if (!each.isArray() && !each.isLambda()) longest = Math.max(longest, String(each.getValue()).length);
    });
  return longest;
}

/** Every value of an array, or the one that it is. */
export function eachIn(value: BaseValueObject, see: (each: BaseValueObject) => void): void {
  if (value instanceof ArrayValueObject)
    value.iterator((each) => {
      if (each) see(each);
    });
  else see(value);
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, each) => total + each, 0);
}

function most(numbers: readonly number[]): number {
  return numbers.reduce((largest, each) => Math.max(largest, each), 0);
}

function words(count: number): string {
  return count.toLocaleString("en-GB");
}
