import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseReading } from "../../addin/measures/parseReading.ts";
import { publishedLength, wholeSteps } from "../../addin/publish/publishedLength.ts";
import { languages, publishedUnits, roundings } from "../../addin/publish/publication.ts";

/** Parts of an inch nearest to a length of so many hundred-thousandths of a millimetre, halves up, in whole numbers only. */
function exactParts(mmHundredThousandths: bigint, parts: bigint): bigint {
  // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
  const inch = 2_540_000n;
  return (2n * mmHundredThousandths * parts + inch) / (2n * inch);
}

describe("lengths of a published chart", () => {
  it("are rounded to eighths and sixteenths as exact fractions are, for every tenth of a millimetre to a metre", () => {
    for (let tenths = 0; tenths <= 10_000; tenths++) {
      for (const parts of [8, 16]) {
        const exact = exactParts(BigInt(tenths) * 10_000n, BigInt(parts));
        expect(wholeSteps(tenths / 10, 25.4 / parts), `${String(tenths / 10)} mm`).toBe(Number(exact));
      }
    }
  });

  it("go up at every half, for every 32nd and 128th of an inch to 40 inches", () => {
    for (let n = 0; n <= 40 * 128; n++) {
      for (const parts of [8, 16]) {
        const exact = (2 * n * parts + 128) / (2 * 128);
        expect(wholeSteps((n / 128) * 25.4, 25.4 / parts), `${String(n)}/128 in`).toBe(Math.floor(exact));
      }
    }
  });

  it("are written as a tape says them", () => {
    const shown = (mm: number, unit: (typeof publishedUnits)[number]): string =>
      publishedLength(mm, unit, "as measured", ".").replaceAll("\u00a0", " ");
    expect(shown(136.525, "inches in eighths")).toBe("5 ⅜");
    expect(shown(5.1875 * 25.4, "inches in sixteenths")).toBe("5 ³⁄₁₆");
    expect(shown(25.4 * 0.9999, "inches in eighths")).toBe("1");
    expect(shown(25.4 / 16, "inches in sixteenths")).toBe("¹⁄₁₆");
    expect(shown(136.5, "mm")).toBe("136.5");
    expect(shown(136.5, "cm")).toBe("13.65");
    expect(publishedLength(136.5, "cm", "as measured", ",")).toBe("13,65");
    expect(publishedLength(137.6, "mm", "to 5 mm", ".")).toBe("140");
    expect(publishedLength(136.5, "mm", "to 1 mm", ".")).toBe("137");
  });

  it("are read by our own reader as what they say, within half a step", () => {
    const steps = { "as measured": 0.1, "to 1 mm": 1, "to 5 mm": 5 } as const;
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 2000, noNaN: true }),
        fc.constantFrom(...publishedUnits),
        fc.constantFrom(...roundings),
        fc.constantFrom(...languages),
        (mm, unit, rounding, language) => {
          const mark = language === "German" ? "," : ".";
          const text = publishedLength(mm, unit, rounding, mark);
          const inWords = unit === "mm" || unit === "cm" ? unit : "in";
          const read = parseReading(text, { unit: inWords, decimalMark: mark });
          const step =
            unit === "inches in eighths"
              ? 25.4 / 8
              : unit === "inches in sixteenths"
                ? 25.4 / 16
                : steps[rounding];
          expect(read.kind).toBe("length");
          if (read.kind === "length") expect(Math.abs(read.mm - mm)).toBeLessThanOrEqual(step / 2 + 1e-6);
        },
      ),
    );
  });
});
