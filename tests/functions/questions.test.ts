import { describe, expect, test } from "vitest";
import { descriptors } from "../../functions/all.ts";
import { functionsFor } from "../../functions/questions.ts";

const names = (asked: string) => functionsFor(asked).map(({ name }) => name);

describe("the search for a function", () => {
  test.each([
    ["will it fit", ["WHATFITS", "WEARERS", "WARDROBE"]],
    ["Who has the same body?", ["GROUPS", "SHARES"]],
    ["what can she wear", ["WARDROBE", "WEARERS"]],
    ["wrong readings", ["FLAGS"]],
    ["inches to mm", ["LENGTH"]],
    ["does it go over the head", ["CLEARANCE"]],
    ["print it larger", ["RESIZE"]],
    ["grading", ["GRADE"]],
    ["side by side", ["COMPARE"]],
    ["=FIT.RESI", ["RESIZE"]],
    ["apart", ["APART"]],
  ])("answers “%s”", (asked, wanted) => {
    expect(names(asked)).toEqual(expect.arrayContaining(wanted));
  });

  test("puts what is named first, gives all where nothing is asked, and nothing where nothing is like it", () => {
    expect(names("fit")[0]).toBe("WHATFITS");
    expect(names("nearest")[0]).toBe("NEAREST");
    expect(names("  ")).toEqual(descriptors.map(({ name }) => name));
    expect(names("accounting")).toEqual([]);
  });
});
