import type { Cell, Cells } from "../../addin/chart/cell.ts";
import { defaultGarmentClasses } from "../../addin/chart/garmentClass.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { comparedOf } from "../similarity/chartOf.ts";
import { seeded } from "../similarity/condensedOf.ts";

/** Typical readings in mm of a figure of about 400 mm: invented, in rough proportion. */
const typicalMm = [145, 105, 155, 128, 72, 82, 118, 96, 60, 48, 42, 52, 88, 66, 74, 58, 46, 62, 180, 200];

/** Headings for them. */
export const measureNames: readonly string[] = [
  ...[
    "Bust",
    "Waist",
    "Hip",
    "Waist to hip",
    "Neck girth",
    "Knee girth",
    "Thigh girth",
    "Chest width",
    "Calf girth",
  ],
  ...[
    "Upper arm girth",
    "Wrist girth",
    "Ankle girth",
    "Back width",
    "Body rise",
    "Bust point to bust point",
    "Elbow girth",
  ],
  ...["Hand girth", "Foot girth", "Inside leg", "Back waist length"],
];

/** Seeded figures × 20 measures in mm: a size for each figure, and each measure about its proportion. */
export function randomFigures(count: number, seed = 1): readonly (readonly number[])[] {
  const random = seeded(seed);
  return Array.from({ length: count }, () => {
    const size = Math.exp(0.25 * normal(random));
    return typicalMm.map((mm) => mm * size * Math.exp(0.06 * normal(random)));
  });
}

/** Versions of a few bodies, one after another: each with reading errors of a third of a tolerance, and all measures a little larger or smaller. */
export function versionsOfBodies(count: number, bodies: number, seed = 7): readonly (readonly number[])[] {
  const random = seeded(seed);
  const sculpts = randomFigures(bodies, seed);
  return Array.from({ length: count }, (_, i) => {
    const larger = 0.3 * normal(random);
    return sculpts[i % bodies]!.map((mm, c) => mm + tolerancesMm[c]! * (0.35 * normal(random) + larger));
  });
}

/** A tolerance in mm for each measure, about 2 % of the typical reading. */
export const tolerancesMm: readonly number[] = typicalMm.map((mm) => Math.max(1, mm / 50));

/** The rows as columns to compare. */
export function columnsOf(rows: readonly (readonly number[])[], percent = 0): readonly ComparedColumn[] {
  return comparedOf(rows).map((compared, c) => ({
    ...compared,
    tolerance: { floorMm: tolerancesMm[c]!, percent },
  }));
}

/** Box–Muller. */
export function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Body measures of another invented figure, which patterns are judged by, in mm. */
const judgedMm = {
  ...{ Head: 160, Neck: 66, Bust: 180, Waist: 134, Hip: 194, "Shoulder girth": 205, "Upper arm": 50 },
  ...{ Wrist: 33, Hand: 40, "Arm length": 128, "Back waist": 88, Thigh: 108, Calf: 74, Ankle: 44 },
  ...{ Heel: 62, "Foot length": 52, "Foot width": 19, "Heel height": 3, "Hand length": 34 },
};

/** Seeded figures to judge patterns on; one reading in fifty is missing. */
export function figureCells(count: number): Cells {
  const random = seeded(1);
  const rows = Array.from({ length: count }, (_, i): Cell[] => {
    const size = 0.7 + 0.7 * random();
    const readings = Object.values(judgedMm).map((mm) =>
      random() < 0.02 ? undefined : mm * size * (0.95 + 0.1 * random()),
    );
    return [`Figure ${String(i + 1)}`, random() < 0.3 ? "yes" : "no", ...readings];
  });
  return [["Figure", "Hands removable", ...Object.keys(judgedMm)], ...rows];
}

/** Patterns of every class, drafted for figures of the chart; every fourth is worn over the two before it. */
export function patternCells(count: number, figures: number): Cells {
  const random = seeded(2);
  const rows = Array.from({ length: count }, (_, i): Cell[] => [
    `P${String(i + 1)}`,
    defaultGarmentClasses[i % defaultGarmentClasses.length]?.name,
    `Figure ${String(1 + Math.floor(random() * figures))}`,
    `${String(Math.floor(random() * 60))}%`,
    0.2 + 0.5 * random(),
    i % 4 === 3 ? `P${String(i)}, P${String(i - 1)}` : "",
    random() < 0.5 ? "back" : "side",
    40 + 80 * random(),
    80 + 40 * random(),
    30 + 20 * random(),
    50 + 60 * random(),
  ]);
  const headings = [
    ...["Pattern", "Garment class", "Drafted for", "Stretch %", "Thickness (mm)", "Worn over", "Opens"],
    ...["Opening length", "Neck opening", "Cuff opening", "Hem opening"],
  ];
  return [headings, ...rows];
}
