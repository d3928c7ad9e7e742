import { describe, expect, it } from "vitest";
import { defaultEaseRules } from "../../addin/chart/defaultEaseRules.ts";
import { easeMm } from "../../addin/chart/easeRule.ts";
import { rank, verdictOf } from "../../addin/fit/verdict.ts";
import { judgeGirth } from "../../addin/fit/judge.ts";
import { explain, verdict, wisp } from "../fit/fitOf.ts";

const inch = 25.4;

/**
 * Wearing ease of people’s clothes in inches: Central Washington University, course pages on costume by S. Robinson, chapter
 * 16, “Ease In Clothing” (cwu.edu/~robinsos/ppages/resources/costxt/costxt_16.htm): bodices 1½–2 at the bust, dresses ¾–1 at
 * the waist, skirts and trousers ½–¾ there, every garment 2–2¾ at the hip; trousers at least 1 at the thigh, 1½–2 at the seat.
 * Bodies: misses size 14 of the chart in SOURCES.md, the thigh of 22 in invented.
 *
 * Our rules are for figures, which need less: what is published for people is within them at full size.
 */
describe("published wearing ease, at full size", () => {
  it.each([
    ["Close-fitting bodice", "bustGirth", 36, [1.5, 2]],
    ["Dress", "bustGirth", 36, [1.5, 2]],
    ["Dress", "waistGirth", 28, [0.75, 1]],
    ["Sheath dress", "hipGirth", 38, [2]],
    ["Fitted skirt", "waistGirth", 28, [0.5, 0.75]],
    ["Fitted skirt", "hipGirth", 38, [2, 2.75]],
    ["Trousers", "waistGirth", 28, [0.5, 0.75]],
    ["Trousers", "hipGirth", 38, [1.5, 2, 2.75]],
    ["Trousers", "thighGirth", 22, [1]],
  ] as const)("%s, %s of %s in: %s in fits", (garmentClass, measure, body, eases) => {
    const rule = defaultEaseRules.find(
      (each) => each.garmentClass === garmentClass && each.measure === measure,
    );
    for (const ease of eases) {
      const mm = ease * inch;
      const least = easeMm(rule?.least, body * inch, -Infinity);
      const most = easeMm(rule?.most, body * inch, Infinity);
      expect(judgeGirth(mm, mm, mm, least, most, 0)).toBe(rank.fits);
    }
  });
});

describe("the ladder of dresses", () => {
  const ladder = ["Sheath dress", "Dress", "Straight dress", "Loose dress", "Tent dress"];

  it.each([110, 180, 250, 914.4])("rises from class to class on a bust of %s mm", (bust) => {
    const rungs = ladder.map((name) =>
      defaultEaseRules.find((rule) => rule.garmentClass === name && rule.measure === "bustGirth"),
    );
    for (const limit of ["least", "most"] as const) {
      const eases = rungs.map((rule) => easeMm(rule?.[limit], bust, Infinity));
      expect([...eases].sort((x, y) => x - y)).toEqual(eases);
      expect(new Set(eases).size).toBe(ladder.length);
    }
    // Neighbours overlap, so that no ease between them belongs to no dress.
    rungs.slice(1).forEach((rule, i) => {
      expect(easeMm(rule?.least, bust, 0)).toBeLessThan(easeMm(rungs[i]?.most, bust, Infinity));
    });
  });
});

// How a stretch is given in percent is common practice; the 20 % follow from it: 1 − 1 / 1.25.
describe("stretch", () => {
  it("4 in that reach 5 in are 25 %: such a cloth may be 20 % smaller than the body, and no more", () => {
    const stretch = 5 / 4 - 1;
    const closes = (garment: number): string => {
      const body = 100;
      const ease = (factor: number) => garment * factor - body;
      return verdictOf(judgeGirth(ease(1), ease(1 + stretch / 2), ease(1 + stretch), -60, 60, 0));
    };
    expect(closes(80.01)).toBe("snug");
    // Half of the stretch reaches the body from 100 / 1.125 = 88.9 mm.
    expect(closes(88.9)).toBe("fits");
    expect(closes(88.8)).toBe("snug");
    expect(closes(79.99)).toBe("too tight");
  });
});

/**
 * Rough sizes of a grown woman in mm, from memory; that the head does not pass a neck opening as large as the base of the neck, nor
 * the hand a wrist, nor the heel an ankle, is what everybody knows.
 */
describe("openings on a grown woman", () => {
  const woman = {
    ...{ Head: 560, "Neck base": 370, Hand: 187, Wrist: 155, Heel: 310, Ankle: 216 },
    ...wispAtFullSize(),
  };

  const closed = {
    ...{ "Garment class": "Loose top", Opens: "side", "Opening length": 400 },
    ...{ Bust: 1100, Waist: 1100 },
  };

  it("a neck opening as large as the base of the neck does not go over the head; one a little larger than the head does", () => {
    const { verdict: said, governing } = explain({ G: { ...closed, "Neck opening": 370 } }, woman);
    expect(said).toBe("will not go on");
    expect(governing?.place).toBe("Neck over the head");
    expect(governing?.differenceMm).toBeCloseTo(370 - 560, 6);
    expect(verdict({ ...closed, "Neck opening": 565 }, woman)).toBe("fits");
  });

  it("a cuff as large as the wrist does not pass the hand, unless the hand comes off", () => {
    const sleeve = { "Garment class": "Sleeve", "Upper arm": 340, "Cuff opening": 155 + 4 };
    const arm = { ...woman, "Upper arm": 300 };
    expect(explain({ G: sleeve }, arm).governing?.place).toBe("Cuff over the hand");
    expect(verdict(sleeve, arm)).toBe("will not go on");
    expect(verdict(sleeve, { ...arm, "Hands removable": "yes" })).toBe("fits");
  });

  it("a leg hem as large as the ankle does not pass the heel", () => {
    const hose = { "Garment class": "Hosiery", Calf: 340, "Hem opening": 216 };
    expect(explain({ G: hose }, woman).governing?.place).toBe("Hem over the heel and instep");
    // 310 / 216 = 1.44: half of a stretch of 90 % is just enough.
    expect(verdict({ ...hose, Calf: 300, "Stretch %": "80%" }, woman)).toBe("will not go on");
    expect(verdict({ ...hose, Calf: 300, "Stretch %": "90%" }, woman)).toBe("fits");
  });
});

/** The rest of the body, invented: what is tested does not depend on it. */
function wispAtFullSize() {
  return { Bust: wisp.Bust * 5, Waist: wisp.Waist * 5, Hip: wisp.Hip * 5, Calf: wisp.Calf * 5 };
}
