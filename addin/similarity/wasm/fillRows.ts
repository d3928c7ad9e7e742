import { grid } from "../roundDistance.ts";
import type { Code } from "./instructions.ts";
import {
  abs,
  add,
  both,
  greater,
  integer,
  isLess,
  load,
  loadTwice,
  minus,
  numberBytes,
  plus,
  repeatWhile,
  store,
  vectorBytes,
} from "./instructions.ts";
import { address, vector, wasmFunction } from "./module.ts";

/** Readings are compared with this many others at once: four vectors of two. */
export const lanes = 8;
const four = [0, 1, 2, 3];
const bytesAtOnce = lanes * numberBytes;

const worst = ["worst0", "worst1", "worst2", "worst3"] as const;
const worstNext = ["worstNext0", "worstNext1", "worstNext2", "worstNext3"] as const;

type WorstOf = (typeof worst)[number] | (typeof worstNext)[number];

const round = (distance: Code): Code => minus(plus(distance, both(grid)), both(grid));

/**
 * The innermost loop of `toleranceDistances`. From `out` to before `outEnd`: the worst difference of one figure to each of
 * the others over all columns; from `outNext` on that of the next figure to the same others. Two rows at once, since
 * fetching the readings of the others takes as long as working with them.
 */
export const fillRows = wasmFunction(
  "fillRows",
  {
    /** Readings in the first column: of the one figure, before that of the next, and of the first of the others. */
    one: address,
    others: address,
    /** Behind the last column, and from each to the next. */
    end: address,
    stride: address,
    /** The two rows of distances, and behind the first. */
    out: address,
    outNext: address,
    outEnd: address,
  },
  {
    atOne: address,
    atOther: address,
    reading: vector,
    readingNext: vector,
    other: vector,
    ...{ worst0: vector, worst1: vector, worst2: vector, worst3: vector },
    ...{ worstNext0: vector, worstNext1: vector, worstNext2: vector, worstNext3: vector },
  },
  undefined,
  ({ get, set }) => {
    const widen = (of: WorstOf, reading: "reading" | "readingNext"): Code =>
      set(of, greater(get(of), abs(minus(get("other"), get(reading)))));
    return [
      repeatWhile(
        isLess(get("out"), get("outEnd")),
        set("atOne", get("one")),
        set("atOther", get("others")),
        ...[...worst, ...worstNext].map((of) => set(of, both(0))),
        repeatWhile(
          isLess(get("atOne"), get("end")),
          set("reading", loadTwice(get("atOne"))),
          set("readingNext", loadTwice(get("atOne"), numberBytes)),
          ...four.flatMap((v) => [
            set("other", load(get("atOther"), v * vectorBytes)),
            widen(worst[v]!, "reading"),
            widen(worstNext[v]!, "readingNext"),
          ]),
          set("atOther", add(get("atOther"), get("stride"))),
          set("atOne", add(get("atOne"), get("stride"))),
        ),
        ...four.flatMap((v) => [
          store(get("out"), round(get(worst[v]!)), v * vectorBytes),
          store(get("outNext"), round(get(worstNext[v]!)), v * vectorBytes),
        ]),
        set("others", add(get("others"), integer(bytesAtOnce))),
        set("outNext", add(get("outNext"), integer(bytesAtOnce))),
        set("out", add(get("out"), integer(bytesAtOnce))),
      ),
    ];
  },
);
