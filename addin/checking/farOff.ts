import type { Chart } from "../chart/chart.ts";
import { shown } from "./consistency.ts";
import type { Flag } from "./flag.ts";
import { medianOf } from "./medianOf.ts";
import { cellFlag, logReadings, usualLogs } from "./readings.ts";
import { timesOff } from "./unitSlips.ts";

/**
 * What is so many times off is another unit (25.4) or a slipped point (10), whatever the build: of the figures known to us the
 * one with the largest head, as great around as the figure is high, has 3 times that of a grown person.
 */
export const farTimes = 5;

/**
 * Readings that are many times off what the others of the same figure let expect, by the rough proportions of a person
 * (`usualShareOfHeight`). For charts that are too small to tell proportions of their own, where a head of 68" for one of
 * 6.8" would stand unnoticed. Of a figure with two readings alone nobody can say which of them is wrong: both are given.
 */
export function findFarOff(chart: Chart): readonly Flag[] {
  const usual = usualLogs(chart);
  return logReadings(chart).flatMap((row, figure) => {
    const sizes = row.map((ln, column) => ln - usual[column]!);
    return sizes.flatMap((size, column): readonly Flag[] => {
      const factor = Math.exp(medianOf(sizes.filter((_, other) => other !== column)) - size);
      const why = `${shown(chart.measures[column]!, figure)} is ${timesOff(factor)} for this figure. Measure again.`;
      return Math.max(factor, 1 / factor) > farTimes
        ? [cellFlag(chart, { figure, column }, { kind: "out of proportion", why })]
        : [];
    });
  });
}
