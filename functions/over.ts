import { girthOverLayers } from "../addin/fit/girthOverLayers.ts";
import { amount, length, requiredAmount } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { notANumber } from "./failures.ts";
import { shown } from "./shown.ts";

export const overFunction = defineFunction({
  name: "OVER",
  summary: "A girth measured over cloth: the bare girth and what the layers add.",
  details:
    "Each layer of thickness t adds 2πt, whatever the girth: half a millimetre of cloth adds 3.14 mm, which is 3.9 % " +
    "of a waist of 80 mm and 0.5 % of one of 650 mm. Give all lengths in one unit; the result is in that unit.",
  parameters: {
    girth: length("The bare girth."),
    thickness: requiredAmount("Thickness of one layer of cloth; an empty cell counts as 0."),
    layers: amount("Number of layers.", 1),
  },
  result: "number",
  examples: [
    { formula: "FIT.OVER(80, 0.5)", values: [80, 0.5], gives: 83.142 },
    { formula: "FIT.OVER(80, 0.5, 2)", values: [80, 0.5, 2], gives: 86.283 },
  ],
  failures: [notANumber],
  source: "Geometry: a layer of thickness t laid round a body adds 2πt to its girth.",
  compute: ({ girth, thickness, layers }) => shown(girthOverLayers(girth, thickness, layers)),
});
