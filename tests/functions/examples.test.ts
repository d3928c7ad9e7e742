import { describe, expect, it } from "vitest";
import { descriptors } from "../../functions/all.ts";
import type { Result, Table, Value } from "../../functions/descriptor.ts";
import { isTable } from "../../functions/descriptor.ts";

/** The reference rounds to three decimals. */
const rounded = (value: Value): Value =>
  typeof value === "number" ? Math.round(value * 1000) / 1000 + 0 : value;
const table = (result: Result): Table =>
  (isTable(result) ? result : [[result]]).map((row) => row.map(rounded));

describe.each(descriptors)("$name", (descriptor) => {
  const { name, parameters, examples } = descriptor;

  it("has an example", () => {
    expect(examples.length).toBeGreaterThan(0);
  });

  it.each(examples)("$formula", ({ formula, values, gives }) => {
    expect(formula.startsWith(`FIT.${name}(`)).toBe(true);
    expect(values.length).toBeLessThanOrEqual(parameters.length);
    const result = descriptor.compute(values);
    expect(table(result)).toEqual(table(gives));
    expect(isTable(result)).toBe(descriptor.result === "table");
  });

  it("lists its optional arguments last", () => {
    const firstOptional = parameters.findIndex(({ optional }) => optional);
    const after = firstOptional < 0 ? [] : parameters.slice(firstOptional);
    expect(after.every(({ optional }) => optional)).toBe(true);
    expect(after.every(({ standsFor }) => standsFor !== undefined)).toBe(true);
  });
});
