import { delta } from "../addin/fit/delta.ts";
import { lengths } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { notANumber, sizesDiffer } from "./failures.ts";
import { together } from "./together.ts";

export const deltaFunction = defineFunction({
  name: "DELTA",
  summary: "The difference between two figures or sizes, target minus base, for a cell or a whole range.",
  details:
    "Give all lengths in one unit; the result is in that unit. A cell that is blank in either range gives a blank.",
  parameters: {
    base: lengths("The measures to start from: a cell, a row, a column or a block."),
    target: lengths("The measures to get to, in the same order."),
  },
  result: "table",
  examples: [
    { formula: "FIT.DELTA(100, 104.5)", values: [100, 104.5], gives: 4.5 },
    {
      formula: 'FIT.DELTA({135,100,140}, {136,"",142})',
      values: [[[135, 100, 140]], [[136, "", 142]]],
      gives: [[1, "", 2]],
    },
  ],
  failures: [notANumber, sizesDiffer],
  compute: ({ base, target }) =>
    together({ name: "base", values: base }, { name: "target", values: target }, delta),
});
