/**
 * Instructions of WebAssembly, by the specification 2.0, as the bytes that stand for them. What an instruction works on comes
 * before it, so that these read like calls: `add(get("at"), bytes(8))`.
 */
export type Code = readonly number[];

/** Addresses are in bytes; a number takes eight, a vector holds two. */
export const numberBytes = 8;
export const vectorBytes = 2 * numberBytes;

/* Whole numbers of 32 bits. */
export const integer = (value: number): Code => [0x41, ...signed(value)];
export const add = (a: Code, b: Code): Code => [...a, ...b, 0x6a];
export const subtract = (a: Code, b: Code): Code => [...a, ...b, 0x6b];
/** 1 where a < b, both taken as addresses (never negative), otherwise 0. */
export const isLess = (a: Code, b: Code): Code => [...a, ...b, 0x49];
export const isDifferent = (a: Code, b: Code): Code => [...a, ...b, 0x47];
export const and = (a: Code, b: Code): Code => [...a, ...b, 0x71];
/** A whole number from an address. */
export const loadInteger = (address: Code): Code => [...address, 0x28, 2, 0];

/* The flow. */
const noResult = 0x40;
const end = 0x0b;
export const when = (condition: Code, ...body: readonly Code[]): Code => [
  ...condition,
  ...[0x04, noResult],
  ...body.flat(),
  end,
];
/** Does the body, and again as long as `condition` is true. */
export const repeatWhile = (condition: Code, ...body: readonly Code[]): Code => [
  ...[0x03, noResult],
  ...body.flat(),
  ...condition,
  ...[0x0d, 0, end],
];
/** The same, but looks at the condition first. */
export const loopWhile = (condition: Code, ...body: readonly Code[]): Code =>
  when(condition, repeatWhile(condition, ...body));

/** Does the body as long as `condition` is true, and stops early where `found` is. */
export const searchWhile = (condition: Code, found: Code, ...body: readonly Code[]): Code =>
  when(condition, [0x03, noResult, ...found, ...[0x0d, 1], ...body.flat(), ...condition, ...[0x0d, 0, end]]);

/* Vectors of two numbers. */
const vector = (...opcode: readonly number[]): Code => [0xfd, ...opcode];
const place = (offset: number): Code => [3, ...unsigned(offset)];
export const load = (address: Code, offset = 0): Code => [...address, ...vector(0x00), ...place(offset)];
/** One number in both halves. */
export const loadTwice = (address: Code, offset = 0): Code => [...address, ...vector(0x0a), ...place(offset)];
export const store = (address: Code, value: Code, offset = 0): Code => [
  ...address,
  ...value,
  ...vector(0x0b),
  ...place(offset),
];
/** Only the first half. */
export const storeFirst = (address: Code, value: Code): Code => [
  ...address,
  ...value,
  ...vector(0x5b),
  ...place(0),
  0,
];
/** A constant in both halves. */
export const both = (value: number): Code => twice([0x44, ...new Uint8Array(Float64Array.of(value).buffer)]);
export const abs = (a: Code): Code => [...a, ...vector(0xec, 1)];
export const plus = (a: Code, b: Code): Code => [...a, ...b, ...vector(0xf0, 1)];
export const minus = (a: Code, b: Code): Code => [...a, ...b, ...vector(0xf1, 1)];
/** Half by half b where b < a, otherwise a: also where b is NaN. */
export const lesser = (a: Code, b: Code): Code => [...a, ...b, ...vector(0xf6, 1)];
/** Half by half b where a < b, otherwise a. */
export const greater = (a: Code, b: Code): Code => [...a, ...b, ...vector(0xf7, 1)];
/** 1 where any half of a equals that of b, otherwise 0. */
export const isAnyEqual = (a: Code, b: Code): Code => [...a, ...b, ...vector(0x47), ...vector(0x53)];
/** The second half first. */
export const swapped = (a: Code): Code => [
  ...a,
  ...a,
  ...vector(0x0d),
  ...[8, 9, 10, 11, 12, 13, 14, 15, 0, 1, 2, 3, 4, 5, 6, 7],
];
/** A number in both halves. */
export const twice = (a: Code): Code => [...a, ...vector(0x14)];
/** The first half as a number. */
export const first = (a: Code): Code => [...a, ...vector(0x21), 0];

/** Numbers in groups of seven bits (LEB128). */
export function unsigned(value: number): Code {
  return value < 0x80 ? [value] : [(value & 0x7f) | 0x80, ...unsigned(value >>> 7)];
}

/** The same for numbers that may be negative, whose last group says so. */
function signed(value: number): Code {
  return value >= -0x40 && value < 0x40 ? [value & 0x7f] : [(value & 0x7f) | 0x80, ...signed(value >> 7)];
}
