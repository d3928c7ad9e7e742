import { unitOfFraction } from "../addin/chart/unitsOfColumns.ts";
import { dartAngle, dartLeg, planDarts, widestDartMm } from "../addin/grading/darts.ts";
import { InputError } from "../addin/measures/inputError.ts";
import { lengthWords } from "../addin/measures/lengthWords.ts";
import type { LengthUnit } from "../addin/measures/units.ts";
import { aboveZero, amount, count, optionalReading, reading, unit } from "./arguments.ts";
import type { Table } from "./descriptor.ts";
import { defineFunction } from "./descriptor.ts";
import { notALength, notAUnit } from "./failures.ts";
import { shown, shownLength } from "./shown.ts";

/** Beyond this a figure would be smaller than any that is sewn for; a larger number is nearly always a slip. */
const smallestScale = 50;

export const dartsFunction = defineFunction({
  name: "DARTS",
  summary:
    "How wide the darts of a bodice or skirt become, whether that is sensible at its scale, and how they are drawn.",
  details:
    "The difference between the bust, or the hip, and the waist is taken in half at the seams and half in the darts; write another " +
    "share where yours differs. Give the finished girths of the garment, over the whole body, and its darts over the whole body: " +
    "4 for one on each half front and half back. A dart wider than " +
    `${String(widestDartMm)} mm at full size seldom presses flat (our own starting value); at 1:6 that is a sixth of it. Where the darts are ` +
    "wider, more are needed, in pairs. With the depth of a dart come the length to sew on each side and the angle at its " +
    "point, which stays the same at every print scale.",
  parameters: {
    wider: reading("Finished bust or hip of the garment."),
    waist: reading("Its finished waist."),
    darts: count("Darts of the block, over the whole body.", 4),
    scale: aboveZero("Scale of the figure as the x of 1:x, such as FIGURESCALE gives.", 1),
    depth: optionalReading("From the waist to the point of a dart, along its middle.", "no length and angle"),
    seam_share: amount("Share of the difference that is taken in at the seams: 0.5 for half.", 0.5),
    unit: unit("Unit of bare numbers and of the results: mm, cm or in.", "mm"),
  },
  result: "table",
  examples: [
    {
      formula: "FIT.DARTS(140, 100, 4, 6, 20)",
      values: [140, 100, 4, 6, 20],
      gives: [
        ["What", "Amount", "Unit", "Says"],
        ["Difference", 40, "mm", ""],
        ["At the seams", 20, "mm", ""],
        ["Darts", 4, "", ""],
        ["Each dart", 5, "mm", ""],
        ["Widest sensible dart", 5.333, "mm", ""],
        ["Each side of a dart", 20.156, "mm", "Draw both sides as long as this: then they match."],
        ["Angle at the point", 14.25, "°", ""],
      ],
    },
    {
      formula: "FIT.DARTS(160, 120, 2, 6)",
      values: [160, 120, 2, 6],
      gives: [
        ["What", "Amount", "Unit", "Says"],
        ["Difference", 40, "mm", ""],
        ["At the seams", 20, "mm", ""],
        [
          "Darts",
          4,
          "",
          "2 darts would be 10 mm wide each, too wide to press flat. Sew 4, or take more in at the seams.",
        ],
        ["Each dart", 5, "mm", ""],
        ["Widest sensible dart", 5.333, "mm", ""],
      ],
    },
  ],
  failures: [
    notALength,
    notAUnit,
    { when: "The share at the seams is more than the whole, or the scale is no x of 1:x.", shows: "#VALUE!" },
  ],
  source:
    "Geometry; that half of the difference is taken in at the seams is common practice, and the widest dart is our own starting value.",
  compute: (given): Table => {
    const widerMm = given.wider.mm(given.unit, unitOfFraction);
    const waistMm = given.waist.mm(given.unit, unitOfFraction);
    if (widerMm === undefined || waistMm === undefined) return [[""]];
    const scale = scaleOf(given.scale);
    const plan = planDarts(widerMm, waistMm, {
      ...{ darts: given.darts, scale },
      seamShare: shareOf(given.seam_share),
    });
    const words = (mm: number) => lengthWords(mm, given.unit);
    const row = lengthRow(given.unit);
    const depthMm = given.depth?.mm(given.unit, unitOfFraction);
    return [
      ["What", "Amount", "Unit", "Says"],
      row(
        "Difference",
        plan.differenceMm,
        plan.differenceMm === 0 ? "The waist is not smaller: no darts are needed." : "",
      ),
      row("At the seams", plan.atSeamsMm, ""),
      [
        "Darts",
        plan.darts,
        "",
        plan.darts > given.darts
          ? `${String(given.darts)} ${given.darts === 1 ? "dart" : "darts"} would be ${words(plan.asGivenMm)} wide${given.darts === 1 ? "" : " each"}, too wide to press flat. Sew ${String(plan.darts)}, or take more in at the seams.`
          : "",
      ],
      row("Each dart", plan.intakeMm, ""),
      row("Widest sensible dart", plan.largestMm, ""),
      ...(depthMm === undefined ? [] : drawnRows(plan.intakeMm, depthMm, given.unit)),
    ];
  },
});

function drawnRows(intakeMm: number, depthMm: number, lengthUnit: LengthUnit): Table {
  return [
    lengthRow(lengthUnit)(
      "Each side of a dart",
      dartLeg(intakeMm, depthMm),
      "Draw both sides as long as this: then they match.",
    ),
    ["Angle at the point", shown(dartAngle(intakeMm, depthMm)), "°", ""],
  ];
}

const lengthRow = (lengthUnit: LengthUnit) => (what: string, mm: number, says: string) => [
  what,
  shownLength(mm, lengthUnit),
  lengthUnit,
  says,
];

function scaleOf(x: number): number {
  if (x >= 1 && x <= smallestScale) return x;
  throw new InputError(
    `scale: “${String(x)}” is not the x of a scale 1:x. Write 6 for 1:6, or 1 for full size.`,
  );
}

function shareOf(share: number): number {
  if (share <= 1) return share;
  throw new InputError(
    `seam_share: “${String(share)}” is more than the whole. Write 0.5 for half of the difference.`,
  );
}
