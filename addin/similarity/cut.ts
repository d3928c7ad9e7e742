import { InputError } from "../measures/inputError.ts";
import type { Merge } from "./linkage.ts";
import { isWithin } from "./pair.ts";
import { createDisjointSets } from "./disjointSets.ts";

/**
 * The groups of a clustering after all merges up to a height, that height included.
 *
 * @param merges see `linkage`
 * @param size number of items
 * @returns the group number of each item, from 1 in the order of first appearance, as `cutree` of R gives them
 */
export function cutAt(merges: readonly Merge[], size: number, height: number): Int32Array {
  return groupNumbers(
    merges.filter((merge) => isWithin(merge.height, height)),
    size,
  );
}

/**
 * The clustering cut into `k` groups. Where unknown pairs kept groups apart there may be more: then the fewest there are.
 *
 * @returns group numbers as `cutAt` gives them
 * @throws {InputError} when `k` is not a whole number from 1 to `size`
 */
export function cutInto(merges: readonly Merge[], size: number, k: number): Int32Array {
  if (!Number.isInteger(k) || k < 1 || k > size) {
    throw new InputError(
      `${String(size)} figures cannot be put into “${String(k)}” groups. Write a whole number from 1 to ${String(size)}.`,
    );
  }
  return groupNumbers(merges.slice(0, size - k), size);
}

/** @param merges the first merges of a clustering, so that every part of one is among them */
function groupNumbers(merges: readonly Merge[], size: number): Int32Array {
  const sets = createDisjointSets(size);
  const anItemOf: number[] = [];
  for (const { left, right } of merges) {
    const one = left < 0 ? -left - 1 : anItemOf[left - 1]!;
    const other = right < 0 ? -right - 1 : anItemOf[right - 1]!;
    anItemOf.push(sets.join(one, other));
  }
  const numbers = new Map<number, number>();
  return Int32Array.from({ length: size }, (_, item) => {
    const set = sets.find(item);
    const number = numbers.get(set) ?? numbers.size + 1;
    numbers.set(set, number);
    return number;
  });
}
