import { clearance } from "../addin/fit/clearance.ts";
import { amount, length, stretch } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { notANumber } from "./failures.ts";
import { shown } from "./shown.ts";

export const clearanceFunction = defineFunction({
  name: "CLEARANCE",
  summary:
    "What is left when an opening passes over a head, a hand or a heel; below zero, it will not go on.",
  details:
    "Clearance = opening × (1 + half the stretch) − (obstacle + 2π × thickness). Half the stretch is what a cloth " +
    "gives comfortably in wear (common practice). Add twice the length of a placket or back opening to the opening. " +
    "Give all lengths in one unit; the result is in that unit.",
  parameters: {
    opening: length("Girth of the opening, not stretched."),
    obstacle: length("Girth that must pass through it."),
    stretch: stretch("How far the cloth stretches: 25% or 0.25."),
    thickness: amount("Thickness of what covers the obstacle or turns in at the opening.", 0),
  },
  result: "number",
  examples: [
    { formula: "FIT.CLEARANCE(120, 112)", values: [120, 112], gives: 8 },
    { formula: "FIT.CLEARANCE(100, 112)", values: [100, 112], gives: -12 },
    { formula: "FIT.CLEARANCE(100, 112, 30%)", values: [100, 112, 0.3], gives: 3 },
  ],
  failures: [
    notANumber,
    { when: "The stretch is above 200 %, as when 25 is written for 25 %.", shows: "#VALUE!" },
  ],
  source: "Geometry for the thickness; the comfortable share of the stretch is common practice.",
  compute: ({ opening, obstacle, stretch: stretched, thickness }) =>
    shown(clearance(opening, obstacle, { stretch: stretched, thickness })),
});
