/**
 * Instructions of WebAssembly as the bytes that stand for them; behind each its name in the specification 2.0. What an
 * instruction works on comes before it, so that code can be written as calls: `add(get("at"), integer(8))`.
 */
export type Code = readonly number[];

/** Addresses are in bytes; a number takes eight, a vector holds two. */
export const numberBytes = 8;
export const vectorBytes = 2 * numberBytes;

/* Whole numbers of 32 bits, addresses among them. */

export const integer = (value: number): Code => [0x41, ...signed(value)]; // i32.const
export const add = (a: Code, b: Code): Code => [...a, ...b, 0x6a]; // i32.add
export const subtract = (a: Code, b: Code): Code => [...a, ...b, 0x6b]; // i32.sub
export const and = (a: Code, b: Code): Code => [...a, ...b, 0x71]; // i32.and
/** 1 where a < b, neither taken as negative; otherwise 0. */
export const isLess = (a: Code, b: Code): Code => [...a, ...b, 0x49]; // i32.lt_u
export const isDifferent = (a: Code, b: Code): Code => [...a, ...b, 0x47]; // i32.ne
export const loadInteger = (address: Code): Code => [...address, 0x28, 2, 0]; // i32.load

/* What is done when. */

const noResult = 0x40;
const end = 0x0b;
const loop = (...body: readonly Code[]): Code => [0x03, noResult, ...body.flat(), end]; // loop … end
/** In a loop goes back to its beginning, in `when` on to its end; `outward` counts how many of them lie between. */
const branchIf = (condition: Code, outward = 0): Code => [...condition, 0x0d, outward]; // br_if

export const when = (condition: Code, ...body: readonly Code[]): Code => [
  ...condition,
  ...[0x04, noResult], // if
  ...body.flat(),
  end,
];

/** Does the body, and again as long as `condition` is true. */
export const repeatWhile = (condition: Code, ...body: readonly Code[]): Code =>
  loop(...body, branchIf(condition));

/** The same, but looks at the condition first. */
export const loopWhile = (condition: Code, ...body: readonly Code[]): Code =>
  when(condition, repeatWhile(condition, ...body));

/** The same, and stops where `found` is true. */
export const searchWhile = (condition: Code, found: Code, ...body: readonly Code[]): Code =>
  loopWhile(condition, branchIf(found, 1), ...body);

/* Vectors of two numbers. */

const vector = (...opcode: readonly number[]): Code => [0xfd, ...opcode];
/** Addresses are multiples of 8 bytes, which the 3 promises (2³), and an offset is added to them. */
const place = (offset: number): Code => [3, ...unsigned(offset)];

export const load = (address: Code, offset = 0): Code => [...address, ...vector(0x00), ...place(offset)]; // v128.load
/** One number in both halves. */
export const loadTwice = (address: Code, offset = 0): Code => [...address, ...vector(0x0a), ...place(offset)]; // v128.load64_splat
export const store = (address: Code, value: Code, offset = 0): Code => [
  ...[...address, ...value],
  ...[...vector(0x0b), ...place(offset)], // v128.store
];
/** Only the first half. */
export const storeFirst = (address: Code, value: Code): Code => [
  ...[...address, ...value],
  ...[...vector(0x5b), ...place(0), 0], // v128.store64_lane
];

/** A number in both halves. */
export const twice = (a: Code): Code => [...a, ...vector(0x14)]; // f64x2.splat
/** A constant in both halves. */
export const both = (value: number): Code => twice([0x44, ...bytesOf(value)]); // f64.const
/** The first half as a number. */
export const first = (a: Code): Code => [...a, ...vector(0x21), 0]; // f64x2.extract_lane
/** The second half first. */
export const swapped = (a: Code): Code => [
  ...[...a, ...a],
  ...[...vector(0x0d), ...[8, 9, 10, 11, 12, 13, 14, 15, 0, 1, 2, 3, 4, 5, 6, 7]], // i8x16.shuffle
];

export const abs = (a: Code): Code => [...a, ...vector(0xec, 1)]; // f64x2.abs
export const plus = (a: Code, b: Code): Code => [...a, ...b, ...vector(0xf0, 1)]; // f64x2.add
export const minus = (a: Code, b: Code): Code => [...a, ...b, ...vector(0xf1, 1)]; // f64x2.sub
/** Half by half b where b < a, otherwise a: also where b is NaN. */
export const lesser = (a: Code, b: Code): Code => [...a, ...b, ...vector(0xf6, 1)]; // f64x2.pmin
/** Half by half b where a < b, otherwise a. */
export const greater = (a: Code, b: Code): Code => [...a, ...b, ...vector(0xf7, 1)]; // f64x2.pmax
/** 1 where any half of a equals that of b, otherwise 0. */
export const isAnyEqual = (a: Code, b: Code): Code => [...a, ...b, ...vector(0x47), ...vector(0x53)]; // f64x2.eq, v128.any_true

/** Numbers in groups of seven bits, the lowest first (LEB128). */
export function unsigned(value: number): Code {
  return value < 0x80 ? [value] : [(value & 0x7f) | 0x80, ...unsigned(value >>> 7)];
}

/** The same for numbers that may be negative, whose last group says so. */
function signed(value: number): Code {
  return value >= -0x40 && value < 0x40 ? [value & 0x7f] : [(value & 0x7f) | 0x80, ...signed(value >> 7)];
}

/** A number in its eight bytes. */
function bytesOf(value: number): Code {
  return [...new Uint8Array(Float64Array.of(value).buffer)];
}
