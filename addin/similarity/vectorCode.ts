import { grid } from "./roundDistance.ts";

/**
 * The innermost loop of `toleranceDistances` as WebAssembly, two numbers an instruction: JavaScript has none for more than
 * one number. Written out below, instruction by instruction, by the names of the WebAssembly specification 2.0.
 */

/** Readings are compared with this many others at once: four vectors of two. */
export const lanes = 8;
const vectors = [0, 1, 2, 3];
const vectorBytes = 16;

const numberBytes = 8;

/** Where the readings of two rows of distances stand, as addresses in the memory in bytes. */
const parameters = ["one", "others", "end", "stride", "out", "outNext", "outEnd"] as const;
const addresses = ["atOne", "atOther"] as const;
const worst = ["worst0", "worst1", "worst2", "worst3"] as const;
const worstNext = ["worstNext0", "worstNext1", "worstNext2", "worstNext3"] as const;
const numbers = ["reading", "readingNext", "other", ...worst, ...worstNext] as const;
type Local = (typeof parameters)[number] | (typeof addresses)[number] | (typeof numbers)[number];
const locals: readonly Local[] = [...parameters, ...addresses, ...numbers];

type Code = readonly number[];

const get = (local: Local): Code => [0x20, locals.indexOf(local)];
const set = (local: Local, value: Code): Code => [...value, 0x21, locals.indexOf(local)];

const add = (a: Code, b: Code): Code => [...a, ...b, 0x6a];
const isLess = (a: Code, b: Code): Code => [...a, ...b, 0x49];
const integer = (value: number): Code => [0x41, ...signed(value)];
/** Repeats while the last thing that it leaves is true. */
const loop = (...body: readonly Code[]): Code => [0x03, 0x40, ...body.flat(), 0x0d, 0, 0x0b];

const vector = (...opcode: readonly number[]): Code => [0xfd, ...opcode];
const place = (offset: number): Code => [3, ...unsigned(offset)];
const load = (address: Code, offset: number): Code => [...address, ...vector(0x00), ...place(offset)];
/** One number in both halves. */
const loadTwice = (address: Code, offset: number): Code => [...address, ...vector(0x0a), ...place(offset)];
const store = (address: Code, offset: number, value: Code): Code => [
  ...address,
  ...value,
  ...vector(0x0b),
  ...place(offset),
];
const constant = (value: number): Code => [
  0x44,
  ...new Uint8Array(Float64Array.of(value).buffer),
  ...vector(0x14),
];
const abs = (a: Code): Code => [...a, ...vector(0xec, 1)];
const plus = (a: Code, b: Code): Code => [...a, ...b, ...vector(0xf0, 1)];
const minus = (a: Code, b: Code): Code => [...a, ...b, ...vector(0xf1, 1)];
const greater = (a: Code, b: Code): Code => [...a, ...b, ...vector(0xf7, 1)];

const round = (distance: Code): Code => minus(plus(distance, constant(grid)), constant(grid));

const widen = (local: Local, reading: Local): Code =>
  set(local, greater(get(local), abs(minus(get("other"), get(reading)))));

/**
 * From `out` to before `outEnd`: the worst difference of one figure to each of the others over all columns; from `outNext`
 * on that of the next figure to the same others. Two rows at once, since fetching the readings of the others takes as long
 * as working with them.
 */
const fillRows: Code = loop(
  set("atOne", get("one")),
  set("atOther", get("others")),
  ...[...worst, ...worstNext].map((local) => set(local, constant(0))),
  loop(
    set("reading", loadTwice(get("atOne"), 0)),
    set("readingNext", loadTwice(get("atOne"), numberBytes)),
    ...vectors.flatMap((v) => [
      set("other", load(get("atOther"), v * vectorBytes)),
      widen(worst[v]!, "reading"),
      widen(worstNext[v]!, "readingNext"),
    ]),
    set("atOther", add(get("atOther"), get("stride"))),
    set("atOne", add(get("atOne"), get("stride"))),
    isLess(get("atOne"), get("end")),
  ),
  ...vectors.flatMap((v) => [
    store(get("out"), v * vectorBytes, round(get(worst[v]!))),
    store(get("outNext"), v * vectorBytes, round(get(worstNext[v]!))),
  ]),
  set("others", add(get("others"), integer(vectors.length * vectorBytes))),
  set("outNext", add(get("outNext"), integer(vectors.length * vectorBytes))),
  set("out", add(get("out"), integer(vectors.length * vectorBytes))),
  isLess(get("out"), get("outEnd")),
);

const i32 = 0x7f;
const v128 = 0x7b;

/** The module: takes a memory as `numbers.memory` and gives `fillRows`, whose parameters are `parameters`. */
export const vectorCode: Uint8Array<ArrayBuffer> = Uint8Array.from([
  ...[0, 0x61, 0x73, 0x6d, 1, 0, 0, 0],
  ...section(1, [[0x60, ...list(parameters.map(() => [i32])), 0]]),
  ...section(2, [[...text("numbers"), ...text("memory"), 2, 0, 1]]),
  ...section(3, [[0]]),
  ...section(7, [[...text("fillRows"), 0, 0]]),
  ...section(10, [
    sized([
      ...list([
        [addresses.length, i32],
        [numbers.length, v128],
      ]),
      ...fillRows,
      0x0b,
    ]),
  ]),
]);

function section(id: number, items: readonly Code[]): Code {
  return [id, ...sized(list(items))];
}

function list(items: readonly Code[]): Code {
  return [...unsigned(items.length), ...items.flat()];
}

function sized(code: Code): Code {
  return [...unsigned(code.length), ...code];
}

/** Of plain letters: the runtime of worksheet functions has no TextEncoder. */
function text(letters: string): Code {
  return sized(Array.from(letters, (letter) => letter.charCodeAt(0)));
}

/** Numbers in groups of seven bits (LEB128). */
function unsigned(value: number): Code {
  return value < 0x80 ? [value] : [(value & 0x7f) | 0x80, ...unsigned(value >>> 7)];
}

/** The same for numbers that may be negative, whose last group says so. */
function signed(value: number): Code {
  return value >= 0 && value < 0x40 ? [value] : [(value & 0x7f) | 0x80, ...signed(value >> 7)];
}
