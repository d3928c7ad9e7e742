import { describe, expect, it } from "vitest";
import { formatFraction } from "../../addin/measures/formatFraction.ts";
import { parseReading } from "../../addin/measures/parseReading.ts";

/** ASTM D5585-11e1, misses 00 … 20, spot values of its catalogue page, inches. */
const bust = ["31⅛", "31¾", "33", "34⅛", "35¼", "36¼", "37¼", "38¾", "40⅜", "42⅛", "44", "46"];
const bustSteps = ["5/8", "1 1/4", "1 1/8", "1 1/8", "1", "1", "1 1/2", "1 5/8", "1 3/4", "1 7/8", "2"];
const neckBase = ["13¼", "13½", "13¾", "14", "14¼", "14⅝", "14⅞", "15⅛", "15½", "15¾", "16", "16⅜"];

const inches = (text: string): number => {
  const reading = parseReading(text, { unit: "in" });
  if (reading.kind !== "length") throw new Error(`${text} was not read`);
  return reading.mm / 25.4;
};

describe("published readings in inches and fractions", () => {
  it("are read so that their steps are the published ones", () => {
    const steps = bust.slice(1).map((reading, i) => formatFraction(inches(reading) - inches(bust[i] ?? "")));
    expect(steps).toEqual(bustSteps.map((step) => `${step}"`));
  });

  it("are written back as they were read", () => {
    const plain = (text: string): string =>
      text.replace(/[⅛¼⅜½⅝¾⅞]/u, (c) => ` ${String("⅛¼⅜½⅝¾⅞".indexOf(c) + 1)}/8`);
    for (const text of [...bust, ...neckBase]) {
      expect(parseReading(formatFraction(inches(text), 8), { unit: "mm" })).toMatchObject({
        mm: inches(text) * 25.4,
        unit: parseReading(plain(text), { unit: "in" }).kind === "length" ? "in" : "",
      });
    }
    expect(formatFraction(inches("16⅜"))).toBe('16 3/8"');
  });
});
