import { describe, expect, it } from "vitest";
import { descriptors } from "../../functions/all.ts";
import type { Result, Table } from "../../functions/descriptor.ts";
import { isTable } from "../../functions/descriptor.ts";
import { exampleChart } from "../../functions/exampleChart.ts";
import { HostError, loadFunctions } from "./loadFunctions.ts";

const { registered, script } = await loadFunctions();

/** Excel’s own object about the call, which it passes after the last argument. */
const invocation = { address: "Sheet1!A1", functionName: "FIT" };

/** Calls as Excel does: null for every omitted argument, then the invocation. */
function call(name: string, ...args: readonly unknown[]): unknown {
  const parameters = descriptors.find((descriptor) => descriptor.name === name)?.parameters ?? [];
  const given = parameters.map((parameter, i) => hostValue(args[i], parameter.shape));
  return registered.get(name)?.(...given, invocation);
}

/** Excel passes a range parameter as rows, even for one cell. */
function hostValue(value: unknown, shape: "scalar" | "range"): unknown {
  if (value === undefined) return null;
  return shape === "range" && !Array.isArray(value) ? [[value]] : value;
}

function failure(name: string, ...args: readonly unknown[]): HostError {
  try {
    call(name, ...args);
  } catch (thrown) {
    if (thrown instanceof HostError) return thrown;
    throw thrown;
  }
  throw new Error(`${name} gave a value`);
}

function rounded(result: unknown): Table {
  const table = isTable(result as Result) ? (result as Table) : [[result as string]];
  // The context has arrays of its own; copies compare with ours.
  return Array.from(table, (row) =>
    Array.from(row, (value) => (typeof value === "number" ? Math.round(value * 1000) / 1000 + 0 : value)),
  );
}

describe("functions.js in a bare JavaScript context", () => {
  it("registers every function", () => {
    expect(registered.size).toBe(descriptors.length);
  });

  // How much the built file weighs, tests/browser/sizes.test.ts says.
  it("is free of what only pages need", () => {
    expect(script).not.toMatch(/\bzod\b|createElement|univer|highs\.(wasm|js)|highs_|ml-pca/i);
  });

  it.each(descriptors.flatMap(({ name, examples }) => examples.map((example) => ({ name, ...example }))))(
    "$formula",
    ({ name, values, gives }) => {
      expect(rounded(call(name, ...values))).toEqual(rounded(gives));
    },
  );

  it("covers every function with an example", () => {
    expect(descriptors.every(({ examples }) => examples.length > 0)).toBe(true);
  });

  it("gives #VALUE! with a message that quotes bad input", () => {
    expect(failure("DELTA", [["wig"]], [[1]])).toMatchObject({ code: "#VALUE!" });
    expect(failure("DELTA", [["wig"]], [[1]]).message).toContain("“wig” is not a length");
    expect(failure("GROUPS", [[null]]).message).toContain("The chart is empty");
  });

  it("gives #N/A for what is not in the chart, with near names", () => {
    const { code, message } = failure("COMPARE", exampleChart, "Linet", "Teal");
    expect(code).toBe("#N/A");
    expect(message).toMatch(/“Linet”.*Did you mean “Linnet”/);
  });

  it("turns anything unforeseen into #VALUE! with plain words", () => {
    const hostile = {
      get error(): never {
        throw new RangeError("unforeseen");
      },
    };
    expect(failure("DELTA", [[hostile]], [[1]])).toEqual(
      new HostError(
        "#VALUE!",
        "DELTA could not work this out. Check the ranges that it is given; nothing in the workbook was changed.",
      ),
    );
  });

  it("gives blank for blank, never null", () => {
    for (const { name, parameters } of descriptors.filter(
      (descriptor) => !descriptor.parameters.some(isChart),
    )) {
      const result = call(name, ...parameters.map(({ shape }) => (shape === "range" ? [[null]] : null)));
      expect(rounded(result)).toEqual([[""]]);
    }
  });

  it("takes a call with fewer arguments than declared", () => {
    expect(registered.get("OVER")?.(80, 0.5)).toBeCloseTo(83.1416, 4);
  });
});

function isChart({ name }: { name: string }): boolean {
  return name === "chart" || name === "figures";
}
