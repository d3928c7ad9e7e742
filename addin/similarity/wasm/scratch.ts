import { fillRows } from "./fillRows.ts";
import { joinSlots, keepInRow, leastOfRow, pairInRow } from "./joinGroups.ts";
import { moduleOf } from "./module.ts";

/** The functions of the module, each described in its own file. Addresses are in bytes of the memory. */
interface Loops {
  fillRows(
    one: number,
    others: number,
    end: number,
    stride: number,
    out: number,
    outNext: number,
    outEnd: number,
  ): void;
  leastOfRow(at: number, end: number): number;
  pairInRow(at: number, end: number, wanted: number): number;
  joinSlots(
    at: number,
    gap: number,
    down: number,
    downAtLow: number,
    downAtHigh: number,
    end: number,
  ): number;
  keepInRow(slot0: number, place: number, placesEnd: number, to: number): void;
}

/** Memory to work in, and the loops that work in it. */
interface Scratch {
  readonly memory: WebAssembly.Memory;
  readonly loops: Loops;
}

export const scratchCode = moduleOf([fillRows, leastOfRow, pairInRow, joinSlots, keepInRow]);

const pageBytes = 2 ** 16;

/**
 * Made once, and its memory kept: fresh memory would cost more time than the work that is done in it. What it holds means
 * nothing from one calculation to the next. No two can meet in it, since a thread has one of its own, in which a calculation
 * ends before another begins.
 */
const kept = load();

/**
 * Room for so many bytes, whatever is in them. Views of the memory, made for a calculation, are lost when more room is asked
 * for. `undefined` where there are no vector instructions, or no memory is left.
 */
export function scratch(bytes: number): Scratch | undefined {
  if (!kept) return undefined;
  const missing = bytes - kept.memory.buffer.byteLength;
  try {
    if (missing > 0) kept.memory.grow(Math.ceil(missing / pageBytes));
    return kept;
  } catch {
    // The plain loops need less.
    return undefined;
  }
}

/** `undefined` where the browser has no vector instructions or the page must not bring code. */
function load(): Scratch | undefined {
  try {
    const memory = new WebAssembly.Memory({ initial: 0 });
    const module = new WebAssembly.Module(scratchCode);
    const { exports } = new WebAssembly.Instance(module, { scratch: { memory } });
    return areLoops(exports) ? { memory, loops: exports } : undefined;
  } catch {
    return undefined;
  }
}

function areLoops(exports: object): exports is Loops {
  return Object.values(exports).every((each) => typeof each === "function");
}
