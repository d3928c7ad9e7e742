import { expect, it } from "vitest";
import { technicalError, technicalErrorOfReadings } from "../../addin/checking/technicalError.ts";

// Formula of Ulijaszek & Kerr, British Journal of Nutrition 82 (1999), 165–177; the readings are invented.
// Expected by hand: Σd² = 3, N = 10, √(3 / 20) = 0.387298; mean of all 20 readings 82.85; 0.467469 %.
const first = [80, 120.5, 62, 95.5, 41, 110, 75.5, 88, 54.5, 101];
const second = [80.5, 121, 61.5, 96, 41, 109, 76, 88.5, 55, 100.5];

it("gives the technical error of measurement for two readings", () => {
  const { tem, mean, relativePercent, pairs } = technicalError(first, second);
  expect(tem).toBeCloseTo(0.387298, 6);
  expect(mean).toBeCloseTo(82.85, 10);
  expect(relativePercent).toBeCloseTo(0.467469, 6);
  expect(pairs).toBe(10);
});

it("gives the published form for three readings", () => {
  const readings = first.map((reading, i) => [reading, second[i]!, reading + (i % 3) / 2]);
  const sums = readings.map((list) => {
    const sum = list.reduce((a, b) => a + b, 0);
    return list.reduce((a, b) => a + b * b, 0) - (sum * sum) / 3;
  });
  const published = Math.sqrt(sums.reduce((a, b) => a + b, 0) / (readings.length * (3 - 1)));
  expect(technicalErrorOfReadings(readings).tem).toBeCloseTo(published, 10);
});
