import { describe, expect, it } from "vitest";
import { findMeasure, measureById } from "../../addin/measures/dictionary.ts";

/**
 * Body dimensions of ISO 8559:1989, the standard that ISO 8559-1 follows, as listed in “Anthropometry, Apparel Sizing
 * and Design”, p. 96, table 4.1; those that a small figure can have.
 */
const isoTerms: readonly (readonly [string, string])[] = [
  ["Height", "height"],
  ["Shoulder length", "shoulderLength"],
  ["Shoulder width", "shoulderWidth"],
  ["Back width", "acrossBack"],
  ["Upper arm length", "upperArmLength"],
  ["Arm length", "armLength"],
  ["Under arm length", "underarmLength"],
  ["Hand length", "handLength"],
  ["Foot length", "footLength"],
  ["Head girth", "headGirth"],
  ["Neck girth", "neckGirth"],
  ["Neck-base girth", "neckBaseGirth"],
  ["Chest girth", "bustGirth"],
  ["Bust girth", "bustGirth"],
  ["Upper arm girth", "upperArmGirth"],
  ["Armscye girth", "armscyeGirth"],
  ["Elbow girth", "elbowGirth"],
  ["Wrist girth", "wristGirth"],
  ["Hand girth", "handGirth"],
  ["Waist girth", "waistGirth"],
  ["Hip girth", "hipGirth"],
  ["Thigh girth", "thighGirth"],
  ["Mid-thigh girth", "midThighGirth"],
  ["Knee girth", "kneeGirth"],
  ["Calf girth", "calfGirth"],
  ["Ankle girth", "ankleGirth"],
  ["Neck shoulder point to breast point", "bustPointDepth"],
  ["Neck shoulder to waist", "frontWaistLength"],
  ["Cervical to waist (back)", "backWaistLength"],
  ["Trunk length", "torsoLength"],
  ["Trunk circumference", "torsoGirth"],
  ["Body rise", "bodyRise"],
  ["Outside leg length", "outsideLeg"],
  ["Inside leg length", "insideLeg"],
  ["Crotch height", "insideLeg"],
  ["Waist to hips", "waistToHip"],
  ["Knee height", "kneeHeight"],
];

describe("the dictionary and the standard’s terms", () => {
  it.each(isoTerms)("knows %s as %s", (term, id) => {
    expect(findMeasure(term)?.id).toBe(id);
  });

  it("keeps girths girths, lengths lengths and widths widths", () => {
    const kinds = { girth: "girth", length: "length", width: "width" } as const;
    for (const [term, id] of isoTerms) {
      const word = Object.keys(kinds).find((kind) => term.endsWith(kind));
      if (word !== undefined) expect(measureById(id)?.kind).toBe(word);
    }
  });

  // EN 13402-1: bust girth is the greatest horizontal girth over the bust; head girth is taken above the ears; neck
  // girth at the seventh cervical vertebra, which is the back neck point of the dictionary.
  it.each([
    ["bustGirth", /greatest level girth/],
    ["headGirth", /greatest level girth.*above the ears/],
    ["neckGirth", /back neck point/],
  ])("defines %s as EN 13402-1 does", (id, words) => {
    expect(measureById(id)?.definition).toMatch(words);
  });

  // The New Dressmaker (1921), p. 13, on Wikisource: a doll’s height is from the top of its head to the sole of its foot.
  it("defines the height of a figure as the trade did a century ago", () => {
    expect(measureById("height")?.definition).toMatch(/top of the head.*sole of the bare foot/);
  });
});
