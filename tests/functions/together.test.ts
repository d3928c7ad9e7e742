import { describe, expect, it } from "vitest";
import { together } from "../../functions/together.ts";

const add = (first: number[][], second: number[][]) =>
  together({ name: "base", values: first }, { name: "target", values: second }, (a, b) => a + b);

describe("together", () => {
  it("takes ranges of one size cell by cell", () => {
    expect(add([[1, 2]], [[10, 20]])).toEqual([[11, 22]]);
  });

  it("uses a single cell, row or column for the whole other range", () => {
    expect(
      add(
        [[1]],
        [
          [10, 20],
          [30, 40],
        ],
      ),
    ).toEqual([
      [11, 21],
      [31, 41],
    ]);
    expect(
      add(
        [
          [10, 20],
          [30, 40],
        ],
        [[1, 2]],
      ),
    ).toEqual([
      [11, 22],
      [31, 42],
    ]);
    expect(
      add(
        [
          [10, 20],
          [30, 40],
        ],
        [[1], [2]],
      ),
    ).toEqual([
      [11, 21],
      [32, 42],
    ]);
    expect(add([[1], [2]], [[10, 20]])).toEqual([
      [11, 21],
      [12, 22],
    ]);
  });

  it("is blank where either is blank, and where the result is no number", () => {
    const result = together(
      { name: "base", values: [[1, undefined, 3]] },
      { name: "target", values: [[undefined, 2, 3]] },
      (a, b) => a / (b - 3),
    );
    expect(result).toEqual([["", "", ""]]);
  });

  it("hides the dust of binary fractions", () => {
    expect(add([[0.1]], [[0.2]])).toEqual([[0.3]]);
    expect(add([[84.1]], [[-80]])).toEqual([[4.1]]);
  });

  it("says both sizes when they do not go together", () => {
    expect(() => add([[1], [2], [3]], [[1], [2]])).toThrow(
      "base is 3 rows by 1 column and target is 2 rows by 1 column. Choose two ranges of the same size",
    );
  });
});
