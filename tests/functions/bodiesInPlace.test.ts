/** Bodies in the place of figures: the same groups as GROUPS finds, and the verdict of the worst figure of each. */
import { describe, expect, test } from "vitest";
import { verdicts } from "../../addin/fit/verdict.ts";
import { exampleChart, exampleTolerances } from "../../functions/exampleChart.ts";
import { examplePatterns } from "../../functions/examplePatterns.ts";
import { groupsFunction } from "../../functions/groups.ts";
import type { Result } from "../../functions/descriptor.ts";
import { wearersFunction } from "../../functions/wearers.ts";
import { whatFitsFunction } from "../../functions/whatFits.ts";

const rowsOf = (result: Result): readonly (readonly unknown[])[] =>
  Array.isArray(result) ? (result as readonly (readonly unknown[])[]) : [];
const given = [examplePatterns, exampleChart];
const rank = (verdict: unknown): number => verdicts.findIndex((each) => each === verdict);

/** The figures of each body after GROUPS. */
const bodies = (tolerances: unknown): readonly string[][] => {
  const found = new Map<unknown, string[]>();
  for (const [figure, group] of rowsOf(groupsFunction.compute([exampleChart, tolerances])).slice(1))
    found.set(group, [...(found.get(group) ?? []), String(figure)]);
  return [...found.values()];
};

const tight = [
  ["Measure", "Tolerance"],
  ["Bust", 0.1],
  ["Waist", 0.1],
  ["Hip", 0.1],
];

describe.each([
  ["as GROUPS finds them", exampleTolerances],
  ["with tolerances under which nobody shares", tight],
])("bodies %s", (_, tolerances) => {
  test("head the columns of WHATFITS, all figures named, each as good as its worst figure", () => {
    const single = rowsOf(whatFitsFunction.compute([...given, null, null, null, null]));
    const shared = rowsOf(whatFitsFunction.compute([...given, null, null, null, tolerances]));
    const found = bodies(tolerances);
    expect(new Set(shared[0]?.slice(1))).toEqual(new Set(found.map((names) => names.join(", "))));
    for (const row of single.slice(1)) {
      const together = shared.find(([code]) => code === row[0]);
      for (const names of found) {
        const each = names.map((name) => rank(row[single[0]?.indexOf(name) ?? -1]));
        const at = shared[0]?.indexOf(names.join(", ")) ?? -1;
        expect(rank(together?.[at])).toBe(Math.max(...each));
      }
    }
  });

  test("are the rows of WEARERS, best first, with the figure that decides", () => {
    const single = rowsOf(wearersFunction.compute([...given, "P1", null, null, null, null]));
    const shared = rowsOf(wearersFunction.compute([...given, "P1", null, null, null, tolerances])).slice(1);
    expect(shared.map(([body]) => body).sort()).toEqual(
      bodies(tolerances)
        .map((names) => names.join(", "))
        .sort(),
    );
    const ranks = shared.map(([, verdict]) => rank(verdict));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    for (const row of shared) {
      const decides = single.find(([figure]) => figure === row.at(-1));
      expect(row.slice(1, -1)).toEqual(decides?.slice(1));
      expect(String(row[0]).split(", ")).toContain(row.at(-1));
    }
  });
});

test("tolerances that cannot be read are refused in words", () => {
  const wrong = [
    ["Name", "How far"],
    ["Bust", 3],
  ];
  expect(() => wearersFunction.compute([...given, "P1", null, null, null, wrong])).toThrow(/Measure/);
  expect(() => whatFitsFunction.compute([...given, null, null, null, wrong])).toThrow(/Measure/);
});
