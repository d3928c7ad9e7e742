import type { Code } from "./instructions.ts";
import {
  add,
  and,
  both,
  first,
  greater,
  integer,
  isAnyEqual,
  isDifferent,
  isLess,
  lesser,
  load,
  loadInteger,
  loadTwice,
  loopWhile,
  numberBytes,
  searchWhile,
  store,
  storeFirst,
  subtract,
  swapped,
  twice,
  vectorBytes,
  when,
} from "./instructions.ts";
import { address, number, vector, wasmFunction } from "./module.ts";

/*
 * The loops of `vectorGroups`, on distances in condensed order. A row is a run of numbers in the memory, from one address to
 * before another. Where its length is odd, the first number goes alone, in both halves of a vector.
 */

const oneOn = integer(numberBytes);
const twoOn = integer(vectorBytes);
const placeOn = integer(Int32Array.BYTES_PER_ELEMENT);

const isOdd = (from: Code, to: Code): Code => and(subtract(to, from), oneOn);
type Read = (from: Code) => Code;
type Write = (to: Code, value: Code) => Code;

/** Of the two halves. */
const leastOf = (a: Code): Code => first(lesser(a, swapped(a)));

/** The least of a row, Infinity of none. On the way NaN becomes Infinity. */
export const leastOfRow = wasmFunction(
  "leastOfRow",
  { at: address, end: address },
  { known: vector, least: vector },
  number,
  ({ get, set }) => {
    const takeLesser = (read: Read, write: Write) => [
      set("known", lesser(both(Infinity), read(get("at")))),
      write(get("at"), get("known")),
      set("least", lesser(get("least"), get("known"))),
    ];
    return [
      set("least", both(Infinity)),
      when(
        isOdd(get("at"), get("end")),
        ...takeLesser(loadTwice, storeFirst),
        set("at", add(get("at"), oneOn)),
      ),
      loopWhile(isLess(get("at"), get("end")), ...takeLesser(load, store), set("at", add(get("at"), twoOn))),
      leastOf(get("least")),
    ];
  },
);

/**
 * Goes through a row in steps of two numbers, up to the two of which one is the wanted number. Gives their address, or that
 * at or behind `end`. The second of the two can stand behind the row.
 */
export const pairInRow = wasmFunction(
  "pairInRow",
  { at: address, end: address, wanted: number },
  { wantedTwice: vector },
  address,
  ({ get, set }) => [
    set("wantedTwice", twice(get("wanted"))),
    searchWhile(
      isLess(get("at"), get("end")),
      isAnyEqual(load(get("at")), get("wantedTwice")),
      set("at", add(get("at"), twoOn)),
    ),
    get("at"),
  ],
);

/**
 * Puts the group of slot `high` into the slot `low`: its distance to any other is the farther of the two. Gives the least of
 * the row of `low` then. For slots 1 and 3 of five, with “=” for distances of `low` and “:” for those of `high`:
 *
 *     01= 02  03: 04        down the columns to the row of `low`,
 *         12= 13: 14=       along that row and down the column of `high`,
 *             23: 24
 *                 34:       along both rows from there
 *
 * The column of `high` becomes infinite, since rows are searched. The row of `high` is not looked at again.
 */
export const joinSlots = wasmFunction(
  "joinSlots",
  {
    /** Where the distance of `low` stands in the row of slot 0; one before the row where `low` is that slot itself. */
    at: address,
    /** From there to that of `high`. */
    gap: address,
    /** From a distance in the row of slot 0 to that of the same slot in the next row. Each row is a number shorter. */
    down: address,
    /** The same in the rows of `low` and `high`. */
    downAtLow: address,
    downAtHigh: address,
    /** Behind the row of `low`. */
    end: address,
  },
  { atHigh: address, far: vector, least: vector },
  number,
  ({ get, set }) => {
    const putFarther = (read: Read, write: Write) => [
      set("far", greater(read(get("at")), read(get("atHigh")))),
      write(get("at"), get("far")),
    ];
    const forget = storeFirst(get("atHigh"), both(Infinity));
    const takeLesser = set("least", lesser(get("least"), get("far")));
    const stepDown = (of: "at" | "atHigh") => [
      set(of, add(get(of), get("down"))),
      set("down", subtract(get("down"), oneOn)),
    ];
    const stepOn = (of: "at" | "atHigh", step = oneOn) => set(of, add(get(of), step));
    return [
      loopWhile(
        isDifferent(get("down"), get("downAtLow")),
        set("atHigh", add(get("at"), get("gap"))),
        ...putFarther(loadTwice, storeFirst),
        forget,
        ...stepDown("at"),
      ),

      // Now `at` is one before the row of `low`, and `atHigh` becomes the distance of the two themselves.
      set("atHigh", add(get("at"), get("gap"))),
      forget,
      stepOn("at"),
      ...stepDown("atHigh"),
      set("least", both(Infinity)),
      loopWhile(
        isDifferent(get("down"), get("downAtHigh")),
        ...putFarther(loadTwice, storeFirst),
        forget,
        takeLesser,
        stepOn("at"),
        ...stepDown("atHigh"),
      ),

      // Now `at` is the distance of the two, and `atHigh` is one before the row of `high`.
      stepOn("at"),
      stepOn("atHigh"),
      when(
        isOdd(get("at"), get("end")),
        ...putFarther(loadTwice, storeFirst),
        takeLesser,
        stepOn("at"),
        stepOn("atHigh"),
      ),
      loopWhile(
        isLess(get("at"), get("end")),
        ...putFarther(load, store),
        takeLesser,
        stepOn("at", twoOn),
        stepOn("atHigh", twoOn),
      ),
      leastOf(get("least")),
    ];
  },
);

/**
 * Copies some distances of a row to `to`, one behind the other. Which ones is said by whole numbers from `place` to before
 * `placesEnd`: how many bytes each stands behind `slot0`, where slot 0 would be in that row.
 */
export const keepInRow = wasmFunction(
  "keepInRow",
  { slot0: address, place: address, placesEnd: address, to: address },
  {},
  undefined,
  ({ get, set }) => [
    loopWhile(
      isLess(get("place"), get("placesEnd")),
      storeFirst(get("to"), loadTwice(add(get("slot0"), loadInteger(get("place"))))),
      set("place", add(get("place"), placeOn)),
      set("to", add(get("to"), oneOn)),
    ),
  ],
);
