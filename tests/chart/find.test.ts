import { describe, expect, it } from "vitest";
import { figureIndex, measureColumn } from "../../addin/chart/find.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { InputError } from "../../addin/measures/inputError.ts";

const chart = readChart([
  ["Figure", "Bust (in)", "Hips", "Tail", "Chest"],
  ["Ada Lark", 5, 90, 20, 130],
  ["Bea", 5.5, 91, 21, 131],
  ["bea", 6, 92, 22, 132],
]);

const errorOf = (run: () => unknown): InputError => {
  try {
    run();
  } catch (error) {
    if (error instanceof InputError) return error;
  }
  throw new Error("did not fail");
};

describe("figureIndex", () => {
  it("finds the name as written before any other case and spacing", () => {
    expect(figureIndex(chart, "Ada Lark")).toBe(0);
    expect(figureIndex(chart, "  ada  LARK ")).toBe(0);
    expect(figureIndex(chart, "Bea")).toBe(1);
    expect(figureIndex(chart, "bea")).toBe(2);
    expect(figureIndex(chart, "BEA")).toBe(1);
  });

  it("says that a figure is not there, and names near ones", () => {
    const error = errorOf(() => figureIndex(chart, "Ada Lrak"));
    expect(error.message).toBe("The chart has no figure “Ada Lrak”. Did you mean “Ada Lark”?");
    expect(error.kind).toBe("absent");
    expect(errorOf(() => figureIndex(chart, "Zoe")).message).toBe("The chart has no figure “Zoe”.");
    expect(errorOf(() => figureIndex(chart, " ")).kind).toBe("value");
  });
});

describe("measureColumn", () => {
  it("finds a column by its heading and by any name of its measure", () => {
    for (const name of [
      "Bust",
      "bust",
      "Bust (in)",
      "bust girth",
      "bustGirth",
      "Bust circumference",
      "Full bust",
    ]) {
      expect(measureColumn(chart, name).position).toBe(1);
    }
    for (const name of ["Hips", "hip", "Seat", "Hip (cm)"])
      expect(measureColumn(chart, name).position).toBe(2);
    expect(measureColumn(chart, "tail (mm)").position).toBe(3);
  });

  it("finds a second column of a measure by its own heading", () => {
    expect(measureColumn(chart, "Chest").position).toBe(4);
  });

  it("says that a measure is not there, and names near ones", () => {
    expect(errorOf(() => measureColumn(chart, "Tial"))).toMatchObject({
      message: "The chart has no column for “Tial”. Did you mean “Tail”?",
      kind: "absent",
    });
    expect(errorOf(() => measureColumn(chart, "Inseam")).message).toContain("“Inseam” (Inside leg)");
    expect(errorOf(() => measureColumn(chart, "")).kind).toBe("value");
  });
});
