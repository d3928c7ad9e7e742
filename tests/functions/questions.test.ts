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

  // Whole sentences, as somebody who sews asks them; not one word of some of them stands in a description.
  test.each([
    ["does my skirt pattern fit Mirabel?", "WHATFITS"],
    ["Which dolls can wear this dress?", "WEARERS"],
    ["can she get it over her head", "CLEARANCE"],
    ["my sleeve is too short, what do I do", "REASONS"],
    ["how much do I have to let out the waist", "REASONS"],
    ["convert 5 3/8 inches to cm", "LENGTH"],
    ["write millimetres as inches with fractions", "TAPE"],
    ["did I make a mistake measuring", "FLAGS"],
    ["find typos in my chart", "FLAGS"],
    ["which doll is most like this one", "NEAREST"],
    ["can two dolls share clothes", "SHARES"],
    ["which dolls have the same size", "GROUPS"],
    ["shrink a pattern on the copier", "RESIZE"],
    ["how do I grade a bodice up a size", "GRADE"],
    ["radius of a half circle skirt", "FLARE"],
    ["how wide is the waist dart", "DARTS"],
    ["what scale is my doll", "FIGURESCALE"],
    ["text for my shop listing", "LISTINGWORDS"],
    ["how many patterns do I have to draft for all my dolls", "BASES"],
    ["what should I measure next", "MEASURENEXT"],
    ["guess a missing measurement", "EXPECTED"],
    ["how much ease at the hips", "EASE"],
    ["What’s the difference between Mirabel and Tansy?", "COMPARE"],
  ])("answers “%s” first with %s", (asked, first) => {
    expect(names(asked)[0]).toBe(first);
  });

  test("keeps to what answers, and passes over names that no description has", () => {
    expect(names("Which doll is most like Mirabel?")[0]).toBe("NEAREST");
    expect(names("radius of a half circle skirt").length).toBeLessThan(5);
    expect(names("Mirabel Tansy")).toEqual([]);
  });

  test("puts what is named first, gives all where nothing is asked, and nothing where nothing is like it", () => {
    expect(names("fit")[0]).toBe("WHATFITS");
    expect(names("nearest")[0]).toBe("NEAREST");
    expect(names("  ")).toEqual(descriptors.map(({ name }) => name));
    expect(names("accounting")).toEqual([]);
  });
});
