import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { defaultGradeRules, gradePieces } from "../../../addin/chart/gradeBlocks.ts";
import { readChart } from "../../../addin/chart/readChart.ts";
import { pieceOutlines } from "../../../addin/grading/pieceOutlines.ts";
import { arrowPath, outlinePath, placePiece } from "../../../taskpane/grade/placePiece.ts";
import { pageWords } from "../../../taskpane/grade/papers.ts";
import { escaped } from "../../../taskpane/grade/svgWords.ts";
import { trueSizePage } from "../../../taskpane/grade/trueSize.ts";
import { piecesOf } from "./figures.ts";

const words = { base: "Ardmoor", target: "Corrie", unit: "mm" } as const;

describe("a page that prints true to size", () => {
  const pieces = piecesOf("Fitted skirt", 0, 2);
  const page = trueSizePage(pieces, words);

  // SVG 1.1, section 7.7: with width and height in mm and a viewBox of the same numbers, one unit is one millimetre.
  test("has millimetres as its unit, and the size that it says", () => {
    const [, w, h, box] = /<svg [^>]*width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(
      page.text,
    )!;
    expect(box).toBe(`0 0 ${w!} ${h!}`);
    expect(Number(w)).toBeCloseTo(page.widthMm, 3);
    expect(Number(h)).toBeCloseTo(page.heightMm, 3);
  });

  test("has a test square of 50 mm, or 2 in, and says so", () => {
    expect(page.text).toContain('<rect id="test-square" width="50" height="50"');
    expect(page.text).toContain("must be 50 mm.");
    const inches = trueSizePage(pieces, { ...words, unit: "in" });
    expect(inches.text).toContain('<rect id="test-square" width="50.8" height="50.8"');
    expect(inches.text).toContain("must be 2&quot;.");
    expect(trueSizePage(pieces, { ...words, unit: "cm" }).text).toContain("must be 5 cm.");
  });

  test("draws every length of a piece as long as it is: a quarter of waist and hip, the lengths whole", () => {
    const [base, target] = pathsOf(page.text);
    const along = (spots: Spots, from: number, to: number) =>
      Math.hypot(spots[to]![0] - spots[from]![0], spots[to]![1] - spots[from]![1]);
    // Waist at centre to waist at side, and waist at centre to hem at centre.
    expect(along(base!, 0, 1)).toBeCloseTo(140 / 4, 2);
    expect(along(base!, 0, 4)).toBeCloseTo(140, 2);
    expect(along(target!, 0, 1)).toBeCloseTo(150 / 4, 2);
    expect(along(target!, 0, 4)).toBeCloseTo(160, 2);
    // Hem at centre to hem at side: a quarter of the hip.
    expect(along(base!, 4, 3)).toBeCloseTo(200 / 4, 2);
    expect(along(target!, 4, 3)).toBeCloseTo(190 / 4, 2);
  });

  test("names base, target and every point, and says what it is not", () => {
    for (const { points } of pieces) {
      for (const { point, words: moves } of points) {
        expect(page.text).toContain(`>${point}<`);
        expect(page.text).toContain(`>${moves}<`);
      }
    }
    expect(page.text).toContain("Dashed: Ardmoor. Solid: Corrie.");
    expect(page.text).toContain("diagram");
    expect(page.text).toMatch(/not a\s+pattern|It is not/);
  });

  test("grows with its pieces, and lays none over another or over the square", () => {
    const all = trueSizePage([...pieces, ...piecesOf("Flared skirt", 0, 2)], words);
    expect(all.widthMm * all.heightMm).toBeGreaterThan(page.widthMm * page.heightMm);
    const boxes = boxesOf(all.text);
    expect(boxes).toHaveLength(5);
    for (const [i, a] of boxes.entries()) {
      expect(a.right).toBeLessThanOrEqual(all.widthMm);
      expect(a.bottom).toBeLessThanOrEqual(all.heightMm);
      for (const b of boxes.slice(i + 1)) {
        const isApart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
        expect(isApart).toBe(true);
      }
    }
  });

  test("leaves out pieces that cannot be drawn", () => {
    const none = trueSizePage(piecesOf("Fitted skirt", 0, 3), words);
    expect(none.text).not.toContain("Skirt front");
    expect(none.text).toContain("test-square");
  });

  test("takes any name for what it is", () => {
    expect(escaped('A <b> & "c"\u0007')).toBe("A &lt;b&gt; &amp; &quot;c&quot;");
    const named = trueSizePage(pieces, { ...words, base: "<script>&" });
    expect(named.text).not.toContain("<script>");
    expect(named.text).toContain("&lt;script&gt;&amp;");
  });

  // A4 is 210 × 297 mm (ISO 216), Letter 8 1/2 × 11 in (ANSI/ASME Y14.1, size A).
  test("says on which paper it fits", () => {
    const says = (widthMm: number, heightMm: number) => pageWords({ widthMm, heightMm }, "mm");
    expect(says(210, 279)).toMatch(/fits on A4 and Letter\.$/);
    expect(says(297, 210)).toMatch(/fits on A4\.$/);
    expect(says(215.9, 279.4)).toMatch(/fits on Letter\.$/);
    expect(says(210, 298)).toContain("larger than A4 and Letter");
    expect(pageWords({ widthMm: 254, heightMm: 508 }, "in")).toContain('10" wide and 20" high');
  });
});

describe("a piece with its labels", () => {
  const [piece] = piecesOf("Skirt front", 0, 2);
  const placing = { perMm: 2, gap: 10, lead: 5, label: (point: string) => [point], widthOf: () => 40 };

  test("keeps its proportions, and its labels apart", () => {
    const placed = placePiece(piece!.outlines, placing);
    const [a, b] = placed.base;
    expect(Math.hypot(b![0] - a![0], b![1] - a![1])).toBeCloseTo((2 * 140) / 4, 10);
    for (const anchor of ["start", "end"]) {
      const ys = placed.labels
        .filter((label) => label.anchor === anchor)
        .map(({ at }) => at[1])
        .sort((one, other) => one - other);
      for (const [i, y] of ys.slice(1).entries()) expect(y - ys[i]!).toBeGreaterThanOrEqual(10 - 1e-9);
    }
  });

  test("stays inside its size", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 5, noNaN: true }), (perMm) => {
        const placed = placePiece(piece!.outlines, { ...placing, perMm });
        const spots = [...placed.base, ...placed.target, ...placed.labels.map(({ at }) => at)];
        return spots.every(
          ([x, y]) => x >= -1e-9 && y >= -1e-9 && x <= placed.width + 1e-9 && y <= placed.height + 1e-9,
        );
      }),
    );
  });

  test("has an arrow only where something moves", () => {
    expect(arrowPath([0, 0], [0, 0], 5)).toBe("");
    expect(arrowPath([0, 0], [3, 0], 5)).toBe("M0 0L3 0");
    expect(arrowPath([0, 0], [10, 0], 4)).toBe("M0 0L10 0M6 -2L10 0L6 2");
    expect(outlinePath([])).toBe("");
  });
});

describe("the outline of a piece", () => {
  const placing = { perMm: 1, gap: 10, lead: 5, label: (point: string) => [point], widthOf: () => 40 };
  // Invented, in mm.
  const whole = readChart(
    [
      [
        "Figure",
        "Neck",
        "Shoulder width",
        "Bust",
        "Waist",
        "Hip",
        "Back waist length",
        "Waist to hip",
        "Waist to knee",
      ],
      ["Ardmoor", 80, 84, 182, 140, 200, 88, 44, 140],
      ["Brae", 88, 92, 200, 154, 220, 97, 48, 154],
    ].map((row, i) => [
      ...row,
      ...[
        ["Upper arm", "Wrist", "Arm length", "Body rise", "Thigh", "Knee", "Ankle", "Inside leg"],
        [62, 40, 140, 68, 118, 80, 52, 190],
        [68, 44, 154, 75, 130, 88, 57, 209],
      ][i]!,
    ]),
  );
  const curved = (name: string) => {
    const piece = gradePieces.filter((each) => each.name === name);
    const [outlines] = pieceOutlines(whole, defaultGradeRules, piece, 0, 1);
    const { base, bends } = placePiece(outlines!, placing);
    return { base, path: outlinePath(base, bends), names: outlines!.corners.map(({ point }) => point) };
  };

  test.each([
    ["Bodice front", ["Shoulder tip", "Neck at centre"]],
    ["Bodice back", ["Shoulder tip", "Neck at centre"]],
    ["Sleeve", ["Top of cap"]],
    ["Trousers front", ["Hip at centre"]],
    ["Skirt front", []],
  ])("of %s is curved where it goes to %j, and passes through all of its points", (name, to) => {
    const { base, path, names } = curved(name);
    const lines = path.split(/(?=[LC])/u).slice(1);
    expect(lines).toHaveLength(base.length - 1);
    for (const [i, line] of lines.entries()) {
      const [x, y] = line
        .match(/-?[\d.]+/gu)!
        .slice(-2)
        .map(Number);
      expect([x! - base[i + 1]![0], y! - base[i + 1]![1]].map(Math.abs).every((off) => off < 0.001)).toBe(
        true,
      );
      expect(line.startsWith("C"), names[i + 1]).toBe((to as readonly string[]).includes(names[i + 1]!));
    }
  });

  // A Bézier curve leaves and arrives along the lines to its control points: W3C, SVG 1.1, 8.3.6.
  test("has an armhole that leaves the side level and meets the shoulder upright, and no curve that leaves its box", () => {
    const { base, path, names } = curved("Bodice front");
    const at = names.indexOf("Shoulder tip");
    const [from, to] = [base[at - 1]!, base[at]!];
    const [x1, y1, x2, y2] = path
      .split(/(?=[LC])/u)
      .at(at)!
      .match(/-?[\d.]+/gu)!
      .map(Number);
    expect(y1).toBeCloseTo(from[1], 2);
    expect(x2).toBeCloseTo(to[0], 2);
    const isBetween = (spot: number, one: number, other: number): boolean =>
      spot >= Math.min(one, other) - 0.001 && spot <= Math.max(one, other) + 0.001;
    expect([isBetween(x1!, from[0], to[0]), isBetween(y2!, from[1], to[1])]).toEqual([true, true]);
  });
});

type Spots = readonly (readonly [number, number])[];

/** The outlines of the first piece: base, then target. */
function pathsOf(text: string): readonly Spots[] {
  return [...text.matchAll(/<path d="M([^"]+)Z"/g)].slice(0, 2).map(([, d = ""]) =>
    d.split("L").map((spot) => {
      const [x, y] = spot.split(" ").map(Number);
      return [x ?? Number.NaN, y ?? Number.NaN] as const;
    }),
  );
}

/** What each block of the page covers: its outlines, or the square. */
function boxesOf(text: string) {
  const blocks = text.split(/<g transform="translate\((?=\d+[\d.]* \d+[\d.]*\)">\n<(?:rect|text))/u).slice(1);
  return blocks.map((block) => {
    const [, x = "", y = ""] = /^([\d.]+) ([\d.]+)\)/.exec(block) ?? [];
    const [, inner = "0"] = /translate\(0 ([\d.]+)\)/.exec(block) ?? [];
    const square = /<rect id="test-square" width="([\d.]+)"/.exec(block)?.[1];
    const spots = square
      ? [
          [0, 0],
          [Number(square), Number(square)],
        ]
      : [...block.matchAll(/<path d="M([^"]+)Z"/g)].flatMap(([, d = ""]) =>
          d.split("L").map((spot) => spot.split(" ").map(Number)),
        );
    const xs = spots.map((spot) => Number(x) + (spot[0] ?? Number.NaN));
    const ys = spots.map((spot) => Number(y) + (square ? 0 : Number(inner)) + (spot[1] ?? Number.NaN));
    return {
      ...{ left: Math.min(...xs), right: Math.max(...xs) },
      ...{ top: Math.min(...ys), bottom: Math.max(...ys) },
    };
  });
}
