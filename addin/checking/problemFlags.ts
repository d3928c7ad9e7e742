import { unitsToAsk } from "../chart/unitsOfColumns.ts";
import { cutShort, someOf } from "../measures/quote.ts";
import { unitNames } from "./unitSlips.ts";
import type { Chart, ChartProblem, ChartProblemKind } from "../chart/chart.ts";
import { toMm } from "../measures/units.ts";
import type { Choice, Flag, FlagKind } from "./flag.ts";

const kinds: Partial<Record<ChartProblemKind, FlagKind>> = {
  "date instead of a reading": "date instead of a reading",
  "error cell": "error in the cell",
  "refused reading": "not a length",
};

/** Flags for what holds no reading at all: columns in no known unit, dates, errors, words. */
export function problemFlags(chart: Chart): readonly Flag[] {
  return [...unitFlags(chart, "unit not known"), ...cellFlags(chart)];
}

/** Flags for columns whose heading states no unit. */
export function unitFlags(chart: Chart, kind: "unit not known" | "unit assumed"): readonly Flag[] {
  return chart.problems.flatMap(({ kind: of, column = 0, message, unstated }) => {
    if (of !== kind || !unstated) return [];
    const columns = chart.measures.filter(({ position }) => unstated.columns.includes(position));
    return [
      {
        figure: "",
        row: 0,
        column,
        measure: someOf(columns.map(({ heading }) => heading)),
        unit: unstated.unit,
        kind,
        why: message,
        corrections: [],
        choices: unitsToAsk(unstated.unit).map((unit) => ({
          label: unitNames[unit],
          headings: columns.map(({ position, heading }) => ({
            column: position,
            heading: `${heading} (${unit})`,
          })),
        })),
      },
    ];
  });
}

/** A note on each column with estimates. */
export function estimateFlags(chart: Chart): readonly Flag[] {
  return chart.measures.flatMap(({ heading, unit, position, origins }): readonly Flag[] => {
    const places = [...(origins ?? [])].flatMap(([figure, origin]) =>
      origin === "estimated" ? [figure] : [],
    );
    const names = places.map((figure) => chart.figures[figure] ?? "");
    return names.length === 0
      ? []
      : [
          {
            figure: "",
            row: 0,
            column: position,
            measure: heading,
            unit,
            kind: "estimates",
            why: `${heading} is an estimate, not a reading, for ${someOf(names.map(cutShort), 50)}. Estimates take no part in groups. Measure, and write the number alone.`,
            corrections: [],
          },
        ];
  });
}

function cellFlags(chart: Chart): readonly Flag[] {
  return chart.problems.flatMap((problem) => {
    const kind = kinds[problem.kind];
    return kind ? [problemFlag(chart, problem, kind)] : [];
  });
}

function problemFlag(chart: Chart, problem: ChartProblem, kind: FlagKind): Flag {
  const row = problem.row ?? 0;
  const column = chart.measures.find((measure) => measure.position === problem.column);
  const figure = chart.figures[chart.rows.indexOf(row)] ?? "";
  const measure = column?.heading ?? "";
  const place = `${figure}, ${measure}: `;
  const choices = choicesOf(problem);
  return {
    figure,
    row,
    column: problem.column ?? 0,
    measure,
    unit: column?.unit ?? "mm",
    kind,
    why: problem.message.startsWith(place) ? problem.message.slice(place.length) : problem.message,
    corrections: [],
    ...(choices.length > 0 ? { choices } : {}),
  };
}

/** Fractions of an inch, as a tape is read, whatever the column’s unit. */
function choicesOf({ row, column, fractions = [] }: ChartProblem): readonly Choice[] {
  if (row === undefined || column === undefined) return [];
  return fractions.map((fraction) => {
    const [over = Number.NaN, under = Number.NaN] = fraction.split("/").map(Number);
    return { label: `${fraction} in`, correction: { row, column, mm: toMm(over / under, "in") } };
  });
}
