import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseReading, withOrigin } from "../../addin/measures/parseReading.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { fromMm } from "../../addin/measures/units.ts";

const mmOf = (text: string, unit: LengthUnit = "in"): number | string => {
  const reading = parseReading(text, { unit });
  return reading.kind === "length" ? Number(reading.mm.toFixed(9)) : reading.kind;
};
const reasonOf = (text: string): string => {
  const reading = parseReading(text, { unit: "in" });
  return reading.kind === "refused" ? reading.reason : `not refused: ${reading.kind}`;
};

describe("parseReading", () => {
  it.each([
    "5 3/8",
    "5-3/8",
    '5-3/8"',
    "5‑3/8",
    "5–3/8",
    "5+3/8",
    "5 + 3/8",
    "5 & 3/8",
    "5 and 3/8",
    "5⅜",
    "5 ⅜",
    "5-⅜",
    "5\u00a0⅜″",
    "5 3⁄8 in",
    "5 3∕8 in",
    "5³⁄₈",
    "5³/₈ in",
    "5\u20093/8",
    "5\u202f3/8\u00a0in.",
    "5  3 / 8  inches",
    "5 3/8 inch",
    "5 3/8 ins",
    "5 3/8 IN",
    "5 3/8”",
    "5 3/8''",
    "5 3/8′′",
    '5" 3/8',
    '5" 3/8"',
    "5 in 3/8",
    "5.375",
    "5.375″",
    "5.375 in.",
    "５　３／８",
    "５．３７５",
    "'5 3/8",
    "\ufeff5 3/8\u200b",
    "5 6/16",
    "136.525 mm",
    "13.6525 cm",
    "13,6525 cm",
    "136.525㎜",
    "13 cm 6.525 mm",
    "0.136525 m",
  ])("reads %j as five and three eighths of an inch", (text) => {
    expect(mmOf(text)).toBe(136.525);
  });

  it.each([
    ["3/8", 9.525],
    ["⅜", 9.525],
    ["⅟16", 1.5875],
    ["½ in", 12.7],
    [".5", 12.7],
    ["5.", 127],
    ["0", 0],
    ["13,65 cm", 136.5],
    ["136 mm", 136],
    ["136 millimetres", 136],
    ["13.6 cms.", 136],
    ["1 m 65 cm", 1650],
    ["1.65m", 1650],
    [`1' 4 1/2"`, 419.1],
    [`1’4½”`, 419.1],
    ["1 ft 4 in", 406.4],
    ["1ft. 4in.", 406.4],
    ["1' 4", 406.4],
    ["1 foot", 304.8],
    ["1½ ft", 457.2],
    [`2' 1" 1/4`, 641.35],
  ])("reads %j as %f mm", (text, mm) => {
    expect(mmOf(text)).toBe(mm);
  });

  it("takes the assumed unit for a bare number, and the written one before it", () => {
    expect(mmOf("80", "mm")).toBe(80);
    expect(mmOf("8", "cm")).toBe(80);
    expect(parseReading("13,65 cm", { unit: "in" })).toEqual({
      kind: "length",
      mm: 136.5,
      unit: "cm",
      unitFrom: "written",
    });
    expect(parseReading("1 ft 4", { unit: "mm" })).toMatchObject({ unit: "in" });
  });

  it.each(
    [
      "",
      "   ",
      "\u00a0",
      "-",
      "–",
      "—",
      "--",
      "n/a",
      "N/A",
      "n.a.",
      "#N/A",
      "?",
      "??",
      ".",
      "...",
      "…",
      "x",
      "X",
    ].concat(["none", "None", "unknown", "not taken", "tbd", "/"]),
  )("takes %j as not taken", (text) => {
    expect(parseReading(text, { unit: "mm" })).toEqual({ kind: "missing" });
  });

  it.each([
    ["-5", "negative"],
    ["−5 3/8", "negative"],
    ["(5)", "negative"],
    ["3/0", "0 below the fraction stroke"],
    ["5 3/0", "0 below the fraction stroke"],
    ["5 3/888", "no tape is divided so"],
    ["53/8", "fraction of 1 or more"],
    ["5 9/8", "fraction of 1 or more"],
    ["5-6", "range"],
    ["5 – 6 in", "range"],
    ["3/8-5/8", "range"],
    ["5 to 6", "range"],
    ["5 - 3/8", "range"],
    ["5~6", "range"],
    ["5 6", "more than one number"],
    ["1 234", "more than one number"],
    ["5.5 3/8", "more than one number"],
    ["⅜⅜", "more than one number"],
    ["5 in 6 in", "more than one number"],
    ["5 cm 3", "more than one number"],
    [`1' 14"`, "1 ft or more"],
    ["16 cm 15 mm", "1 cm or more"],
    ["1e3", "power of ten"],
    ["1.5E+2", "power of ten"],
    ["999999", "10 m"],
    ["11 m", "10 m"],
    ["roughly 5", "not part of a length"],
    ["5 ~", "range"],
    ["5²", "not part of a length"],
    ["=5", "not part of a length"],
    ["5%", "not part of a length"],
    ["5 kg", "“kg”"],
    ["5 x 3", "“x”"],
    ["small", "not a length"],
    ["in", "not a length"],
    ["1..5", "points and commas"],
    ["1,2,3", "points and commas"],
  ])("refuses %j, quotes it and says why (%s)", (text, why) => {
    expect(reasonOf(text)).toContain(`“${text}”`);
    expect(reasonOf(text)).toContain(why);
  });

  it("cuts a long text short in its message", () => {
    const reason = reasonOf(`5 and ${"something ".repeat(100)}`);
    expect(reason.length).toBeLessThan(250);
    expect(reason).toContain("…”");
    expect(reason).toContain("too long for a reading");
  });

  it.each([
    ["8-May", ["5/8"]],
    ["5/8/2026", ["5/8"]],
    ["2026-05-08", ["5/8"]],
    ["8 May 2026", ["5/8"]],
    ["Jan-32", ["1/32"]],
    ["3-May", []],
  ])("refuses the date %j and offers the fractions of a tape that it may have been", (text, fractions) => {
    const reading = parseReading(text, { unit: "in" });
    expect(reading).toMatchObject({ kind: "refused", fractions });
    expect(reasonOf(text)).toContain(`“${text}”`);
  });
});

describe("lengths that were not measured", () => {
  it.each([
    ...["~152", "~ 152 mm", "≈ 15,2 cm", "about 152", "ca. 152", "est. 152", "152 (est.)", "～１５２"].map(
      (text) => [text, "estimated"] as const,
    ),
    ...["152 (list)", "152 mm (from the list)", "15.2 cm (listed)"].map(
      (text) => [text, "from a list"] as const,
    ),
    ["152", undefined] as const,
  ])("reads %j as 152 mm, %s", (text, origin) => {
    const reading = parseReading(text, { unit: "mm" });
    expect(reading).toMatchObject({ kind: "length", mm: 152 });
    expect(reading.kind === "length" && reading.origin).toBe(origin);
  });

  it("writes them so that they are read as they were", () => {
    for (const origin of ["estimated", "from a list", undefined] as const) {
      const reading = parseReading(String(withOrigin(152.5, origin)), { unit: "mm" });
      expect(reading).toMatchObject({ mm: 152.5, ...(origin ? { origin } : {}) });
    }
  });

  it("refuses two estimates, and words alone", () => {
    for (const text of ["~5~6", "~", "about", "~ long"])
      expect(parseReading(text, { unit: "mm" }).kind).not.toBe("length");
  });
});

describe("commas and points", () => {
  const read = (text: string, decimalMark?: "." | ","): number | string => {
    const reading = parseReading(text, decimalMark ? { unit: "mm", decimalMark } : { unit: "mm" });
    return reading.kind === "length"
      ? reading.mm
      : reading.kind === "refused"
        ? reading.reason
        : reading.kind;
  };

  it("without a stated mark, a lone mark is the decimal mark, and the last of two kinds is", () => {
    expect(read("13,65")).toBe(13.65);
    expect(read("13.655")).toBe(13.655);
    expect(read("0,375")).toBe(0.375);
    expect(read("1,234.5")).toBe(1234.5);
    expect(read("1.234,5")).toBe(1234.5);
  });

  it("does not decide a comma before exactly three digits", () => {
    expect(read("1,650")).toBe("“1,650” can be 1650 or 1.65. Write one of these.");
    expect(read("1,650", ".")).toBe(1650);
    expect(read("1,650", ",")).toBe(1.65);
  });

  it("with a stated mark, the other groups thousands and must stand before three digits", () => {
    expect(read("1.650", ",")).toBe(1650);
    expect(read("13.65", ",")).toContain("where “,” is the decimal mark");
    expect(read("13,65", ".")).toContain("where “.” is the decimal mark");
    expect(read("1.234,5", ",")).toBe(1234.5);
  });
});

describe("parseReading holds for any text", () => {
  const characters = [..."0123456789 /.,-–'\"″½⅜⁄eE+mcinftx?\u00a0５"];
  const readingLike = fc.array(fc.constantFrom(...characters), { maxLength: 12 }).map((all) => all.join(""));
  const unit = fc.constantFrom<LengthUnit>("mm", "cm", "in");

  it("never throws, and every length is finite, from 0 to 10 m", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: "grapheme" }), readingLike), unit, (text, assumed) => {
        const reading = parseReading(text, { unit: assumed });
        if (reading.kind === "length") {
          expect(reading.mm).toBeGreaterThanOrEqual(0);
          expect(reading.mm).toBeLessThanOrEqual(10_000);
        } else if (reading.kind === "refused") expect(reading.reason).toMatch(/“.*” .*\./su);
      }),
      { numRuns: 3000 },
    );
  });

  it("never reads a number that was not written: digits alone give themselves", () => {
    fc.assert(
      fc.property(fc.nat({ max: 390 }), unit, (n, assumed) => {
        expect(parseReading(String(n), { unit: assumed })).toMatchObject({ kind: "length", unit: assumed });
        expect(fromMm(Number(mmOf(String(n), assumed)), assumed)).toBeCloseTo(n, 9);
      }),
    );
  });

  it("gives one length for every writing of a whole number and fraction", () => {
    const mixed = fc.record({
      whole: fc.integer({ min: 1, max: 300 }),
      under: fc.constantFrom(2, 4, 8, 16, 32, 64),
      share: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
    });
    const joints = [" ", "-", "–", " + ", " and ", "\u00a0", "\u2009"];
    const strokes = ["/", "⁄", " / ", "∕", "／"];
    const marks = ["", '"', "″", " in", " in.", "”", " inches", "''"];
    fc.assert(
      fc.property(
        mixed,
        fc.constantFrom(...joints),
        fc.constantFrom(...strokes),
        fc.constantFrom(...marks),
        ({ whole, under, share }, joint, stroke, mark) => {
          const over = 1 + Math.floor(share * (under - 1));
          const text = `${String(whole)}${joint}${String(over)}${stroke}${String(under)}${mark}`;
          expect(mmOf(text)).toBeCloseTo((whole + over / under) * 25.4, 6);
        },
      ),
    );
  });
});
