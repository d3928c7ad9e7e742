import { describe, expect, it } from "vitest";
import type { Row } from "./fitOf.ts";
import { easeCheckFunction } from "../../functions/easeCheck.ts";
import { matchAll } from "../../addin/fit/match.ts";
import { explainPair } from "../../addin/fit/explainPair.ts";
import { explain, fittingOf, verdict, wisp } from "./fitOf.ts";

/** A gown that is laid round the body, so that ease alone decides. */
const gown = { "Garment class": "Dress", Opens: "full length", Bust: 197, Waist: 143, Hip: 215 };
/** A skirt without ease trouble: what it passes decides. */
const skirt = { "Garment class": "Flared skirt", Bust: undefined, Waist: 139, Hip: 300 };

const check = (garment: Row, place: string, figure: Row = wisp) => {
  const found = explain({ G: garment }, figure).checks.find((each) => each.place === place);
  if (!found) throw new Error(`There is no check of ${place}.`);
  return found;
};

describe("ease", () => {
  it.each([
    ["fits", 197],
    ["snug", 184],
    ["loose", 215],
    ["too tight", 178],
    ["too loose", 240],
    ["too close to call", 180.2],
    ["not known", undefined],
  ])("%s at a finished bust of %s mm", (expected, Bust) => {
    expect(verdict({ ...gown, Bust })).toBe(expected);
  });

  it("is too close to call by the error of that measure, where the chart has shown one", () => {
    const error = { mm: 0.5, percent: 0.25 };
    // 0.2 mm above the limit of 180 mm: told by readings that are off by 0.1 mm, not by those of half a millimetre.
    const told = verdict({ ...gown, Bust: 180.2 }, wisp, {
      readingError: { ...error, ofMeasures: { bustGirth: 0.1 } },
    });
    expect(told).toBe("snug");
    const ofAnother = { ...error, ofMeasures: { waistGirth: 0.1 } };
    expect(verdict({ ...gown, Bust: 180.2 }, wisp, { readingError: ofAnother })).toBe("too close to call");
    const coarse = { ...error, ofMeasures: { bustGirth: 3 } };
    const { verdict: found, words } = explain({ G: { ...gown, Bust: 178 } }, wisp, { readingError: coarse });
    expect(found).toBe("too close to call");
    expect(words).toContain("the tape may be off by 3 mm");
  });

  it("says by how much, and what to let out in all and at each of four seam edges", () => {
    const { governing, words } = explain({ G: { ...gown, Bust: 178 } });
    // Least ease of a dress: 3 % of 180 + 1 = 6.4 mm.
    expect(governing?.differenceMm).toBeCloseTo(178 - 186.4, 9);
    expect(governing?.alteration?.totalMm).toBeCloseTo(8.4, 9);
    expect(governing?.alteration?.perEdgeMm).toBeCloseTo(2.1, 9);
    expect(words).toBe("Bust girth: too tight by 8.4 mm.");
  });

  it("fits once it is altered as it says", () => {
    for (const Bust of [175, 178, 225]) {
      const { alteration } = check({ ...gown, Bust }, "Bust girth");
      const altered = Bust + (alteration?.totalMm ?? Number.NaN);
      expect(verdict({ ...gown, Bust: altered })).toBe("fits");
    }
  });

  it("offers no alteration that amounts to a new draft", () => {
    expect(check({ ...gown, Bust: 120 }, "Bust girth").alteration).toBeUndefined();
  });

  it("judges a stretch cloth at half its stretch, and lets it close with all of it", () => {
    const knit = { ...gown, Bust: 176, Waist: 131 };
    expect(verdict(knit)).toBe("too tight");
    expect(verdict({ ...knit, "Stretch %": "20%" })).toBe("fits");
  });

  it("lets the lacing of a corset stand open, but not any gap", () => {
    const corset = { "Garment class": "Corset", Opens: "full length", Bust: 181 };
    expect(check({ ...corset, Waist: 134 * 0.93 }, "Waist girth")).toMatchObject({
      ...{ verdict: "fits", says: "fits: −9.4 mm of ease, 5.6 mm with its lacing open" },
    });
    expect(check({ ...corset, Waist: 134 * 0.8 }, "Waist girth").verdict).toBe("too tight");
    expect(check({ ...corset, "Garment class": "Bodice", Waist: 134 * 0.93 }, "Waist girth").verdict).toBe(
      "too tight",
    );
  });

  it("does not count negative ease and stretch twice", () => {
    // A quarter smaller than the waist, in a cloth that stretches by half: the rule of briefs allows a fifth at rest.
    const briefs = { "Garment class": "Briefs", "Stretch %": "50%", "Waist opening": 200, Hip: 170 };
    expect(check({ ...briefs, Waist: 134 * 0.81 }, "Waist girth").verdict).toBe("fits");
    expect(check({ ...briefs, Waist: 134 * 0.75 }, "Waist girth").verdict).toBe("snug");
    // A tenth smaller, in a cloth of which half the stretch gives a twentieth.
    expect(check({ ...briefs, "Stretch %": "10%", Waist: 134 * 0.93 }, "Waist girth").verdict).toBe("snug");
    expect(check({ ...briefs, "Stretch %": "0%", Waist: 134 * 0.98 }, "Waist girth").verdict).toBe(
      "too tight",
    );
  });

  it("leaves the room inside that its own cloth takes: π times its thickness", () => {
    const felt = { ...gown, "Thickness (mm)": 2 };
    expect(check(felt, "Bust girth").needsMm - check(gown, "Bust girth").needsMm).toBeCloseTo(2 * Math.PI, 9);
    expect(check(felt, "Waist girth").verdict).toBe("snug");
    expect(check(gown, "Waist girth").verdict).toBe("fits");
  });

  it("asks for the measures to take", () => {
    const { verdict: said, take } = explain({ G: gown }, { ...wisp, Waist: undefined });
    expect(said).toBe("not known");
    expect(take).toEqual(["Waist girth of Wisp"]);
    expect(explain({ G: { ...gown, Bust: undefined } }).take).toEqual(["finished bust girth of G"]);
  });

  it("leaves out a measure that is not required and not known", () => {
    expect(verdict({ ...gown, Hip: undefined })).toBe("fits");
    expect(check({ ...gown, Hip: undefined }, "Hip girth").counts).toBe(false);
  });

  it("judges lengths as too short and too long", () => {
    expect(verdict({ ...gown, "Back waist": 88 })).toBe("fits");
    expect(verdict({ ...gown, "Back waist": 75 })).toBe("too short");
    expect(verdict({ ...gown, "Back waist": 110 })).toBe("too long");
    expect(check({ ...gown, "Back waist": 75 }, "Back waist length").says).toMatch(/^too short by 11\.2 mm/);
  });

  it("takes the drafted body and the design ease where a finished girth is not given", () => {
    const drafted = { "Garment class": "Dress", Opens: "full length", "Drafted for": "Wisp" };
    expect(verdict(drafted)).toBe("fits");
    // Half way between 3 % + 1 mm and 12 % + 2 mm.
    expect(check(drafted, "Bust girth").hasMm).toBeCloseTo(180 * 1.075 + 1.5, 9);
  });
});

describe("putting it on", () => {
  it("takes the better of both ways, and names it", () => {
    // Over the head the bust has to pass, stepped into the hip.
    expect(explain({ G: { ...skirt, Opens: "back", "Opening length": 25 } }).routes).toEqual([
      { name: "over the head", verdict: "fits", isBest: true },
      { name: "stepped into", verdict: "will not go on", isBest: false },
    ]);
    const bigHead = { ...wisp, Head: 260 };
    expect(explain({ G: { ...skirt, Opens: "back", "Opening length": 30 } }, bigHead).routes[0]).toEqual({
      name: "stepped into",
      verdict: "fits",
      isBest: true,
    });
  });

  it("says where it will not go on, and what is missing", () => {
    const { verdict: said, governing } = explain({ G: skirt });
    expect(said).toBe("will not go on");
    expect(governing?.place).toBe("Waist over the bust");
    expect(governing?.differenceMm).toBeCloseTo(139 - 180);
    expect(governing?.alteration?.words).toBe(
      "Make the opening 41 mm larger, or give it a placket of 20.5 mm.",
    );
  });

  it("counts twice the length of a placket, and lets an opening of full length go round", () => {
    expect(verdict({ ...skirt, Opens: "back", "Opening length": 20 })).toBe("will not go on");
    expect(verdict({ ...skirt, Opens: "back", "Opening length": 21 })).toBe("fits");
    expect(verdict({ ...skirt, Opens: "full length" })).toBe("fits");
  });

  it("counts a back opening at the waist only as far as it reaches below it", () => {
    const dress = { ...gown, "Back waist": 88, "Neck opening": 70, Opens: "back" };
    expect(verdict({ ...dress, "Opening length": 88 })).toBe("will not go on");
    expect(verdict({ ...dress, "Opening length": 88 + 19 })).toBe("fits");
  });

  it("asks for the back waist length where nobody can say how far down a back opening ends", () => {
    const dress = { ...gown, "Neck opening": 70, Opens: "back" };
    const asked = explain({ G: { ...dress, "Opening length": 107 } });
    expect(asked.verdict).toBe("not known");
    expect(asked.take).toEqual(["Back waist length of G, since its opening begins at the neck"]);
    expect(asked.words).toMatch(/not known: measure Back waist length of G/);
    // It goes on wherever the opening ends, or nowhere: then nothing has to be asked.
    expect(verdict({ ...dress, Waist: 300, Bust: 300, "Opening length": 120 })).not.toBe("not known");
    expect(verdict({ ...dress, "Opening length": 20 })).toBe("will not go on");
    expect(verdict({ ...dress, "Opening length": 107, "Drafted for": "Wisp" })).toBe("fits");
  });

  it("passes the wrist where the hands come off, and says so", () => {
    const sleeve = { ...gown, "Cuff opening": 36 };
    expect(verdict(sleeve)).toBe("will not go on");
    const handsOff = { ...wisp, "Hands removable": "yes" };
    expect(verdict(sleeve, handsOff)).toBe("fits");
    expect(check(sleeve, "Cuff over the wrist", handsOff).says).toContain("the hands come off");
  });

  it("goes by the error of what has to pass", () => {
    const error = (ofMeasures: Record<string, number>) => ({
      readingError: { mm: 0.5, percent: 0.25, ofMeasures },
    });
    // 0.2 mm of room over a hand of 40 mm; the wrist, which passes where the hands come off, has 33.
    const sleeve = { ...gown, "Cuff opening": 40.2 };
    expect(verdict(sleeve)).toBe("too close to call");
    expect(verdict(sleeve, wisp, error({ handGirth: 0.1 }))).toBe("fits");
    expect(verdict(sleeve, wisp, error({ wristGirth: 0.1 }))).toBe("too close to call");
    const handsOff = { ...wisp, "Hands removable": "yes", Wrist: 40 };
    expect(verdict(sleeve, handsOff, error({ wristGirth: 0.1 }))).toBe("fits");
    expect(verdict(sleeve, handsOff, error({ handGirth: 0.1 }))).toBe("too close to call");
  });

  it("passes the neck where the head comes off", () => {
    const top = { ...gown, Opens: "side", "Opening length": 40, "Neck opening": 80 };
    expect(verdict(top)).toBe("will not go on");
    expect(verdict(top, { ...wisp, "Head removable": "yes" })).toBe("fits");
  });

  it("asks a tenth more of a sleeve where the arm is hard and has no joint", () => {
    const sleeve = { ...gown, "Cuff opening": 42 };
    expect(verdict(sleeve)).toBe("fits");
    expect(verdict(sleeve, { ...wisp, Body: "porcelain", Jointed: "no" })).toBe("will not go on");
    expect(verdict(sleeve, { ...wisp, Body: "cloth", Jointed: "no" })).toBe("fits");
  });

  it("needs the shoulders of a figure whose arms do not lift", () => {
    const pulled = { ...skirt, Opens: "back", "Opening length": 25 };
    const stiff = { ...wisp, Jointed: "no", Body: "hard" };
    expect(explain({ G: pulled }, stiff).take).toEqual(["Shoulder girth of Wisp"]);
    expect(verdict(pulled, { ...stiff, "Shoulder girth": 230 })).toBe("will not go on");
  });

  it("lets a soft body through an opening that is a little smaller", () => {
    const narrow = { ...skirt, Opens: "back", "Opening length": 18 };
    expect(verdict(narrow)).toBe("will not go on");
    expect(verdict(narrow, { ...wisp, "Body material": "stuffed cloth" })).toBe("fits");
  });

  it("passes heel and instep with a leg hem, or the ankle where the feet come off", () => {
    const trousers = {
      ...{ "Garment class": "Trousers", Opens: "front", "Opening length": 40 },
      ...{ Waist: 139, Hip: 208, "Hem opening": 55 },
    };
    expect(verdict(trousers)).toBe("will not go on");
    expect(verdict({ ...trousers, "Hem opening": 64 })).toBe("fits");
    expect(verdict(trousers, { ...wisp, "Feet removable": "yes" })).toBe("fits");
    expect(explain({ G: trousers }, { ...wisp, Heel: undefined, "Foot girth": 50 }).verdict).toBe("fits");
  });

  it("tells a heeled shoe from a flat foot", () => {
    const shoe = { "Garment class": "Shoe", "Foot length": 54, "Heel height": 14 };
    expect(verdict(shoe, { ...wisp, "Foot shape": "flat" })).toBe("too long");
    expect(verdict(shoe, { ...wisp, "Heel height": 14 })).toBe("fits");
    expect(verdict(shoe)).toBe("not known");
    expect(verdict({ ...shoe, "Heel height": 0 }, { ...wisp, "Foot shape": "flat" })).toBe("fits");
  });
});

describe("what a garment has", () => {
  it("a garment without sleeves is not judged at the arm, one with short sleeves at the upper arm", () => {
    const drafted = { "Garment class": "Dress", Opens: "full length", "Drafted for": "Wisp" };
    const stout = { ...wisp, "Upper arm": 90 };
    const places = (garment: Row) =>
      explainPair(fittingOf({ G: garment }, { Wisp: wisp, Stout: stout }), 0, 1).checks.map(
        ({ place }) => place,
      );
    expect(places(drafted)).not.toContain("Upper arm girth");
    expect(places({ ...drafted, Sleeves: "short" })).toContain("Upper arm girth");
    expect(places({ ...drafted, "Cuff opening": 45 })).toContain("Upper arm girth");
    expect(places({ ...drafted, Sleeves: "none", "Back waist": 88 })).toContain("Back waist length");
  });

  it("an ankle sock is not judged at the calf, nor a short garment at the hip", () => {
    const sock = { "Garment class": "Hosiery", "Hem opening": 64, "Foot length": 54 };
    expect(explain({ G: sock }).verdict).toBe("not known");
    expect(explain({ G: { ...sock, "Ends at": "ankle" } }).checks.map(({ place }) => place)).toEqual([
      ...["Ankle girth", "Foot length", "Hem over the heel and instep"],
    ]);
    const jacket = { "Garment class": "Jacket", Opens: "full length", Bust: 210, Hip: 150 };
    expect(verdict(jacket)).toBe("too tight");
    expect(verdict({ ...jacket, "Ends at": "waist" })).toBe("fits");
  });

  it("shorts and short sleeves pass what is in their way", () => {
    const figure = { ...wisp, Thigh: 108, Knee: 72, "Mid-thigh": 95, Forearm: 44, Elbow: 46 };
    const shorts = { "Garment class": "Trousers", Opens: "full length", Waist: 139, Hip: 208 };
    const passes = (garment: Row, place: RegExp) =>
      explain({ G: garment }, figure).checks.find((each) => place.test(each.place));
    expect(passes({ ...shorts, "Hem opening": 70 }, /^Hem/)).toMatchObject({ verdict: "fits", bodyMm: 62 });
    expect(passes({ ...shorts, "Hem opening": 70, "Ends at": "knee" }, /^Hem/)).toMatchObject({
      ...{ place: "Hem over the calf", verdict: "will not go on", bodyMm: 74 },
    });
    expect(passes({ ...shorts, "Hem opening": 90, "Ends at": "thigh" }, /^Hem/)).toMatchObject({
      ...{ place: "Hem over the middle of the thigh", verdict: "will not go on" },
    });
    // A finished inside leg says it too, beside the figure that it was drafted for: 60 of 186 is above the knee.
    const drafted = { ...shorts, "Hem opening": 90, "Drafted for": "Wisp", "Inside leg": 60 };
    expect(
      explain({ G: drafted }, { ...figure, "Inside leg": 186 }).checks.find(({ place }) =>
        place.startsWith("Hem"),
      )?.bodyMm,
    ).toBe(95);
    expect(passes({ ...gown, "Cuff opening": 48, Sleeves: "short" }, /^Cuff/)).toMatchObject({
      ...{ place: "Cuff over the upper arm", verdict: "will not go on" },
    });
    expect(passes({ ...gown, "Cuff opening": 48 }, /^Cuff/)?.verdict).toBe("fits");
  });

  describe("lengths", () => {
    const legs = { Thigh: 108, "Inside leg": 188, "Body rise": 66 };
    const short = { ...wisp, ...legs };
    const tall = { ...short, "Inside leg": 230 };
    const on = (garment: Row, figure: Row) => {
      const fitting = fittingOf({ G: garment }, { Short: short, Other: figure });
      const explained = explainPair(fitting, 0, 1);
      expect(matchAll(fitting).verdict(0, 1)).toBe(explained.verdict);
      return explained;
    };
    const trousers = {
      "Garment class": "Trousers",
      Opens: "full length",
      Waist: 139,
      Hip: 208,
      "Hem opening": 80,
    };

    it("trousers for an inside leg of 188 are too short for one of 230", () => {
      const drafted = { ...trousers, "Drafted for": "Short" };
      expect(on(drafted, short)).toMatchObject({ verdict: "fits", words: "Fits." });
      expect(on(drafted, tall)).toMatchObject({ verdict: "too short", governing: { place: "Inside leg" } });
      // As given: 172 of 188 is 210 of 230.
      const given = on({ ...drafted, "Inside leg": 172 }, tall).governing;
      expect(given?.bodyMm).toBeCloseTo((172 / 188) * 230, 9);
      expect(on({ ...trousers, "Ends at": "ankle", "Inside leg": 172 }, tall).verdict).toBe("too short");
      expect(on({ ...trousers, "Ends at": "ankle", "Inside leg": 212 }, tall).verdict).toBe("fits");
    });

    it("a skirt has a hem: at the same share of the way to the floor", () => {
      const knee = { ...skirt, Opens: "full length", "Ends at": "knee", Length: 139 };
      expect(on(knee, short).verdict).toBe("fits");
      // The way is 66 + 188 and 66 + 230 mm long: the knee of the other begins at 145 mm.
      expect(on({ ...knee, Length: 100 }, tall)).toMatchObject({
        verdict: "too short",
        governing: { place: "Hem" },
      });
      const drafted = { ...knee, "Drafted for": "Short", Length: 254 / 2 };
      expect(on(drafted, tall).checks.find(({ place }) => place === "Hem")?.bodyMm).toBeCloseTo(296 / 2, 9);
      const coat = {
        "Garment class": "Coat",
        Opens: "full length",
        Bust: 220,
        "Ends at": "calf",
        Length: 88 + 190,
      };
      expect(on(coat, short).verdict).toBe("fits");
      expect(on({ ...coat, Length: 88 + 260 }, short).verdict).toBe("too long");
    });

    it("says that a length is not judged where it is not given, or says nothing by itself", () => {
      const wrap = { ...skirt, Opens: "full length" };
      const open = on(wrap, short);
      expect(open).toMatchObject({ verdict: "fits", words: "Fits. Length not judged." });
      expect(open.notes).toContain("Length not judged: give Length, or Drafted for and Ends at.");
      expect(on({ ...trousers, "Inside leg": 60 }, short).unjudged).toEqual([
        "Inside leg not judged: Inside leg 60 mm says nothing without Ends at or Drafted for.",
      ]);
      expect(on({ ...wrap, "Ends at": "knee", Length: 139 }, wisp).unjudged).toEqual([
        "Length not judged: measure Body rise of Other and Inside leg of Other.",
      ]);
    });
  });

  describe("what no rule of its class names", () => {
    const wrap = { ...skirt, Opens: "full length", Length: 139, "Ends at": "knee" };
    const long = { ...wisp, "Body rise": 66, "Inside leg": 188, "High hip": 170 };

    it("is judged where common sense can", () => {
      const highHip = (mm: number) => check({ ...wrap, "High hip": mm }, "High hip girth", long);
      expect(highHip(300)).toMatchObject({ verdict: "fits", counts: true });
      expect(highHip(160)).toMatchObject({ verdict: "too tight" });
      expect(highHip(160).source).toMatch(/^Common sense/);
      const trousers = {
        "Garment class": "Trousers",
        Opens: "full length",
        Waist: 139,
        Hip: 208,
        "Hem opening": 80,
      };
      expect(check({ ...trousers, "Body rise": 60 }, "Body rise", long).verdict).toBe("too short");
      expect(check({ ...trousers, "Body rise": 90 }, "Body rise", long).verdict).toBe("fits");
    });

    it("is named with its reason where it cannot be judged", () => {
      const garment = { ...wrap, "Finished head": 200, "Neck opening": 76 };
      const { verdict: said, unjudged } = explain({ G: garment }, long);
      expect(said).toBe("fits");
      expect(unjudged).toEqual([
        "Head girth 200 mm was not judged: a garment of the class Flared skirt does not reach there.",
        "Neck opening 76 mm was not judged: on a garment of the class Flared skirt it has nothing to pass.",
      ]);
      expect(explain({ G: { ...wrap, "Inside leg": 60 } }, long).unjudged).toEqual([
        "Inside leg 60 mm was not judged: a garment of the class Flared skirt does not reach there.",
      ]);
      const sock = {
        "Garment class": "Hosiery",
        "Hem opening": 64,
        "Foot length": 54,
        Calf: 70,
        "Ends at": "ankle",
      };
      expect(explain({ G: sock }).unjudged).toEqual([
        "Calf girth 70 mm was not judged: it reaches up to the ankle.",
      ]);
      expect(explain({ G: { ...gown, Sleeves: "none", "Upper arm": 60 } }, long).unjudged).toContain(
        "Upper arm girth 60 mm was not judged: it has no sleeves.",
      );
    });
  });

  it("a bodice that opens down its whole back is open all the way", () => {
    const bodice = { "Garment class": "Bodice", Opens: "back", "Neck opening": 70, Bust: 186, Waist: 138 };
    const long = { ...bodice, "Back waist": 88, "Opening length": 88 };
    expect(explain({ G: long }).routes).toEqual([
      { name: "laid round the body", verdict: "fits", isBest: true },
    ]);
    expect(verdict(long)).toBe(verdict({ ...bodice, Opens: "full length", "Back waist": 88 }));
    expect(verdict({ ...long, "Opening length": 70 })).toBe("will not go on");
  });

  it("a garment without sleeves takes no room under the sleeve of another", () => {
    const coat = { "Garment class": "Coat", Opens: "full length", "Worn over": "Dress", "Upper arm": 70 };
    const over = (sleeves: string) =>
      explain({ Dress: { ...gown, "Thickness (mm)": 1, Sleeves: sleeves }, Coat: coat }).checks.find(
        ({ measure }) => measure === "upperArmGirth",
      )?.bodyMm;
    expect(over("none")).toBe(50);
    expect(over("short")).toBeCloseTo(50 + 2 * Math.PI, 9);
  });
});

describe("a jumpsuit", () => {
  const overalls = {
    "Garment class": "Overalls",
    Bust: 200,
    Waist: 160,
    Hip: 220,
    "Neck opening": 130,
    "Finished back waist length": 88,
  };
  const legs = { "Hem opening": 70 };
  const placesOf = (garment: Row, figure: Row = wisp) =>
    explain({ G: garment }, figure).checks.map(({ place }) => place);

  it("is stepped into through its neck, never over the head", () => {
    const { routes } = explain({ G: { ...overalls, ...legs, Opens: "front", "Opening length": 130 } });
    expect(routes.map(({ name }) => name)).toEqual(["stepped into"]);
    expect(verdict({ ...overalls, ...legs, Opens: "front", "Opening length": 130 })).toBe("fits");
    // A neck of 130 mm does not pass a hip of 194; an opening that ends above the waist leaves that at 160.
    expect(verdict({ ...overalls, ...legs })).toBe("will not go on");
    expect(verdict({ ...overalls, ...legs, Opens: "front", "Opening length": 80 })).toBe("will not go on");
    expect(verdict({ ...overalls, ...legs, Opens: "full length" })).toBe("fits");
  });

  it("passes the heel with its legs and the hand with its sleeves, where it has any", () => {
    const open = { ...overalls, Opens: "full length" };
    expect(verdict({ ...open, "Hem opening": 50 })).toBe("will not go on");
    expect(verdict({ ...open, ...legs, "Cuff opening": 30 })).toBe("will not go on");
    expect(verdict({ ...open, ...legs, "Cuff opening": 52 })).toBe("fits");
    expect(verdict({ ...open, ...legs, Sleeves: "none" })).toBe("fits");
  });

  it("must not cut in between the legs, and is judged by its inside leg", () => {
    const trunk = { ...wisp, "Torso girth": 330, "Inside leg": 230 };
    const open = { ...overalls, ...legs, Opens: "full length" };
    expect(verdict({ ...open, "Finished torso girth": 345 }, trunk)).toBe("fits");
    expect(verdict({ ...open, "Finished torso girth": 320 }, trunk)).toBe("too tight");
    expect(verdict({ ...open, "Inside leg": 150, "Ends at": "ankle" }, trunk)).toBe("too short");
    expect(verdict({ ...open, "Inside leg": 222, "Ends at": "ankle" }, trunk)).toBe("fits");
    expect(placesOf({ ...open, "Inside leg": 222, "Ends at": "ankle" }, trunk)).toContain("Inside leg");
  });
});

describe("what is hard and must be inside", () => {
  it.each([
    ["a foot in a shoe", { "Garment class": "Shoe", "Foot length": 51, "Heel height": 0 }, "Foot length"],
    ["a hand in a woven glove", { "Garment class": "Glove", "Hand girth": 39 }, "Hand girth"],
    ["a head in a cap without stretch", { "Garment class": "Headwear", "Head girth": 159 }, "Head girth"],
    [
      "a foot in a woven stocking",
      { "Garment class": "Hosiery", Calf: 75, "Hem opening": 64, "Foot length": 51 },
      "Foot length",
    ],
  ])("%s: a millimetre too small does not go on", (_, garment, place) => {
    const figure = { ...wisp, "Heel height": 0 };
    const found = check(garment, place, figure);
    expect(found.verdict).toBe("will not go on");
    expect(found.differenceMm).toBeCloseTo(-1, 9);
    expect(verdict(garment, figure)).toBe("will not go on");
    expect(found.says).toMatch(/^will not go on: 1 mm too (small|short)$/);
    const altered = { ...garment, [place]: found.needsMm + 1 };
    expect(check(altered, place, figure).verdict).toBe("fits");
  });

  it("goes in as far as the cloth stretches with comfort, and no further", () => {
    const sock = { "Garment class": "Hosiery", Calf: 68, "Hem opening": 60, "Foot length": 47 };
    // Half of 20 % makes 51.7 mm of 47, half of 25 % makes 52.9 mm; the foot has 52 mm.
    expect(check({ ...sock, "Stretch %": "19%" }, "Foot length").verdict).toBe("will not go on");
    expect(check({ ...sock, "Stretch %": "25%" }, "Foot length").verdict).toBe("fits");
  });

  it("lets a stuffed foot give by a twentieth", () => {
    const shoe = { "Garment class": "Shoe", "Foot length": 51, "Heel height": 0 };
    const stuffed = { ...wisp, "Heel height": 0, Body: "stuffed cloth" };
    expect(check(shoe, "Foot length", stuffed).verdict).toBe("fits");
  });

  it("is said alike by EASECHECK, and nobody drafts smaller than the figure", () => {
    expect(easeCheckFunction.compute([51, 52, "Shoe", "Foot length"])).toMatch(
      /^will not go on: 1 mm too short\. Lengthen by 1 mm/,
    );
    const drafted = { "Garment class": "Hosiery", "Drafted for": "Wisp", "Hem opening": 64 };
    expect(check(drafted, "Foot length").hasMm).toBeGreaterThan(52.5);
    expect(verdict(drafted)).toBe("fits");
  });
});

describe("layers", () => {
  const coat = {
    ...{ "Garment class": "Coat", Opens: "full length", "Worn over": "Dress" },
    ...{ Bust: 216, Hip: 240 },
  };
  const dress = { ...gown, "Thickness (mm)": 0.5 };

  it("gives the dress its room under the coat: 2π times its thickness, times its fullness", () => {
    const { checks } = explain({ Dress: dress, Coat: coat });
    const bust = checks.find(({ measure }) => measure === "bustGirth");
    expect(bust?.bodyMm).toBeCloseTo(180 + 2 * Math.PI * 0.5 * (197 / 180), 9);
  });

  it("counts every layer down to the skin once", () => {
    const { checks } = explain({
      Slip: { ...gown, Bust: 180, Waist: 134, Hip: 194, "Thickness (mm)": 0.2 },
      Dress: { ...dress, "Worn over": "Slip", Bust: 180 },
      Coat: { ...coat, "Worn over": "Dress, Slip" },
    });
    const bust = checks.find(({ measure }) => measure === "bustGirth");
    expect(bust?.bodyMm).toBeCloseTo(180 + 2 * Math.PI * 0.7, 9);
  });

  it("can be too tight over a thick dress and fit over a thin one", () => {
    const on = (thickness: number) =>
      explain({ Dress: { ...dress, "Thickness (mm)": thickness }, Coat: coat }).verdict;
    expect(on(0.2)).toBe("fits");
    expect(on(5)).toBe("snug");
    expect(on(6)).toBe("too tight");
  });
});
