import type { Chart, MeasureColumn } from "../chart/chart.ts";
import type { LengthUnit } from "../measures/units.ts";
import { amount } from "./amount.ts";
import type { Flag } from "./flag.ts";
import { normal95, type ChartModel } from "./chartModel.ts";
import { cellFlag, columnFlag, type Place } from "./readings.ts";

/** On a body the first is no larger than the second. */
const notLarger: readonly (readonly [small: string, large: string])[] = [
  ["waistGirth", "hipGirth"],
  ["underBustGirth", "bustGirth"],
  ["neckGirth", "headGirth"],
  ["wristGirth", "handGirth"],
  ["wristGirth", "upperArmGirth"],
  ["ankleGirth", "heelGirth"],
  ["ankleGirth", "kneeGirth"],
  ["kneeGirth", "thighGirth"],
];

/** Two readings may each be half a division off: 0.5 mm, or 1/32 in. */
const slackMm: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 1, in: 25.4 / 16 };
/** When a rule is broken by so many figures, the headings or the bodies are the reason, not the readings. */
const fewestOfMany = 3;
const shareOfMany = 1 / 3;

/**
 * Readings that cannot both be right on one body: hip under waist, bust under under-bust, head under neck, hand or
 * upper arm under wrist, heel or knee under ankle, thigh under knee, and a height that is less than inside leg and
 * back waist length together.
 *
 * @param flagged readings that were found out already, and take no part
 * @param model to say which of two readings is the odd one, where the chart is large enough
 */
export function findInconsistent(
  chart: Chart,
  flagged: readonly Place[],
  model: ChartModel | undefined,
): readonly Flag[] {
  const mm = chart.figures.map((_, i) => chart.measures.map((column) => column.mm[i]!));
  for (const { figure, column } of flagged) mm[figure]![column] = Number.NaN;
  return [
    ...notLarger.flatMap(([small, large]) => breaks(chart, mm, model, small, large)),
    ...tooShort(chart, mm),
  ];
}

function breaks(
  chart: Chart,
  mm: readonly (readonly number[])[],
  model: ChartModel | undefined,
  smallKey: string,
  largeKey: string,
): readonly Flag[] {
  const small = chart.measures.findIndex(({ key }) => key === smallKey);
  const large = chart.measures.findIndex(({ key }) => key === largeKey);
  const [smallColumn, largeColumn] = [chart.measures[small], chart.measures[large]];
  if (!smallColumn || !largeColumn) return [];
  const slack = Math.max(slackMm[smallColumn.unit], slackMm[largeColumn.unit]);
  const known = mm.flatMap((row, i) => (Number.isNaN(row[small]! + row[large]!) ? [] : [i]));
  const broken = known.filter((i) => mm[i]![small]! > mm[i]![large]! + slack);
  if (broken.length >= fewestOfMany && broken.length > shareOfMany * known.length) {
    return [
      columnFlag(chart, large, {
        kind: "smaller than it can be",
        why: `${largeColumn.heading} is less than ${smallColumn.heading} for ${String(broken.length)} of ${String(known.length)} figures: are the two headings swapped? If the bodies are like that, nothing is wrong.`,
      }),
    ];
  }
  // Where size, build and like figures have it so, the bodies are the reason.
  const isUsual = (figure: number) => {
    if (!model) return false;
    const usual = model.expected(figure, small) - model.expected(figure, large);
    const spread = Math.hypot(model.spread(figure, small), model.spread(figure, large));
    return usual + normal95 * spread > Math.log(mm[figure]![small]! / mm[figure]![large]!);
  };
  const off = (figure: number, column: number) => {
    const ln = Math.log(mm[figure]![column]!);
    return model ? Math.abs(ln - model.expected(figure, column)) || 0 : 0;
  };
  return broken
    .filter((figure) => !isUsual(figure))
    .map((figure) =>
      off(figure, large) > off(figure, small)
        ? cellFlag(
            chart,
            { figure, column: large },
            { kind: "smaller than it can be", why: says(figure, largeColumn, "less", smallColumn) },
          )
        : cellFlag(
            chart,
            { figure, column: small },
            { kind: "larger than it can be", why: says(figure, smallColumn, "more", largeColumn) },
          ),
    );
}

function says(figure: number, odd: MeasureColumn, than: "less" | "more", other: MeasureColumn): string {
  return `${shown(odd, figure)} is ${than} than ${shown(other, figure)}, which a body seldom has. Measure both again.`;
}

/** A reading in words: `Head 6 5/8"`. */
export function shown({ heading, mm, unit }: MeasureColumn, figure: number): string {
  return `${heading} ${amount(mm[figure]!, unit)}`;
}

function tooShort(chart: Chart, mm: readonly (readonly number[])[]): readonly Flag[] {
  const [height, leg, back] = ["height", "insideLeg", "backWaistLength"].map((key) =>
    chart.measures.findIndex((column) => column.key === key),
  );
  const [heightColumn, legColumn, backColumn] = [
    chart.measures[height!],
    chart.measures[leg!],
    chart.measures[back!],
  ];
  if (!heightColumn || !legColumn || !backColumn) return [];
  return mm.flatMap((row, figure) =>
    row[height!]! > row[leg!]! + row[back!]! || Number.isNaN(row[height!]! + row[leg!]! + row[back!]!)
      ? []
      : [
          cellFlag(
            chart,
            { figure, column: height! },
            {
              kind: "smaller than it can be",
              why: `${shown(heightColumn, figure)} is no more than ${shown(legColumn, figure)} and ${shown(backColumn, figure)} together. One of the three is wrong.`,
            },
          ),
        ],
  );
}
