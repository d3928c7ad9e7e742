import { describe, expect, it } from "vitest";
import { defaultEaseRules } from "../../addin/chart/defaultEaseRules.ts";
import { easeMm } from "../../addin/chart/easeRule.ts";
import { rank, verdictOf } from "../../addin/fit/verdict.ts";
import { judgeGirth } from "../../addin/fit/judge.ts";
import { explain, verdict, wisp } from "../fit/fitOf.ts";

const mmPerInch = 25.4;

/** Bust / waist / hip in inches, misses 6 to 20: pattern-industry body measurement chart (sewingscholar.blogspot.com, 2011). */
const misses = [
  ["6", 30.5, 23, 32.5],
  ["8", 31.5, 24, 33.5],
  ["10", 32.5, 25, 34.5],
  ["12", 34, 26.5, 36],
  ["14", 36, 28, 38],
  ["16", 38, 30, 40],
  ["18", 40, 32, 42],
  ["20", 42, 34, 44],
] as const;

const inches = (bust: number, waist: number, hip: number) => ({
  "Bust (in)": bust,
  "Waist (in)": waist,
  "Hip (in)": hip,
});

function leastInches(garmentClass: string, measure: string, bodyInches: number): number {
  const rule = defaultEaseRules.find(
    (each) => each.garmentClass === garmentClass && each.measure === measure,
  );
  return easeMm(rule?.least, bodyInches * mmPerInch, Number.NaN) / mmPerInch;
}

describe("wearing ease of a costume-shop handbook (cwu.edu, ch. 16), at the size on which ease is published", () => {
  it.each([
    ["Close-fitting bodice", "bustGirth", 36, 1.5],
    ["Dress", "bustGirth", 36, 1.5],
    ["Dress", "waistGirth", 28, 0.75],
    ["Fitted skirt", "waistGirth", 28, 0.5],
    ["Fitted skirt", "hipGirth", 38, 2],
    ["Trousers", "thighGirth", 22, 1],
  ])("%s, %s of %s in: at least %s in", (garmentClass, measure, body, least) => {
    expect(leastInches(garmentClass, measure, body)).toBeCloseTo(least, 3);
  });
});

describe("ease classes of dresses at bust 36 in (pattern-industry chart, from memory)", () => {
  // Close 0–2⅞, fitted 3–4, semi-fitted 4⅛–5, loose 5⅛–8, very loose over 8.
  const classes = [
    ["Close-fitting dress", [0.25, 1, 2, 2.875]],
    ["Fitted dress", [3, 3.5, 4]],
    ["Semi-fitted dress", [4.125, 4.5, 5]],
    ["Loose dress", [5.125, 6.25, 7.99]],
    ["Very loose dress", [8.125, 12]],
  ] as const;
  const cases = classes.flatMap(([name, eases]) => eases.map((ease) => [name, ease] as const));

  it.each(cases)("%s: %s in", (name, ease) => {
    const within = classes.filter(([each]) => {
      const rule = defaultEaseRules.find(
        ({ garmentClass, measure }) => garmentClass === each && measure === "bustGirth",
      );
      const body = 36 * mmPerInch;
      const found = judgeGirth(
        ...([ease * mmPerInch, ease * mmPerInch, ease * mmPerInch] as const),
        easeMm(rule?.least, body, -Infinity),
        easeMm(rule?.most, body, Infinity),
        0,
      );
      return found === rank.fits;
    });
    expect(within.map(([each]) => each)).toEqual([name]);
  });
});

// Finished measurements of a “loose” jacket, from a pattern-envelope text; the bodies are those of the chart above.
describe("a loose jacket of a pattern envelope, on the sizes for which it is sold", () => {
  // Finished bust 37¾ 38¾ 40¼ 42¼ 44¼ and hip 41 42 43½ 45½ 47½ in for sizes 8 to 16: ease 6¼ and 7½ at every size.
  const finished = [
    ["8", 37.75, 41],
    ["10", 38.75, 42],
    ["12", 40.25, 43.5],
    ["14", 42.25, 45.5],
    ["16", 44.25, 47.5],
  ] as const;

  it.each(finished)("size %s fits its own size, and is too tight from three sizes up", (size, bust, hip) => {
    const jacket = {
      ...{ "Garment class": "Jacket", Opens: "full length" },
      ...{ "Bust (in)": bust, "Hip (in)": hip },
    };
    const at = misses.findIndex(([each]) => each === size);
    const own = misses[at];
    if (!own) throw new Error("The size is not in the chart.");
    const body = inches(own[1], own[2], own[3]);
    expect(verdict(jacket, body)).toBe("fits");
    const bustCheck = explain({ G: jacket }, body).checks.find(({ measure }) => measure === "bustGirth");
    expect((bustCheck?.hasMm ?? 0) - (bustCheck?.bodyMm ?? 0)).toBeCloseTo(6.25 * mmPerInch, 6);
    const larger = misses[at + 4];
    if (larger) {
      expect(verdict(jacket, inches(larger[1], larger[2], larger[3]))).toBe("too tight");
    }
  });

  it("keeps its class over all misses sizes 6 to 20: 6¼ in of ease is loose on each", () => {
    const said = misses.map(([, bust, waist, hip]) =>
      verdict(
        {
          ...{ "Garment class": "Jacket", Opens: "full length" },
          ...{ "Bust (in)": bust + 6.25, "Hip (in)": hip + 7.5 },
        },
        inches(bust, waist, hip),
      ),
    );
    expect(said).toEqual(misses.map(() => "fits"));
  });
});

describe("a dress with the ease of an encyclopedia, “Ease (sewing)”: 2½ / 1 / 3 in", () => {
  it.each(misses)(
    "fits size %s, is too tight two sizes up and too loose four sizes down",
    (size, ...body) => {
      const [bust, waist, hip] = body;
      const dress = {
        ...{ "Garment class": "Close-fitting dress", Opens: "full length" },
        ...inches(bust + 2.5, waist + 1, hip + 3),
      };
      expect(verdict(dress, inches(bust, waist, hip))).toMatch(/^(fits|loose)$/);
      const at = misses.findIndex(([each]) => each === size);
      const up = misses[at + 2];
      if (up) expect(verdict(dress, inches(up[1], up[2], up[3]))).toBe("too tight");
      const down = misses[at - 4];
      if (down) expect(verdict(dress, inches(down[1], down[2], down[3]))).toBe("too loose");
    },
  );
});

// The percent is a rule of sewing handbooks, common practice; the 20 % follow from it: 1 − 1 / 1.25.
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

describe("openings on an average woman: means of 1,986 women, ANSUR II (US Army, 2012)", () => {
  const woman = {
    ...{ Head: 561.12, Neck: 371.16, Hand: 186.55, Wrist: 154.79, Heel: 310.32, Ankle: 215.74 },
    ...wispAtFullSize(),
  };

  const closed = {
    ...{ "Garment class": "Loose top", Opens: "side", "Opening length": 400 },
    ...{ Bust: 1100, Waist: 1100 },
  };

  it("a neck opening as large as the neck does not go over the head; one a little larger than the head does", () => {
    const { verdict: said, governing } = explain({ G: { ...closed, "Neck opening": 371.16 } }, woman);
    expect(said).toBe("will not go on");
    expect(governing?.place).toBe("Neck over the head");
    expect(governing?.differenceMm).toBeCloseTo(371.16 - 561.12, 6);
    expect(561.12 / 371.16).toBeCloseTo(1.51, 2);
    expect(verdict({ ...closed, "Neck opening": 565 }, woman)).toBe("fits");
  });

  it("a cuff as large as the wrist does not pass the hand, unless the hand comes off", () => {
    const sleeve = { "Garment class": "Sleeve", "Upper arm": 340, "Cuff opening": 154.79 + 4 };
    const arm = { ...woman, "Upper arm": 300 };
    expect(explain({ G: sleeve }, arm).governing?.place).toBe("Cuff over the hand");
    expect(verdict(sleeve, arm)).toBe("will not go on");
    expect(verdict(sleeve, { ...arm, "Hands removable": "yes" })).toBe("fits");
  });

  it("a leg hem as large as the ankle does not pass the heel", () => {
    const hose = { "Garment class": "Hosiery", Calf: 340, "Hem opening": 215.74 };
    expect(explain({ G: hose }, woman).governing?.place).toBe("Hem over the heel and instep");
    // 310.32 / 215.74 = 1.44: half of a stretch of 90 % is just enough.
    expect(verdict({ ...hose, Calf: 300, "Stretch %": "80%" }, woman)).toBe("will not go on");
    expect(verdict({ ...hose, Calf: 300, "Stretch %": "90%" }, woman)).toBe("fits");
  });
});

/** The rest of the body, invented: what is tested does not depend on it. */
function wispAtFullSize() {
  return { Bust: wisp.Bust * 5, Waist: wisp.Waist * 5, Hip: wisp.Hip * 5, Calf: wisp.Calf * 5 };
}
