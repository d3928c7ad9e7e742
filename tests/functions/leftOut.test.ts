import { describe, expect, it } from "vitest";
import { descriptors } from "../../functions/all.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import type { FunctionDescriptor } from "../../functions/descriptor.ts";

/**
 * Microsoft’s page “Custom functions parameter options”: when no value is given for an optional parameter, Excel assigns it null. An
 * empty cell is null on the web and 0 on the desktop (seen, not documented); Excel’s data types call it { type: "Empty" }.
 */
const leftOut: readonly (readonly [what: string, raw: unknown])[] = [
  ["null", null],
  ["0", 0],
  ["an empty text", ""],
  ["an Empty value", { type: "Empty", basicValue: "" }],
  ["a 0 as a rich value", { type: "Double", basicValue: 0 }],
  ["one cell of null", [[null]]],
  ["one cell of 0", [[0]]],
  ["one cell of an empty text", [[""]]],
  ["one Empty cell", [[{ type: "Empty", basicValue: "" }]]],
];
const emptyRange = [
  [null, 0],
  ["", { type: "Empty", basicValue: "" }],
];

/** What comes out, be it a result or a refusal. */
function outcome(descriptor: FunctionDescriptor, raw: readonly unknown[]): unknown {
  try {
    return descriptor.compute(raw);
  } catch (failure) {
    if (failure instanceof InputError) return failure.message;
    throw failure;
  }
}

const cases = descriptors.flatMap((descriptor) =>
  descriptor.parameters.flatMap((parameter, at) =>
    parameter.optional ? [{ descriptor, parameter, at, name: `${descriptor.name} ${parameter.name}` }] : [],
  ),
);

describe("an optional argument that is empty", () => {
  it.each(cases)("$name is as if it were left out", ({ descriptor, parameter, at }) => {
    for (const { values } of descriptor.examples) {
      const given = descriptor.parameters.map((_, i) => (i === at ? undefined : values[i]));
      const expected = outcome(descriptor, given);
      expect(outcome(descriptor, given.slice(0, at))).toEqual(
        outcome(
          descriptor,
          given.map((value, i) => (i < at ? value : undefined)),
        ),
      );
      const empty = parameter.shape === "range" ? [...leftOut, ["an empty range", emptyRange]] : leftOut;
      for (const [what, raw] of empty) {
        expect([what, outcome(descriptor, given.with(at, raw))]).toEqual([what, expected]);
      }
    }
  });

  it("there are some of every kind", () => {
    expect(cases.length).toBeGreaterThan(40);
    expect(new Set(cases.map(({ parameter }) => parameter.type))).toEqual(new Set(["text", "any"]));
    expect(new Set(cases.map(({ parameter }) => parameter.shape))).toEqual(new Set(["scalar", "range"]));
  });
});

describe("a table with empty cells", () => {
  const tables = descriptors.flatMap((descriptor) =>
    descriptor.parameters.flatMap(({ shape, name }, at) =>
      shape === "range" && descriptor.name !== "SCORE"
        ? [{ descriptor, at, name: `${descriptor.name} ${name}` }]
        : [],
    ),
  );

  /** SCORE takes any values, a difference of 0 too, and says so. */
  it.each(tables)(
    "$name reads null and 0 alike, in the rows below and the columns beside",
    ({ descriptor, at }) => {
      for (const { values } of descriptor.examples) {
        const table = values[at];
        if (!Array.isArray(table)) continue;
        const roomy = (empty: unknown) => [
          ...table.map((row: readonly unknown[]) => [...row, empty]),
          (table[0] as readonly unknown[]).map(() => empty).concat([empty]),
        ];
        // The other range of a sum cell by cell has to keep the same size.
        if (["DELTA", "EASE", "TEM"].includes(descriptor.name)) continue;
        expect(outcome(descriptor, values.with(at, roomy(0)))).toEqual(
          outcome(descriptor, values.with(at, roomy(null))),
        );
        expect(outcome(descriptor, values.with(at, roomy("")))).toEqual(
          outcome(descriptor, values.with(at, roomy(null))),
        );
      }
    },
  );
});
