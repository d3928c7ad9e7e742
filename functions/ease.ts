import { ease } from "../addin/fit/ease.ts";
import { amount, lengths } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { notANumber, sizesDiffer } from "./failures.ts";
import { together } from "./together.ts";

export const easeFunction = defineFunction({
  name: "EASE",
  summary: "The ease of a finished garment over the body, for a cell or a whole range.",
  details:
    "Ease = garment − (body + 2π × thickness worn under it). Below zero, the garment must stretch to go on. " +
    "Give all lengths in one unit; the result is in that unit.",
  parameters: {
    garment: lengths("Finished girths of the garment, closed."),
    body: lengths("Girths of the body at the same places."),
    under_thickness: amount("Thickness of all layers worn under the garment, added up.", 0),
  },
  result: "table",
  examples: [
    { formula: "FIT.EASE(88, 80)", values: [88, 80], gives: 8 },
    { formula: "FIT.EASE(88, 80, 0.5)", values: [88, 80, 0.5], gives: 4.858 },
    {
      formula: "FIT.EASE({143;108}, {135;100})",
      values: [
        [[143], [108]],
        [[135], [100]],
      ],
      gives: [[8], [8]],
    },
  ],
  failures: [notANumber, sizesDiffer],
  source: "Geometry: a layer of thickness t laid round a body adds 2πt to its girth.",
  compute: ({ garment, body, under_thickness }) =>
    together({ name: "garment", values: garment }, { name: "body", values: body }, (finished, bare) =>
      ease(finished, bare, under_thickness),
    ),
});
