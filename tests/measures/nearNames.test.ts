import { describe, expect, it } from "vitest";
import { didYouMean, nearNames } from "../../addin/measures/nearNames.ts";

describe("nearNames", () => {
  it("finds names a slip away, nearest first", () => {
    expect(nearNames("Wasit", ["Bust", "Waist", "Hip", "Wrist"])).toEqual(["Waist"]);
    expect(nearNames("Bust girht", ["Foot girth", "Bust girth"])).toEqual(["Bust girth"]);
    expect(nearNames("Jorvie", ["Jorvie Oak", "Jorvvie"])).toEqual(["Jorvie Oak", "Jorvvie"]);
  });

  it("offers nothing for a blank or a far name", () => {
    expect(nearNames("  ", ["Bust"])).toEqual([]);
    expect(nearNames("Ann", ["Bea", "Cleo"])).toEqual([]);
    expect(nearNames("a", ["b"])).toEqual([]);
    expect(didYouMean("Ann", ["Bea"])).toBe("");
  });

  it("asks in words", () => {
    expect(didYouMean("Wasit", ["Waist"])).toBe(" Did you mean “Waist”?");
  });
});
