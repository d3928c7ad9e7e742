import { describe, expect, it } from "vitest";
import { findMeasure, headingsOf, measureById, measures } from "../../addin/measures/dictionary.ts";
import { headingKey } from "../../addin/measures/headingKey.ts";
import { zones } from "../../addin/measures/measure.ts";

describe("the measure dictionary", () => {
  it("has no id twice and no heading that means two measures", () => {
    const owners = new Map<string, Set<string>>();
    for (const measure of measures) {
      for (const heading of headingsOf(measure)) {
        const key = headingKey(heading).replaceAll(" ", "");
        expect(key).not.toBe("");
        owners.set(key, (owners.get(key) ?? new Set()).add(measure.id));
      }
    }
    expect([...owners].filter(([, ids]) => ids.size > 1)).toEqual([]);
    expect(new Set(measures.map(({ id }) => id)).size).toBe(measures.length);
  });

  it("finds every measure by id and by every heading", () => {
    for (const measure of measures) {
      expect(measureById(measure.id)).toBe(measure);
      for (const heading of headingsOf(measure)) expect(findMeasure(heading.toUpperCase())).toBe(measure);
    }
  });

  it("has the measures that a chart of small figures begins with, and every zone", () => {
    const ids = measures.map(({ id }) => id);
    expect(ids).toEqual(
      expect.arrayContaining(["height", "bustGirth", "waistGirth", "hipGirth", "footLength"]),
    );
    expect(measures.length).toBeGreaterThanOrEqual(35);
    expect(new Set(measures.map(({ zone }) => zone))).toEqual(new Set(zones));
    for (const zone of zones) expect(measures.some((m) => m.zone === zone && m.governs)).toBe(true);
  });

  it("says how to take each measure, on a figure too, with a tolerance that a tape can show", () => {
    for (const { definition, onFigures, tolerance, synonyms } of measures) {
      expect(definition).toMatch(/^[A-Z].{15,}\.$/s);
      expect(onFigures).toMatch(/^[A-Z].{15,}\.$/s);
      expect(tolerance.floorMm).toBeGreaterThanOrEqual(1);
      expect(tolerance.percent).toBeGreaterThan(0);
      for (const synonym of synonyms) expect(synonym).toBe(synonym.toLowerCase());
    }
  });
});

describe("findMeasure", () => {
  it.each([
    ["Chest", "bustGirth"],
    ["Oberweite", "bustGirth"],
    ["Hüfte", "hipGirth"],
    ["HUEFTUMFANG", "hipGirth"],
    ["Größe", "height"],
    ["Groesse", "height"],
    ["Linker Oberschenkel", "thighGirth"],
    ["BUST CIRC.", "bustGirth"],
    ["Bust (fullest part)", "bustGirth"],
    ["Hips", "hipGirth"],
    ["hip_circumference", "hipGirth"],
    ["Seat", "hipGirth"],
    ["underBust", "underBustGirth"],
    ["Under-bust", "underBustGirth"],
    ["Nape to waist", "backWaistLength"],
    ["Center back length", "backWaistLength"],
    ["Centre-back length", "backWaistLength"],
    ["Inseam", "insideLeg"],
    ["Outseam", "outsideLeg"],
    ["Biceps", "upperArmGirth"],
    ["Armhole", "armscyeGirth"],
    ["Across shoulders", "shoulderWidth"],
    ["Left thigh", "thighGirth"],
    ["Thigh (R)", "thighGirth"],
    ["Foot breadth", "footWidth"],
    ["Ht.", "height"],
  ])("reads %j as %s", (heading, id) => {
    expect(findMeasure(heading)?.id).toBe(id);
  });

  it.each(["", "Maker", "Tail", "Notes", "Left", "Bust 2", "Leg", "()", "Schulterbreite", "Seitenlänge"])(
    "does not know %j",
    (heading) => {
      expect(findMeasure(heading)).toBeUndefined();
    },
  );
});
