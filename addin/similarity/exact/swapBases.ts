import type { ReachLists } from "./reachLists.ts";
import { alterationOf } from "./reachLists.ts";

/**
 * Less alteration with the same number of bases: each base is swapped for another item as long as that helps (interchange;
 * Teitz & Bart 1968). Every item stays within reach of a base.
 *
 * @param mostTries swaps that are tried
 */
export function swapBases(lists: ReachLists, bases: readonly number[], mostTries: number): readonly number[] {
  const chosen = [...bases].sort((a, b) => a - b);
  const isBase = new Uint8Array(lists.size);
  for (const base of chosen) isBase[base] = 1;
  let least = alterationOf(lists, chosen);
  let tries = 0;
  for (let isBetter = true; isBetter;) {
    isBetter = false;
    for (let at = 0; at < chosen.length; at++) {
      const out = chosen[at]!;
      // A swapped base still has to reach what it alone reached, so it is near one of those.
      for (const into of candidates(lists, out, isBase)) {
        if (++tries > mostTries) return chosen;
        chosen[at] = into;
        const alteration = alterationOf(lists, chosen);
        if (alteration < least) {
          least = alteration;
          isBetter = true;
          isBase[out] = 0;
          isBase[into] = 1;
          break;
        }
        chosen[at] = out;
      }
    }
  }
  return chosen;
}

/** The items that reach all items which only this base reaches now. */
function candidates({ bases, size }: ReachLists, out: number, isBase: Uint8Array): readonly number[] {
  const times = new Int32Array(size);
  let needed = 0;
  for (const item of bases[out]!) {
    if (bases[item]!.some((base) => base !== out && isBase[base] === 1)) continue;
    needed++;
    for (const base of bases[item]!) times[base]!++;
  }
  return Array.from(times.keys()).filter((item) => times[item] === needed && isBase[item] === 0);
}
