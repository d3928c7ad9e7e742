import { flareRadius } from "../addin/grading/flare.ts";
import { InputError } from "../addin/measures/inputError.ts";
import { aboveZero, amount, length } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { notANumber } from "./failures.ts";
import { shown } from "./shown.ts";

/** More circles than these are a ruffle; a larger number is nearly always a slip. */
const mostCircles = 4;

export const flareFunction = defineFunction({
  name: "FLARE",
  summary:
    "The radius to cut the waist of a flared skirt at: a full circle, three quarters, a half or a quarter.",
  details:
    "The cut edge lies inside the seam line, so the seam allowance is taken off the radius. The length of the skirt is added to " +
    "the radius before that: waist radius, plus allowance, plus length, plus hem. Give all lengths in one unit; the result is in that " +
    "unit. A fraction is safest as 0.75: a spreadsheet may turn a typed 3/4 into a date.",
  parameters: {
    waist: length("Waist of the figure, or the finished waist of the skirt."),
    circle_part: aboveZero("How much of a circle: 1, 0.75, 0.5 or 0.25; 2 for two full circles.", 1),
    seam_allowance: amount("Seam allowance at the waist.", 0),
    ease: amount("Ease to add to the waist.", 0),
  },
  result: "number",
  examples: [
    { formula: "FIT.FLARE(80)", values: [80], gives: 12.732 },
    { formula: "FIT.FLARE(80, 0.5)", values: [80, 0.5], gives: 25.465 },
    { formula: "FIT.FLARE(80, 0.5, 5, 2)", values: [80, 0.5, 5, 2], gives: 21.101 },
  ],
  failures: [
    notANumber,
    {
      when: `The part is above ${String(mostCircles)} circles, as where a typed fraction became a date.`,
      shows: "#VALUE!",
    },
    { when: "The seam allowance leaves no radius to cut at.", shows: "#VALUE!" },
  ],
  source: "Geometry: the waist is the length of an arc, radius = waist / (2π · part of the circle).",
  compute: ({ waist, circle_part, seam_allowance, ease }) => {
    if (circle_part > mostCircles) {
      throw new InputError(
        `circle_part: “${String(circle_part)}” is not a part of a circle. Write 1 for a full circle, or 0.75, 0.5 or 0.25; a typed 3/4 may have become a date.`,
      );
    }
    const radius = flareRadius(waist + ease, circle_part, seam_allowance);
    if (radius > 0) return shown(radius);
    throw new InputError(
      `seam_allowance: “${String(seam_allowance)}” is as wide as the radius of the seam line, ${String(shown(Math.round((radius + seam_allowance) * 1000) / 1000))}. Take a narrower allowance or a smaller part of a circle.`,
    );
  },
});
