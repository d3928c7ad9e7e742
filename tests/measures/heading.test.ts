import { describe, expect, it } from "vitest";
import { readHeading } from "../../addin/measures/heading.ts";

describe("readHeading", () => {
  it.each([
    ["Bust (in)", "Bust", "in"],
    ["Bust (inches)", "Bust", "in"],
    ["Bust (IN.)", "Bust", "in"],
    ['Bust (")', "Bust", "in"],
    ['Bust"', "Bust", "in"],
    ["Bust ″", "Bust", "in"],
    ["Waist [mm]", "Waist", "mm"],
    ["Waist{mm}", "Waist", "mm"],
    ["Hip, cm", "Hip", "cm"],
    ["Hip/cm", "Hip", "cm"],
    ["Hip – cm", "Hip", "cm"],
    ["Hip - cm", "Hip", "cm"],
    ["Hip: cm", "Hip", "cm"],
    ["hip_girth_cm", "hip_girth", "cm"],
    ["Hip in cm", "Hip", "cm"],
    ["Hip cm", "Hip", "cm"],
    ["Hip in", "Hip", "in"],
    ["Waist to hip in", "Waist to hip", "in"],
    ["Bust (full) (in)", "Bust (full)", "in"],
    ["Bust\u00a0\n(in)", "Bust", "in"],
  ])("splits %j into %j and %s", (text, name, unit) => {
    const heading = readHeading(text, "mm");
    expect(heading).toMatchObject({ name, unit, unitStated: true });
    expect(heading.measure).toBeDefined();
  });

  it("takes the chart’s unit where the heading has none", () => {
    expect(readHeading("Bust", "cm")).toMatchObject({ name: "Bust", unit: "cm", unitStated: false });
    expect(readHeading("Bust (full)", "mm")).toMatchObject({ name: "Bust (full)", unitStated: false });
    expect(readHeading("in", "mm")).toMatchObject({ name: "in", unitStated: false });
  });

  it("tells a unit that a column cannot be in", () => {
    expect(readHeading("Height (ft)", "mm")).toMatchObject({
      name: "Height",
      foreignUnit: "ft",
      unitStated: false,
    });
  });

  it("takes a text of great length as it is, without delay", () => {
    const long = `${"-(".repeat(50_000)} (mm)`;
    expect(readHeading(long, "mm")).toEqual({ name: long, unit: "mm", unitStated: false });
  });

  it("tells the side", () => {
    expect(readHeading("Left thigh (mm)", "mm")).toMatchObject({
      side: "left",
      measure: { id: "thighGirth" },
    });
    expect(readHeading("Calf R", "mm")).toMatchObject({ side: "right", measure: { id: "calfGirth" } });
    expect(readHeading("Calf", "mm").side).toBeUndefined();
  });
});
