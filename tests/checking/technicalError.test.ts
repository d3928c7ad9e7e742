import { expect, it } from "vitest";
import { technicalError, technicalErrorOfReadings } from "../../addin/checking/technicalError.ts";
import { InputError } from "../../addin/measures/inputError.ts";

it("leaves out what was read only once, and says how much was read twice", () => {
  const { tem, pairs, mean } = technicalError([80, Number.NaN, 62, 40], [81, 50, 61, Number.NaN]);
  expect(pairs).toBe(2);
  expect(tem).toBeCloseTo(Math.sqrt(2 / 4), 12);
  expect(mean).toBe(71);
});

it("is 0 for readings that repeat exactly", () => {
  expect(
    technicalErrorOfReadings([
      [50, 50, 50],
      [70, 70],
    ]).tem,
  ).toBe(0);
});

it("refuses lists that do not pair up", () => {
  expect(() => technicalError([80], [80, 81])).toThrow(InputError);
  expect(() => technicalError([80, 81], [80])).toThrow("2 first readings and 1 second readings");
  expect(() => technicalError([80, Number.NaN], [Number.NaN, 81])).toThrow("No measure has two readings");
});
