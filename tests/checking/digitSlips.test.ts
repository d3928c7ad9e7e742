import { expect, it } from "vitest";
import { beforeDigitSlip, type DigitSlip } from "../../addin/checking/digitSlips.ts";

const of = (slip: DigitSlip, length: number, inches = false) =>
  beforeDigitSlip(length, inches)
    .filter((one) => one.slip === slip)
    .map((one) => one.length);

it("swaps neighbouring digits, over the decimal point too", () => {
  expect(of("digits swapped", 214)).toEqual([124, 241]);
  expect(of("digits swapped", 78.5)).toEqual([87.5, 75.8]);
  expect(of("digits swapped", 33)).toEqual([]);
});

it("takes one of two equal digits away", () => {
  expect(of("digit doubled", 1118)).toEqual([118]);
  expect(of("digit doubled", 74)).toEqual([]);
});

it("puts a digit in anywhere before the decimal point, but no leading zero", () => {
  const lengths = of("digit missing", 52);
  expect(lengths).toContain(252);
  expect(lengths).toContain(502);
  expect(lengths).toContain(529);
  expect(lengths).not.toContain(52);
  expect(lengths.every((length) => length >= 100 && length < 1000)).toBe(true);
});

it("leaves a tape fraction alone", () => {
  expect(of("digits swapped", 51.375, true)).toEqual([15.375]);
  expect(of("digits swapped", 5.375, true)).toEqual([]);
});
