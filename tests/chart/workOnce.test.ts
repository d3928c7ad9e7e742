import { describe, expect, it } from "vitest";
import type { Cells } from "../../addin/chart/cell.ts";
import { equalCells } from "../../addin/chart/cell.ts";
import { workOnce } from "../../addin/chart/workOnce.ts";
import { chart } from "../../functions/arguments.ts";

/** A reader that counts, and gives the cells as text. */
function counting(kept?: number) {
  let times = 0;
  const read = workOnce(
    (cells: Cells) => {
      times++;
      if (cells.length === 0) throw new Error("no cells");
      return JSON.stringify(cells);
    },
    equalCells,
    kept,
  );
  return { read, times: () => times };
}

describe("workOnce", () => {
  it("works equal cells out once, and gives the very same again", () => {
    const { read, times } = counting();
    const first = read([["Figure", "Bust"], ["A", 135]]); // prettier-ignore
    expect(read([["Figure", "Bust"], ["A", 135]])).toBe(first); // prettier-ignore
    expect(times()).toBe(1);
  });

  it("works out again when a value, a kind of value, an error or the size differs", () => {
    const variants: Cells[] = [
      [["A", 135]],
      [["A", 136]],
      [["A", "135"]],
      [["A", undefined]],
      [["A", true]],
      [["A", { error: "#N/A" }]],
      [["A", { error: "#REF!" }]],
      [["A", 135, 1]],
      [["A", 135], ["B", 1]], // prettier-ignore
    ];
    const { read, times } = counting(variants.length);
    const given = variants.map((cells) => read(cells));
    expect(variants.map((cells) => read(structuredClone(cells)))).toEqual(given);
    expect(times()).toBe(variants.length);
  });

  it("forgets the table that was not asked for longest", () => {
    const { read, times } = counting(2);
    for (const name of ["A", "B", "A", "C", "A", "B"]) read([[name]]);
    // A, B and C, and B once more.
    expect(times()).toBe(4);
  });

  it("does not keep a failure", () => {
    const { read, times } = counting();
    expect(() => read([])).toThrow("no cells");
    expect(() => read([])).toThrow("no cells");
    expect(times()).toBe(2);
  });

  it("lets all functions share one reading of a chart", () => {
    const cells = () => [["Figure", "Bust (mm)"], ["A", 135]]; // prettier-ignore
    expect(chart().read(cells(), "chart")).toBe(chart().read(cells(), "chart"));
  });
});
