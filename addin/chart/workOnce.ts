/** A workbook has one chart or two that most of its formulas and questions are about. */
const usuallyKept = 4;

/**
 * A function that works equal inputs out once: many formulas of a workbook name the same chart, and a host hands its cells over
 * anew to each. It answers as `work` does, only sooner; what it gave last is kept, and given again, so nobody may change it.
 *
 * @param work gives the same for equal inputs; what it throws is not kept
 * @param areEqual whether two inputs are equal
 * @param kept how many different inputs to keep
 */
export function workOnce<I, T>(
  work: (input: I) => T,
  areEqual: (one: I, other: I) => boolean,
  kept = usuallyKept,
): (input: I) => T {
  const known: { readonly input: I; readonly result: T }[] = [];
  return (input) => {
    const at = known.findIndex((each) => areEqual(each.input, input));
    const found = at < 0 ? { input, result: work(input) } : known[at]!;
    if (at >= 0) known.splice(at, 1);
    known.unshift(found);
    known.splice(kept);
    return found.result;
  };
}

/** The same for several inputs, which are equal when they are the same objects. */
export function onceFor<I extends unknown[], T>(work: (...inputs: I) => T): (...inputs: I) => T {
  const worked = workOnce((inputs: I) => work(...inputs), haveSameItems);
  return (...inputs) => worked(inputs);
}

export function haveSameItems(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((item, i) => Object.is(item, other[i]));
}
