import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatFraction } from "../../addin/measures/formatFraction.ts";
import { parseReading } from "../../addin/measures/parseReading.ts";

describe("formatFraction", () => {
  it.each([
    [5.375, 16, '5 3/8"'],
    [0.375, 16, '3/8"'],
    [5, 16, '5"'],
    [0, 16, '0"'],
    [0.01, 16, '0"'],
    [-0.01, 16, '0"'],
    [5.99, 16, '6"'],
    [11.984375, 64, '11 63/64"'],
    [11.984375, 32, '12"'],
    [5.5, 1, '6"'],
    [-0.625, 8, '-5/8"'],
    [-1.3125, 16, '-1 5/16"'],
    [-0.99, 8, '-1"'],
  ])("shows %f to the nearest 1/%i as %s", (inches, denominator, text) => {
    expect(formatFraction(inches, denominator)).toBe(text);
  });

  it("is to the nearest sixteenth when no denominator is given", () => {
    expect(formatFraction(5.4)).toBe('5 3/8"');
  });

  it.each([0, 3, 10, 12, 65, 128, 2.5, -8, NaN, Infinity])("refuses the denominator %f", (denominator) => {
    expect(() => formatFraction(1, denominator)).toThrow(
      `“${String(denominator)}” is not a division of a tape`,
    );
  });

  it.each([NaN, Infinity])("refuses the length %f", (inches) => {
    expect(() => formatFraction(inches)).toThrow("is not a length");
  });

  it("is read back within half a step, reduced, for every division of a tape", () => {
    const inches = fc.double({ min: 0, max: 390, noNaN: true });
    fc.assert(
      fc.property(
        inches,
        fc.constantFrom(1, 2, 4, 8, 16, 32, 64),
        fc.boolean(),
        (length, denominator, isNegative) => {
          const text = formatFraction(isNegative ? -length : length, denominator);
          expect(text.startsWith("-")).toBe(isNegative && text !== '0"');
          const reading = parseReading(text.replace("-", ""), { unit: "mm" });
          if (reading.kind !== "length") throw new Error(`${text} was not read`);
          expect(Math.abs(reading.mm / 25.4 - length)).toBeLessThanOrEqual(0.5 / denominator + 1e-9);
          const [, over, under] = /(\d+)\/(\d+)/.exec(text) ?? [];
          if (over !== undefined) expect(isReduced(Number(over), Number(under))).toBe(true);
        },
      ),
      { numRuns: 1000 },
    );
  });
});

function isReduced(over: number, under: number): boolean {
  const divisors = Array.from({ length: over }, (_, i) => i + 1);
  return over < under && divisors.filter((d) => d > 1).every((d) => over % d > 0 || under % d > 0);
}
