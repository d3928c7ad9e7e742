import { describe, expect, it } from "vitest";
import { countSlips } from "./slips/countSlips.ts";
import { expectedCoverage } from "./slips/expectedCoverage.ts";

/** Charts that are neither those on which the checks were made nor those of the bench. */
const seeds = Array.from({ length: 24 }, (_, i) => 700_000 + i);

describe("slips of 1.3 × and more, one at a time in invented charts of every build", () => {
  const table = countSlips(seeds);
  const planted = [...table].filter(([kind]) => kind !== "none");
  const total = (of: "planted" | "found" | "rightFirst") =>
    planted.reduce((sum, [, count]) => sum + count[of], 0);

  it("are found, nineteen in twenty and more", () => {
    expect(total("planted")).toBeGreaterThan(250);
    expect(total("found")).toBeGreaterThanOrEqual(0.95 * total("planted"));
  });

  it("raise no more than one false flag on a hundred readings that are right", () => {
    for (const [kind, { falseFlags, cleanCells }] of table)
      expect(falseFlags / cleanCells, kind).toBeLessThan(0.01);
  });

  it.each(["read in another unit", "columns swapped"] as const)(
    "of the kind “%s” are explained and mended, nineteen in twenty and more",
    (kind) => {
      const count = table.get(kind);
      expect(count?.rightFirst).toBeGreaterThanOrEqual(0.95 * (count?.planted ?? Number.NaN));
      expect(count?.rightValue).toBeGreaterThanOrEqual(0.95 * (count?.planted ?? Number.NaN));
    },
  );
});

it("expects a reading within a range that holds about nineteen in twenty", () => {
  const { asked, inRange } = expectedCoverage(seeds, 12);
  // 0.95, give or take four standard errors (0.013) of so many readings.
  expect(asked).toBeGreaterThan(250);
  expect(inRange / asked).toBeGreaterThan(0.9);
  expect(inRange / asked).toBeLessThan(0.995);
}, 120_000);
