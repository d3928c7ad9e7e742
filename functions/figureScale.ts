import { unitOfFraction } from "../addin/chart/unitsOfColumns.ts";
import { adultHeightMm, figureScale } from "../addin/grading/scale.ts";
import { optionalReading, reading } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { notALength } from "./failures.ts";
import { InputError } from "../addin/measures/inputError.ts";
import { shown } from "./shown.ts";

export const figureScaleFunction = defineFunction({
  name: "FIGURESCALE",
  summary: "The scale of a figure, as the x of 1:x: the height of the person it stands for, over its own.",
  details:
    "Give both heights in one unit, or write the unit with each. When full_height is left out, the figure stands for " +
    `an adult of ${String(adultHeightMm)} mm (our own starting value), and a bare figure_height is in mm.`,
  parameters: {
    figure_height: reading("Height of the figure, from the top of the head to the sole of the foot."),
    full_height: optionalReading("Height of the person it stands for.", `${String(adultHeightMm)} mm`),
  },
  result: "number",
  examples: [
    { formula: "FIT.FIGURESCALE(280)", values: [280], gives: 6 },
    { formula: "FIT.FIGURESCALE(16, 64)", values: [16, 64], gives: 4 },
    { formula: 'FIT.FIGURESCALE("11 in", "168 cm")', values: ["11 in", "168 cm"], gives: 6.013 },
  ],
  failures: [notALength],
  compute: ({ figure_height, full_height }) => {
    const figure = figure_height.mm("mm", unitOfFraction);
    const full = full_height ? full_height.mm("mm", unitOfFraction) : adultHeightMm;
    if (figure === undefined || full === undefined) return "";
    return shown(figureScale(aboveZero(figure, "figure_height"), aboveZero(full, "full_height")));
  },
});

function aboveZero(mm: number, name: string): number {
  if (mm > 0) return mm;
  throw new InputError(`${name}: a height must be above zero. Write how tall it is.`);
}
