import { expect, test } from "vitest";
import { InputError } from "../../../addin/measures/inputError.ts";
import { failureText } from "../../../taskpane/shell/notice.ts";
import { count, isAmount, shownLength } from "../../../taskpane/ui/words.ts";

test.each([
  [78.5, "mm", "78.5 mm"],
  [136.5, "cm", "13.65 cm"],
  [136.525, "in", '5 3/8"'],
  [136, "in", "5.354 in"],
] as const)("%s mm in %s is shown as %s", (mm, unit, text) => {
  expect(shownLength(mm, unit)).toBe(text);
});

test("counts agree with their word", () => {
  expect(count(1, "figure")).toBe("1 figure");
  expect(count(1200, "figure")).toBe("1,200 figures");
  expect(count(0, "figure is", "figures are")).toBe("0 figures are");
});

test("numbers are told from words, with their units and as ranges", () => {
  for (const text of [
    "12",
    "−4.8 mm",
    "13.65 cm",
    '5 3/8"',
    '3/8"',
    "155 – 160.5",
    "113.7 %",
    "?",
    "no limit",
  ])
    expect(isAmount(text), text).toBe(true);
  for (const text of ["alone", "Group 1", "3 of 4 kinds", "12 mm too small", "Ardmoor"])
    expect(isAmount(text), text).toBe(false);
});

test("what the user can mend is said as it is; anything else is said to be our fault", () => {
  expect(failureText(new InputError("The chart is empty."))).toBe("The chart is empty.");
  expect(failureText(new TypeError("x is undefined"))).toContain("should not have");
});
