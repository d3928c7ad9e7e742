import { describe, expect, test } from "vitest";
import type { Chart } from "../../addin/chart/chart.ts";
import { defaultGarmentClasses } from "../../addin/chart/garmentClass.ts";
import type { GarmentClass } from "../../addin/chart/garmentClass.ts";
import type { Pattern } from "../../addin/chart/pattern.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { askedOf } from "../../addin/fit/asked.ts";
import { explainPair } from "../../addin/fit/explainPair.ts";
import { garmentContext, prepareFitting } from "../../addin/fit/match.ts";
import { measures } from "../../addin/measures/dictionary.ts";

/** An invented figure on whom everything is measured, each girth with 100 mm and more, so that nothing is missing. */
const measured: Chart = readChart([
  ["Figure", ...measures.map(({ name }) => `${name} (mm)`)],
  ["Merrow", ...measures.map(({ kind }, i) => (kind === "girth" ? 100 + i : 60 + i))],
]);

const wide = 900;

function garment(garmentClass: GarmentClass, more: Partial<Pattern> = {}): Pattern {
  return {
    ...{ code: "P1", title: "", garmentClass, stretch: 0, thicknessMm: 0, wornOver: [] },
    ...{ closure: "none", finished: new Map() },
    ...more,
  };
}

const asked = (pattern: Pattern) => askedOf(pattern, garmentContext([pattern], measured));
const explained = (pattern: Pattern) => explainPair(prepareFitting([pattern], measured), 0, 0);
const verdict = (pattern: Pattern) => explained(pattern).verdict;
const unknown = (pattern: Pattern) =>
  explained(pattern).checks.filter((each) => each.counts && each.verdict === "not known");
const heads = { neck: "neckMm", cuff: "cuffMm", hem: "hemMm", waist: "waistMm" } as const;

describe("what is asked of a garment", () => {
  test.each(defaultGarmentClasses.map((each) => [each.name, each] as const))(
    "%s: is enough for a verdict on the figure that it was drafted for, and all that is needed is needed",
    (_, garmentClass) => {
      const bare = garment(garmentClass, { draftedFor: 0 });
      const needed = asked(bare).openings.filter((each) => each.needed);
      const answered = Object.fromEntries(needed.map(({ place }) => [heads[place], wide]));
      expect(verdict({ ...bare, ...answered })).not.toBe("not known");
      expect(unknown({ ...bare, ...answered })).toEqual([]);
      for (const { place } of needed) {
        // The waist of trousers and skirts is taken from the finished waist where it is not given.
        if (place === "waist") continue;
        const kinds = unknown({ ...bare, ...answered, [heads[place]]: undefined }).map(({ kind }) => kind);
        expect(kinds, place).toContain("opening");
      }
    },
  );

  test.each(defaultGarmentClasses.map((each) => [each.name, each] as const))(
    "%s: without such a figure, the finished measures that are needed give a verdict",
    (_, garmentClass) => {
      const bare = garment(garmentClass);
      const { openings, measures: finished } = asked(bare);
      const opened = Object.fromEntries(openings.map(({ place }) => [heads[place], wide]));
      const needed = finished.filter((each) => each.needed);
      // Openings alone do not say that a garment fits: where no measure is needed by itself, one of them is.
      const given = needed.length > 0 ? needed : finished;
      const full = { ...bare, ...opened, finished: new Map(given.map(({ measure }) => [measure, 200])) };
      expect(verdict(full)).not.toBe("not known");
      for (const { measure } of needed) {
        const without = new Map(full.finished);
        without.delete(measure);
        const missing = unknown({ ...full, finished: without }).map((check) => check.measure);
        expect(missing, measure).toContain(measure);
      }
    },
  );

  test("leaves out what has nothing to pass", () => {
    const named = (name: string) => defaultGarmentClasses.find((each) => each.name === name);
    const dress = named("Dress");
    const hat = named("Headwear");
    if (!dress || !hat) throw new Error("There is no such class.");
    const places = (pattern: Pattern) => asked(pattern).openings.map(({ place }) => place);
    expect(places(garment(dress))).toEqual(["neck"]);
    expect(places(garment(dress, { sleeve: "long" }))).toEqual(["neck", "cuff"]);
    expect(places(garment(dress, { closure: "full length", sleeve: "short" }))).toEqual(["cuff"]);
    expect(asked(garment(hat))).toMatchObject({
      opens: [],
      sleeves: false,
      ends: [],
      openings: [],
      lengths: [],
    });
    expect(asked(garment(hat)).measures.map(({ measure }) => measure)).toEqual(["headGirth"]);
  });
});
