import type { LengthUnit } from "../../../addin/measures/units.ts";
import { mmPerUnit } from "../../../addin/measures/units.ts";
import { measureById } from "../../../addin/measures/dictionary.ts";
import { seeded } from "../../similarity/condensedOf.ts";

/** A chart without slips, as a maker might have written it down. */
export interface InventedChart {
  readonly headings: readonly string[];
  readonly names: readonly string[];
  readonly units: readonly LengthUnit[];
  readonly isGirth: readonly boolean[];
  /** Readings as written, in the unit of their column; undefined is not taken. */
  readonly readings: readonly (readonly (number | undefined)[])[];
}

type Build = "woman" | "man" | "child" | "toddler";

/**
 * Invented figures: the measures of four builds in thousandths of the height below a natural head’s crown, in rough natural
 * proportion, from memory; what each has to do with stoutness, long legs, curves and limbs. Not those of the checks.
 */
const table: readonly (readonly [
  id: string,
  shares: readonly [woman: number, man: number, child: number, toddler: number],
  varies: string,
])[] = [
  ["height", [1000, 1000, 1000, 1000], ""],
  ["headGirth", [338, 325, 425, 560], "head"],
  ["headHeight", [132, 130, 168, 215], "head"],
  ["neckGirth", [195, 215, 215, 260], "stout"],
  ["shoulderWidth", [225, 245, 225, 235], "frame"],
  ["acrossBack", [205, 220, 205, 220], "frame"],
  ["upperBustGirth", [515, 550, 500, 550], "stout"],
  ["bustGirth", [545, 560, 510, 560], "stout curves"],
  ["underBustGirth", [460, 535, 490, 560], "stout"],
  ["waistGirth", [420, 480, 465, 570], "stout waist"],
  ["highHipGirth", [515, 520, 500, 580], "stout curves"],
  ["hipGirth", [580, 545, 530, 590], "stout curves"],
  ["backWaistLength", [245, 252, 235, 235], "trunk"],
  ["frontWaistLength", [262, 258, 245, 250], "trunk curves"],
  ["waistToHip", [120, 112, 110, 100], "trunk"],
  ["bodyRise", [160, 155, 160, 175], "trunk"],
  ["torsoGirth", [920, 930, 900, 960], "trunk"],
  ["armLength", [340, 350, 335, 310], "limbs"],
  ["upperArmGirth", [170, 175, 165, 205], "stout"],
  ["elbowGirth", [148, 152, 150, 190], "stout"],
  ["forearmGirth", [145, 155, 148, 185], "stout"],
  ["wristGirth", [95, 99, 105, 135], "stout"],
  ["handGirth", [112, 120, 122, 145], "hands"],
  ["handLength", [107, 110, 109, 112], "hands"],
  ["insideLeg", [455, 460, 440, 360], "legs"],
  ["outsideLeg", [625, 620, 600, 530], "legs"],
  ["kneeHeight", [280, 285, 270, 235], "legs"],
  ["thighGirth", [340, 320, 305, 350], "stout"],
  ["midThighGirth", [300, 290, 275, 315], "stout"],
  ["kneeGirth", [220, 215, 220, 245], "stout"],
  ["calfGirth", [218, 215, 212, 240], "stout"],
  ["ankleGirth", [132, 130, 140, 165], "stout"],
  ["heelGirth", [188, 190, 195, 215], "feet"],
  ["footGirth", [138, 143, 146, 170], "feet"],
  ["footLength", [148, 153, 155, 158], "feet"],
];
const builds: readonly Build[] = ["woman", "man", "child", "toddler"];

/** How much a body of one build differs from the next: the standard deviation of ln for each way of varying. */
const spreads: Readonly<Record<string, number>> = {
  ...{ stout: 0.06, curves: 0.035, waist: 0.05, trunk: 0.03, legs: 0.025, limbs: 0.025, frame: 0.03 },
};
/** What is left to each measure of each body. */
const ownSpread = 0.025;

/** A seeded chart: 25–60 figures × 15–35 measures, bodies shared under several heads, builds and sizes as the seed has it. */
export function inventedChart(seed: number): InventedChart {
  const random = seeded(seed * 7919 + 13);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1));
  const figureCount = whole(25, 60);
  const measureCount = whole(15, 35);
  const chosen = chooseColumns(measureCount, random);
  const present = chooseBuilds(random);
  const sizes = chooseSizes(random, normal);
  const written = random();
  const units = chosen.map((): LengthUnit => (written < 0.6 ? "mm" : written < 0.75 ? "cm" : random() < 0.3 ? "in" : "mm")); // prettier-ignore
  const stepMm = random() < 0.5 ? 0.5 : 1;
  const missing = random() < 0.3 ? 0 : 0.08 * random();
  const headStyle = Math.exp(0.25 * Math.abs(normal()) + (random() < 0.3 ? 0.35 : 0));
  const handStyle = Math.exp(0.1 * normal());
  const footStyle = Math.exp(0.12 * normal());

  const newBody = () => {
    const build = present[whole(0, present.length - 1)]!;
    const ways = Object.fromEntries(Object.entries(spreads).map(([way, spread]) => [way, spread * normal()]));
    const hands = handStyle * Math.exp(0.06 * normal());
    const feet = footStyle * Math.exp(0.06 * normal());
    const height = sizes() * { woman: 1, man: 1.07, child: 0.72, toddler: 0.52 }[build];
    const mm = chosen.map(([, shares, varies]) => {
      const share = shares[builds.indexOf(build)]! / 1000;
      const ln = varies.split(" ").reduce((sum, way) => sum + (ways[way] ?? 0), 0);
      const scale = varies === "hands" ? hands : varies === "feet" ? feet : 1;
      return height * share * scale * Math.exp(ln + ownSpread * normal());
    });
    return { build, height, mm };
  };

  const readings: (number | undefined)[][] = [];
  while (readings.length < figureCount) {
    const body = newBody();
    const heads = random() < 0.5 ? 1 : whole(2, 5);
    for (let k = 0; k < heads && readings.length < figureCount; k++) {
      const head = headStyle * Math.exp(0.06 * normal());
      readings.push(
        chosen.map(([id, , varies], j) => {
          const natural = { woman: 0.132, man: 0.13, child: 0.168, toddler: 0.215 }[body.build];
          const grown = id === "height" ? 1 + natural * (head - 1) : varies === "head" ? head : 1;
          const mm = body.mm[j]! * grown * (1 + 0.007 * normal()) + 0.3 * normal();
          return random() < missing ? undefined : asWritten(Math.max(mm, 2), units[j]!, stepMm);
        }),
      );
    }
  }
  const order = readings.map((row) => ({ row, at: random() })).sort((a, b) => a.at - b.at);
  const sorted = random() < 0.5 ? order.map(({ row }) => row) : readings;
  return {
    headings: ["Figure", ...chosen.map(([id], j) => `${measureById(id)?.name ?? id} (${units[j]!})`)],
    names: sorted.map((_, i) => `Figure ${String(i + 1)}`),
    units,
    isGirth: chosen.map(([id]) => id.endsWith("Girth")),
    readings: sorted,
  };
}

function chooseColumns(count: number, random: () => number): typeof table {
  const drawn = table.map((column) => ({ column, at: random() })).sort((a, b) => a.at - b.at);
  const kept = new Set(drawn.slice(0, count).map(({ column }) => column));
  return table.filter((column) => kept.has(column));
}

function chooseBuilds(random: () => number): readonly Build[] {
  const mixes: readonly (readonly Build[])[] = [
    ["woman"],
    ["woman", "man"],
    ["woman", "woman", "woman", "child"],
    ["woman", "man", "child", "toddler"],
    ["child", "toddler"],
    ["woman", "toddler"],
  ];
  return mixes[Math.floor(random() * mixes.length)]!;
}

/** Natural heights of a grown woman in mm: one scale, two scales, or anything from small to quarter scale. */
function chooseSizes(random: () => number, normal: () => number): () => number {
  const kind = random();
  const base = 200 + 250 * random();
  if (kind < 0.4) return () => base * Math.exp(0.06 * normal());
  if (kind < 0.7) return () => (random() < 0.5 ? base : base * 1.5) * Math.exp(0.05 * normal());
  return () => Math.exp(Math.log(150) + random() * Math.log(600 / 150));
}

function asWritten(mm: number, unit: LengthUnit, stepMm: number): number {
  if (unit === "in") return Math.round((mm / mmPerUnit.in) * 16) / 16;
  const rounded = Math.round(mm / stepMm) * stepMm;
  return unit === "cm" ? Number((rounded / 10).toFixed(2)) : rounded;
}
