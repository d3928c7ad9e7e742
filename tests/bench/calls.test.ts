import { describe, expect, it } from "vitest";
import { descriptors } from "../../functions/all.ts";
import type { Result } from "../../functions/descriptor.ts";
import { cellCalls, rangeCalls } from "./calls.ts";

describe("the bench from cells to cells", () => {
  it("has one line for every worksheet function", () => {
    const lines = [...Object.keys(cellCalls), ...Object.keys(rangeCalls)];
    expect(lines.sort()).toEqual(descriptors.map(({ name }) => name).sort());
  });

  it.each(descriptors.map(({ name, compute }) => [name, compute] as const))(
    "calls %s so that it has something to answer",
    (name, compute) => {
      const args = cellCalls[name]?.(1) ?? rangeCalls[name]?.(30, 1);
      const result: Result = compute(args ?? []);
      const rows = Array.isArray(result) ? result : [[result]];
      expect(rows.flat().some((value) => value !== "")).toBe(true);
      if (rangeCalls[name] && name !== "TEM" && name !== "APART") expect(rows.length).toBeGreaterThan(1);
    },
  );
});
