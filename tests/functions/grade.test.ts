import { describe, expect, it } from "vitest";
import { exampleChart } from "../../functions/exampleChart.ts";
import { gradeFunction } from "../../functions/grade.ts";

const headings = ["Piece", "Point", "Measure", "Share across", "Share along"];
const grade = (...raw: readonly unknown[]) => {
  const table = gradeFunction.compute(raw);
  return Array.isArray(table) ? table : [];
};
const withRules = (...rules: readonly (readonly unknown[])[]) =>
  grade(exampleChart, "Linnet", "Teal", [headings, ...rules]);
const at = (rows: readonly (readonly unknown[])[], point: string) => rows.find((row) => row[1] === point);

describe("GRADE", () => {
  it("puts a quarter of the bust on each half front and half back", () => {
    const rows = grade(exampleChart, "Linnet", "Teal", "bodice");
    expect(rows.filter((row) => row[1] === "Underarm").map((row) => [row[0], row[2]])).toEqual([
      ["Bodice front", 13.75],
      ["Bodice back", 13.75],
    ]);
  });

  it("judges each garment by the measures that move it, and no others", () => {
    // Only the head is another one: no print for all together, every one but the hood and the hat band as it is.
    const chart = [
      ["Figure", "Bust", "Waist", "Hip", "Waist to hip", "Back waist", "Inside leg", "Head"],
      ["Wren", 200, 160, 220, 40, 90, 180, 150],
      ["Rook", 200, 160, 220, 40, 90, 180, 190],
      ["Crake", 200, 160, 260, 40, 90, 260, 150],
    ];
    const says = (target: string, what: string) =>
      grade(chart, "Wren", target)
        .find(([piece, point]) => piece === what && point === "Print scale")
        ?.at(-1);
    expect(says("Rook", "All pieces")).toMatch(/^Draft anew/);
    expect(says("Rook", "Bodice")).toBe("Print at 100 %. Nothing is left over.");
    expect(says("Rook", "Trousers")).toBe("Print at 100 %. Nothing is left over.");
    expect(says("Rook", "Hat band")).toMatch(/^Print at 127 %/);
    expect(says("Crake", "Bodice")).toBe("Print at 100 %. Nothing is left over.");
    expect(says("Crake", "Trousers")).toMatch(/Hip|Inside leg/);
  });

  it("reads shares as fractions, decimals and percentages", () => {
    const across = (share: unknown) =>
      at(withRules(["Skirt front", "Hip at side", "Hip", share, 0]), "Hip at side")?.[2];
    expect(["1/4", "¼", 0.25, "25%", "25 %"].map(across)).toEqual([15, 15, 15, 15, 15]);
    expect(across("−1/4")).toBe(-15);
  });

  it("tells at the row where an edited set breaks a girth, and by how much", () => {
    const rows = withRules(
      ["Bodice front", "Underarm", "Bust", 0.3, 0],
      ["Bodice front", "Waist at side", "Waist", "1/4", 0],
    );
    expect(at(rows, "Underarm")?.at(-1)).toBe(
      "Row 2 of the grade rules: at the bust line the pieces of the bodice add up to 110 % of the change of Bust instead of 100 %, 10 % or 5.5 mm too much.",
    );
    expect(at(rows, "Waist at side")?.at(-1)).toBe("");
  });

  it("names whose reading is missing", () => {
    const chart = [
      ["Figure", "Waist", "Hip", "Waist to hip"],
      ["Wren", 100, 140, 30],
      ["Rook", 120, 170, ""],
    ];
    expect(at(grade(chart, "Wren", "Rook", "Skirt back"), "Hip at side")).toEqual([
      ...["Skirt back", "Hip at side", 7.5, "", "mm", "Waist to hip is not known of Rook."],
    ]);
  });

  it("leaves out pieces of which nothing is known, unless they are asked for", () => {
    const pieces = new Set(grade(exampleChart, "Linnet", "Teal").map(([piece]) => piece));
    expect(pieces.has("Stocking")).toBe(false);
    expect(pieces.has("Trousers back")).toBe(true);
    expect(() => grade(exampleChart, "Linnet", "Teal", "Stocking")).toThrow(
      /The chart has no measure that moves these pieces for both figures/,
    );
  });

  it("answers in the unit that most of its measures are in", () => {
    const inches = [
      ["Figure", "Bust (in)", "Waist (in)"],
      ["Wren", 30, 22],
      ["Rook", 32, 24],
    ];
    expect(at(grade(inches, "Wren", "Rook", "Bodice"), "Underarm")?.slice(2, 5)).toEqual([0.5, "", "in"]);
    const mixed = [["Figure", "Bust (in)", "Waist (mm)"], ...inches.slice(1)];
    expect(at(grade(mixed, "Wren", "Rook", "Bodice"), "Underarm")?.slice(2, 5)).toEqual([0.5, "", "in"]);
  });

  it.each([
    [
      "an unknown piece",
      ["Bodise front", "Underarm", "Bust", 0.25, 0],
      /Row 2 of the grade rules, Piece: “Bodise front”.*“Bodice front”/,
    ],
    [
      "an unknown point",
      ["Sleeve", "Underam", "Bust", 0.25, 0],
      /Row 2 of the grade rules, Point: “Underam”.*“Underarm”/,
    ],
    [
      "an unknown measure",
      ["Sleeve", "Underarm", "Bustt", 0.25, 0],
      /Row 2 of the grade rules, Measure: “Bustt”.*“Bust”/,
    ],
    [
      "more than the whole",
      ["Sleeve", "Underarm", "Bust", 1.5, 0],
      /Row 2 of the grade rules, Share across: “1.5” is more than the whole/,
    ],
    ["a date", ["Sleeve", "Underarm", "Bust", 0, 46113], /Share along: “46113”.*become a date/],
    ["words", ["Sleeve", "Underarm", "Bust", "half", 0], /“half” is not a percentage/],
    ["an error", ["Sleeve", "Underarm", "Bust", { error: "#REF!" }, 0], /#REF!/],
  ])("refuses %s in words, at the row", (_, rule, message) => {
    expect(() => withRules(rule)).toThrow(message);
  });

  it("refuses a rule twice, a table without a heading, and one figure as base and target", () => {
    const rule = ["Sleeve", "Underarm", "Upper arm", 0.5, 0];
    expect(() => withRules(rule, rule)).toThrow(/Row 3 of the grade rules: .* is in row 2 too/);
    expect(() => grade(exampleChart, "Linnet", "Teal", [headings.slice(0, 4), rule])).toThrow(
      /“Share along”/,
    );
    expect(() => grade(exampleChart, "Linnet", "Linnet")).toThrow(/both base and target/);
    expect(() => grade(exampleChart, "Linnet", "Teal", "Bodise")).toThrow(/“Bodise”.*Did you mean “Bodice”/);
  });
});

describe("GRADE to several figures", () => {
  /** Misses sizes of the pattern-industry chart as reproduced on sewingscholar.blogspot.com (2011), in inches. */
  const misses = [
    ["Size", "Bust (in)", "Waist (in)", "Back waist (in)"],
    [6, 30.5, 23, 15.5],
    [8, 31.5, 24, 15.75],
    [10, 32.5, 25, 16],
    [12, 34, 26.5, 16.25],
  ];

  it("has two columns for each, in the order named, that are those of each alone", () => {
    const rows = grade(misses, "8", "12, 6", "Bodice");
    expect(rows[0]).toEqual([
      ...["Piece", "Point", "12 across", "12 along", "6 across", "6 along", "Unit", "Says"],
    ]);
    const alone = ["12", "6"].map((size) => grade(misses, "8", size, "Bodice"));
    const points = rows.filter(([piece]) => String(piece).startsWith("Bodice"));
    expect(points.length).toBe(12);
    for (const row of points) {
      const each = alone.map((table) => table.find(([piece, point]) => piece === row[0] && point === row[1]));
      expect(row.slice(2, 6)).toEqual(each.flatMap((single) => single?.slice(2, 4) ?? []));
    }
  });

  it("says where the steps are uneven, from the smallest to the largest, whatever the order", () => {
    const stepsOf = (base: string, targets: string) =>
      at(grade(misses, base, targets, "Bodice"), "Steps")?.at(-1);
    expect(stepsOf("12", "6, 10, 8")).toBe('Uneven: Bust 1" to 1 1/2", Waist 1" to 1 1/2".');
    expect(stepsOf("6", "8, 10")).toBe("Even.");
  });

  it("says of each whether a print will do", () => {
    const rows = grade(exampleChart, "Linnet", [["Dunnock"], ["Teal"]], "Skirt front");
    expect(at(rows, "Print scale")?.at(-1)).toMatch(
      /^Dunnock: print at 101 %\. .* Teal: print at 143 %, then let out Waist by 12 mm\. Hip is within tolerance\.$/,
    );
  });

  it("goes by tolerances of the user’s own", () => {
    const rows = grade(exampleChart, "Linnet", "Teal", "Skirt front", [
      ["Measure", "Tolerance"],
      ["Waist", 20],
      ["Hip", 20],
    ]);
    expect(at(rows, "Print scale")?.at(-1)).toMatch(
      /^Print at 14\d %\. At worst .* which is within tolerance\.$/,
    );
  });

  it("tells how much too wide a broken set is at most, and all of whom a reading is missing", () => {
    const chart = [
      ["Figure", "Waist", "Hip", "Waist to hip"],
      ["Wren", 100, 140, ""],
      ["Rook", 120, 170, 40],
      ["Stork", 140, 180, ""],
    ];
    const rows = grade(chart, "Rook", "Wren, Stork", [
      headings,
      ["Skirt front", "Hip at side", "Hip", 0.3, 0],
      ["Skirt front", "Hip at side", "Waist to hip", 0, -1],
    ]);
    expect(at(rows, "Hip at side")?.at(-1)).toMatch(
      /^Waist to hip is not known of Wren and Stork\. .* 10 % or up to 3 mm too much\.$/,
    );
  });

  it("takes a name with a comma, a size 0, and cells that are empty", () => {
    const chart = [
      ["Figure", "Waist"],
      ["Wren, painted", 100],
      ["0", 104],
      [2, 108],
    ];
    const headingsOf = (target: unknown) =>
      grade(chart, "Wren, painted", target, "Fitted skirt")[0]?.slice(2, -2);
    expect(headingsOf([["0"], [2], [0], [null]])).toEqual(["0 across", "0 along", "2 across", "2 along"]);
    const back = grade(chart, 2, "Wren, painted", "Skirt front");
    expect(at(back, "Waist at side")?.slice(2, 4)).toEqual([-2, 0]);
    expect(grade(chart, 2, [[null], [""]], "Skirt front")).toEqual([[""]]);
  });

  it("refuses the base among the targets, a target twice, and a name that is not in the chart", () => {
    expect(() => grade(misses, "8", "6, 8")).toThrow(/“8” of the chart is both base and target/);
    expect(() => grade(misses, "8", "6, 10; 6")).toThrow(/“6” is among the targets twice/);
    expect(() => grade(exampleChart, "Linnet", "Dunnock, Teel")).toThrow(/“Teel”.*“Teal”/);
    expect(() => grade(exampleChart, "Linnet", [[0], [0]])).toThrow(/no figure is named/);
    expect(() => grade(exampleChart, "Linnet", [["Teal"], [{ error: "#REF!" }]])).toThrow(
      /target: the cell holds the error #REF!\. Mend/,
    );
  });
});
