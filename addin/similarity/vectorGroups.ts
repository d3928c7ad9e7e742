import type { Condensed } from "./condensed.ts";
import type { GroupDistances } from "./groupDistances.ts";
import { scratch } from "./wasm/scratch.ts";

/** For fewer, making ready takes as long as it saves. */
const fewestItems = 100;

/** For more, the copy would take too much memory: this is 25 MB. */
const mostItems = 2500;

const numberBytes = Float64Array.BYTES_PER_ELEMENT;
const placeBytes = Int32Array.BYTES_PER_ELEMENT;

/**
 * The same as `plainGroups` by vector instructions, on a copy of the distances; `undefined` where there are none, or too few
 * or too many items. To be done with before another calculation begins: see `scratch`.
 */
export function vectorGroups(
  { size, values }: Condensed,
  { fewest = fewestItems, most = mostItems } = {},
): GroupDistances | undefined {
  if (size < fewest || size > most) return undefined;
  const placesAt = values.length * numberBytes;
  const ready = scratch(placesAt + size * placeBytes);
  if (!ready) return undefined;
  const { memory, loops } = ready;
  const far = new Float64Array(memory.buffer, 0, values.length);
  const places = new Int32Array(memory.buffer, placesAt, size);
  far.set(values);

  let slots = size;
  /** Address of the distance of slots i and i + 1. The row of i ends where the next begins. */
  const rowAt = (i: number): number => numberBytes * (i * slots - (i * (i + 1)) / 2);
  return {
    least: (slot) => loops.leastOfRow(rowAt(slot), rowAt(slot + 1)),
    placeOf(slot, distance) {
      const row = rowAt(slot);
      const end = rowAt(slot + 1);
      const pairAt = loops.pairInRow(row, end, distance);
      const at = far[pairAt / numberBytes] === distance ? pairAt : pairAt + numberBytes;
      return at < end ? slot + 1 + (at - row) / numberBytes : -1;
    },
    join(low, high) {
      // From a distance to that of the same slot in the next row, which begins one slot later: for the row of slot i.
      const down = (i: number): number => numberBytes * (slots - 2 - i);
      const column = numberBytes * (low - 1);
      return loops.joinSlots(
        column,
        numberBytes * (high - low),
        down(0),
        down(low),
        down(high),
        rowAt(low + 1),
      );
    },
    keep(kept) {
      places.set(kept.map((slot) => slot * numberBytes));
      const placesEnd = placesAt + kept.length * placeBytes;
      let to = 0;
      kept.forEach((slot, i) => {
        const slot0 = rowAt(slot) - (slot + 1) * numberBytes;
        loops.keepInRow(slot0, placesAt + (i + 1) * placeBytes, placesEnd, to);
        to += (kept.length - 1 - i) * numberBytes;
      });
      slots = kept.length;
    },
    condensed: () => ({ size: slots, values: far.slice(0, (slots * (slots - 1)) / 2) }),
  };
}
