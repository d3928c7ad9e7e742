import { describe, expect, it } from "vitest";
import { findUnit, fromMm, mmPerUnit, readUnit, toMm } from "../../addin/measures/units.ts";

describe("units", () => {
  it("are exact: the inch is 25.4 mm (international yard and pound agreement, 1959)", () => {
    expect(mmPerUnit).toEqual({ mm: 1, cm: 10, in: 25.4 });
    expect(toMm(5.375, "in")).toBe(136.525);
    expect(fromMm(25.4, "in")).toBe(1);
    expect(fromMm(136, "cm")).toBe(13.6);
  });

  it.each([
    ["MM", "mm"],
    ["cm.", "cm"],
    ["Inches", "in"],
    ["in.", "in"],
    ['"', "in"],
    ["″", "in"],
    [" centimeters ", "cm"],
  ])("reads %j as %s", (text, unit) => {
    expect(findUnit(text)).toBe(unit);
    expect(readUnit(text)).toBe(unit);
  });

  it.each(["", "ft", "kg", "constructor", "m"])("refuses %j and names the units", (text) => {
    expect(findUnit(text)).toBeUndefined();
    expect(() => readUnit(text)).toThrow(`“${text}” is not a unit of length. Use mm, cm or in.`);
  });
});
