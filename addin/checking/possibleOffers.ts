import type { Chart } from "../chart/chart.ts";
import { mostTimesByAnything } from "./cellSlips.ts";
import { farTimes } from "./farOff.ts";
import type { Flag, ReadingChoice } from "./flag.ts";
import { medianOf } from "./medianOf.ts";
import { logReadings, usualLogs } from "./readings.ts";
import { timesOff } from "./unitSlips.ts";

/**
 * Flags whose readings to choose from can be right: of the fractions that a date may have been, those are left out that the check
 * would flag at once for this figure, and why is said. A figure without other readings keeps them all.
 */
export function withPossibleOffers(chart: Chart, flags: readonly Flag[]): readonly Flag[] {
  if (!flags.some(hasReadings)) return flags;
  const logs = logReadings(chart);
  const usual = usualLogs(chart);
  /** How large a figure is beside a usual one, in ln, by all it has but one measure. */
  const size = (figure: number, but: number): number =>
    medianOf(logs[figure]!.map((ln, column) => (column === but ? Number.NaN : ln - usual[column]!)));
  return flags.map((flag) => {
    if (!hasReadings(flag)) return flag;
    const figure = chart.rows.indexOf(flag.row);
    const column = chart.measures.findIndex(({ position }) => position === flag.column);
    if (figure < 0 || column < 0) return flag;
    const here = medianOf(logs.map((row, other) => row[column]! - size(other, column)));
    const known = !Number.isNaN(here);
    const expected = size(figure, column) + (known ? here : usual[column]!);
    const most = Math.log(known ? mostTimesByAnything : farTimes);
    const off = ({ correction }: ReadingChoice): number => expected - Math.log(correction.mm);
    const readings = flag.choices.filter(isReading);
    const impossible = readings.filter((choice) => Math.abs(off(choice)) > most);
    if (impossible.length === 0) return flag;
    const why = impossible
      .map((choice) => `${choice.label} would be ${timesOff(Number(Math.exp(off(choice)).toPrecision(2)))}`)
      .join(", ");
    return {
      ...flag,
      choices: readings.filter((choice) => !impossible.includes(choice)),
      why: `${flag.why} ${why} for this figure, so it is not offered.`,
    };
  });
}

function hasReadings(flag: Flag): flag is Flag & Required<Pick<Flag, "choices">> {
  return flag.kind === "date instead of a reading" && flag.choices !== undefined;
}

function isReading(choice: NonNullable<Flag["choices"]>[number]): choice is ReadingChoice {
  return "correction" in choice;
}
