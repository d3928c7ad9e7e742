import { describe, expect, it } from "vitest";
import { descriptors } from "../../functions/all.ts";
import type { Result, Table } from "../../functions/descriptor.ts";
import { isTable } from "../../functions/descriptor.ts";
import { seeded } from "../similarity/condensedOf.ts";

function compute(name: string, ...raw: unknown[]): Result {
  const descriptor = descriptors.find((each) => each.name === name);
  if (!descriptor) throw new Error(`There is no ${name}.`);
  return descriptor.compute(raw);
}

/** The rows below the headings. */
function rowsOf(name: string, ...raw: unknown[]): Table {
  const result = compute(name, ...raw);
  return isTable(result) ? result.slice(1) : [];
}

const headings = ["Figure", "Bust", "Waist", "Hip"];
const functions = ["GROUPS", "TREE", "NEAREST", "MEASURENEXT"] as const;
/** A call with the figure A where one is named. */
const call = (name: (typeof functions)[number], chart: unknown, tolerances?: unknown) =>
  name === "NEAREST" ? compute(name, chart, "A", 5, tolerances) : compute(name, chart, tolerances);

describe("a figure without a single reading", () => {
  const chart = [headings, ["A", 135, 100, 140], ["B", null, null, null], ["C", 136, 101, 141]];

  it("is a group of its own, with what is missing, and joins nothing", () => {
    const groups = rowsOf("GROUPS", chart);
    expect(groups.map((row) => row[1])).toEqual([1, 2, 1]);
    expect(groups[1]).toEqual(["B", 2, "B", "Bust missing, Waist missing, Hip missing", ""]);
    expect(rowsOf("TREE", chart)).toMatchObject([[1, "A", "C", expect.any(Number), 2]]);
  });

  it("comes last in NEAREST, and is first in what to measure next", () => {
    const missing = "Bust missing, Waist missing, Hip missing";
    expect(rowsOf("NEAREST", chart, "A").at(-1)).toEqual(["B", "not known", missing, "0 of 3"]);
    expect(rowsOf("NEAREST", chart, "B").map((row) => row[1])).toEqual(["not known", "not known"]);
    expect(rowsOf("MEASURENEXT", chart).map((row) => row.slice(0, 2))).toEqual([
      ["B", "Bust"],
      ["B", "Waist"],
      ["B", "Hip"],
    ]);
    expect(rowsOf("SHARES", chart, "A", "B")[0]).toEqual([
      "Body",
      "not known",
      "Measure Bust, Waist, Hip of B.",
      "",
    ]);
  });
});

/** An empty cell reaches a function as null on the web and as 0 on the desktop, see leftOut.test.ts. */
describe("a figure that is called 0", () => {
  const chart = [headings, ["A", 135, 100, 140], ["0", 136, 101, 141], ["B", 150, 110, 160]];
  const all = rowsOf("SHARES", chart, "A");

  it.each(["0", " 0 ", [["0"]]])("is the other figure of SHARES as the text %j", (other) => {
    expect(rowsOf("SHARES", chart, "A", other)[0]).toEqual([
      "Body",
      "yes",
      "Differs most: Waist 1 mm larger, of 2 mm allowed.",
      expect.closeTo(1 / 2.01, 2),
    ]);
  });

  it.each([0, "", "  ", null, [[0]], [[null]]])("is one of all others for %j", (other) => {
    expect(rowsOf("SHARES", chart, "A", other)).toEqual(all);
    expect(all.map((row) => row[0])).toEqual(["0", "B"]);
  });

  it("is the first figure as a number too, since that is needed", () => {
    expect(rowsOf("SHARES", chart, 0, "A")).toEqual(rowsOf("SHARES", chart, "0", "A"));
  });

  it("has no name in a chart that holds it as a number: no cell of names is told from an empty one", () => {
    const numbered = chart.map((row) => (row[0] === "0" ? [0, ...row.slice(1)] : row));
    expect(() => rowsOf("SHARES", numbered, "A", "0")).toThrow("The chart has no figure “0”.");
    expect(rowsOf("SHARES", numbered, "A").map((row) => row[0])).toEqual(["B"]);
  });
});

describe("a chart without a single reading", () => {
  const chart = [headings, ["A", null, null, null], ["B", null, null, null]];

  it.each(functions)("is refused by %s, with the measures to take", (name) => {
    expect(() => call(name, chart)).toThrow("No figure of the chart has a reading of “Bust”, “Waist”, “Hip”");
  });

  it("leaves everything open in SHARES, and has no estimate", () => {
    expect(new Set(rowsOf("SHARES", chart, "A", "B").map((row) => row[1]))).toEqual(new Set(["not known"]));
    expect(rowsOf("EXPECTED", chart, "A", "Bust")[0]?.slice(2, 5)).toEqual(["", "", ""]);
  });
});

describe("tolerances of zero", () => {
  const chart = [headings, ["A", 135, 100, 140], ["B", 136, 101, 142]];
  it.each(functions)("are refused by %s, at the row", (name) => {
    for (const zero of ["0", "0%", "0 mm"]) {
      const tolerances = [
        ["Measure", "Tolerance"],
        ["Waist", 2],
        ["Bust", zero],
      ];
      expect(() => call(name, chart, tolerances)).toThrow(
        /Row 3 of the tolerances, Bust: “0.*” is not above 0/,
      );
    }
  });
});

describe("two figures, and identical ones", () => {
  it("are in one group or in two", () => {
    expect(
      rowsOf("GROUPS", [headings, ["A", 135, 100, 140], ["B", 136, 101, 142]]).map((row) => row[1]),
    ).toEqual([1, 1]);
    expect(
      rowsOf("GROUPS", [headings, ["A", 135, 100, 140], ["B", 190, 101, 142]]).map((row) => row[1]),
    ).toEqual([1, 2]);
  });

  it("have nothing between them when they are the same", () => {
    const chart = [headings, ...["C", "A", "B"].map((figure) => [figure, 135, 100, 140])];
    expect(rowsOf("GROUPS", chart)).toEqual(["C", "A", "B"].map((figure) => [figure, 1, "A", "", 0]));
    expect(rowsOf("TREE", chart)).toEqual([
      [1, "A", "B", 0, 2],
      [2, "C", "step 1", 0, 3],
    ]);
    expect(rowsOf("NEAREST", chart, "C").map((row) => row.slice(0, 2))).toEqual([
      ["A", 0],
      ["B", 0],
    ]);
    expect(rowsOf("MEASURENEXT", chart)).toEqual([]);
    expect(rowsOf("SHARES", chart, "A", "B")[0]).toEqual(["Body", "yes", "No difference.", 0]);
  });
});

describe("EXPECTED", () => {
  const measures = ["Bust", "Waist (in)", "Hip", "Arm length", "Inside leg", "Heel height"];
  const proportions = [135, 100, 140, 90, 180, 20];
  const sizes = [1, 1.1, 1.2, 1.3, 1.5, 1.6];
  const chart = [
    ["Figure", ...measures],
    ...sizes.map((size, i) => [
      "ABCDEF"[i],
      ...proportions.map((mm, c) => (c === 1 ? (mm * size) / 25.4 : mm * size)),
    ]),
  ];

  it("gives what is in proportion, in the unit of the column, with limits and as an estimate", () => {
    const [row] = rowsOf("EXPECTED", chart, "C", "waist");
    expect(row?.slice(0, 2)).toEqual(["C", "Waist (in)"]);
    expect(row?.[2]).toBeCloseTo(120 / 25.4, 9);
    // Limits as far apart in proportion on either side.
    expect(Number(row?.[3]) * Number(row?.[4])).toBeCloseTo((120 / 25.4) ** 2, 9);
    expect(Number(row?.[3])).toBeLessThan(120 / 25.4);
    expect(row?.[5]).toBe('Estimate. The reading is 4 3/4".');
  });

  it("does not look at the reading itself", () => {
    const slipped = chart.map((row, i) => (i === 3 ? row.map((cell, c) => (c === 3 ? 1680 : cell)) : row));
    expect(rowsOf("EXPECTED", slipped, "C", "Hip")[0]?.[2]).toBeCloseTo(168, 6);
  });

  it("has no estimate for a measure that does not grow with the figure, nor for a small chart", () => {
    for (const [row] of [
      rowsOf("EXPECTED", chart, "C", "Heel height"),
      rowsOf("EXPECTED", chart.slice(0, 5), "C", "Hip"),
    ]) {
      expect(row?.slice(2, 5)).toEqual(["", "", ""]);
      expect(row?.[5]).toMatch(/^No estimate: it takes 5 figures and 5 measures that grow with the figure/);
    }
  });

  it("names what is not in the chart", () => {
    expect(() => compute("EXPECTED", chart, "C", "Hipp")).toThrow("Did you mean “Hip”?");
    expect(() => compute("EXPECTED", chart, "Q", "Hip")).toThrow("The chart has no figure “Q”.");
    expect(compute("EXPECTED", chart, "C", null)).toEqual([[""]]);
  });
});

// Seconds of work where the machine is busy.
describe("5,000 figures", () => {
  const random = seeded(3);
  const measures = ["Bust", "Waist", "Hip", "Arm length", "Inside leg"];
  const chart = [
    ["Figure", ...measures],
    ...Array.from({ length: 5000 }, (_, i) => {
      const size = Math.exp(0.4 * random());
      return [`F${String(i)}`, ...measures.map((__, c) => (90 + 20 * c) * size * Math.exp(0.03 * random()))];
    }),
  ];

  it("are grouped, with every figure within tolerance of its base figure", () => {
    const groups = rowsOf("GROUPS", chart);
    expect(groups).toHaveLength(5000);
    expect(Math.max(...groups.map((row) => Number(row[4])))).toBeLessThanOrEqual(1);
    const bases = new Map(groups.map((row) => [row[1], row[2]]));
    expect(groups.every((row) => bases.get(row[1]) === row[2])).toBe(true);
  });

  it("have an estimate, neighbours and no open pair", () => {
    expect(Number(rowsOf("EXPECTED", chart, "F7", "Hip")[0]?.[2])).toBeGreaterThan(100);
    expect(rowsOf("NEAREST", chart, "F7", 3)).toHaveLength(3);
    expect(rowsOf("MEASURENEXT", chart)).toEqual([]);
  });

  it("are grouped beyond 12,000 too, but not compared pair by pair", () => {
    const large = [
      ["Figure", "Bust"],
      ...Array.from({ length: 12_001 }, (_, i) => [`F${String(i)}`, 100 + (i % 50)]),
    ];
    expect(rowsOf("GROUPS", large)).toHaveLength(12_001);
    const refusal = "The chart has 12001 figures. Every pair can be compared among at most 12000";
    expect(() => compute("TREE", large)).toThrow(refusal);
    expect(() => compute("GROUPS", large, undefined, undefined, "average")).toThrow(refusal);
  });

  it("are refused beyond 100,000, with the number", () => {
    const large = [
      ["Figure", "Bust"],
      ...Array.from({ length: 100_001 }, (_, i) => [`F${String(i)}`, 100 + (i % 50)]),
    ];
    expect(() => compute("GROUPS", large)).toThrow(
      "The chart has 100001 figures. Groups can be found among at most 100000",
    );
  });
});
