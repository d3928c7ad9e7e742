import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultEaseRules } from "../../addin/chart/defaultEaseRules.ts";
import type { EaseAmount, EaseRule } from "../../addin/chart/easeRule.ts";
import { clearance } from "../../addin/fit/clearance.ts";
import { explainPair } from "../../addin/fit/explainPair.ts";
import { matchAll } from "../../addin/fit/match.ts";
import { usualReadingError } from "../../addin/fit/readingError.ts";
import type { Verdict } from "../../addin/fit/verdict.ts";
import { rank } from "../../addin/fit/verdict.ts";
import type { Row } from "./fitOf.ts";
import { fittingOf } from "./fitOf.ts";

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = (min: number, max: number) => fc.option(mm(min, max), { nil: undefined, freq: 4 });

const figure = fc.record({
  ...{ Head: maybe(60, 240), Neck: maybe(30, 90), Bust: maybe(80, 260), Waist: maybe(70, 240) },
  ...{ Hip: maybe(80, 280), "Shoulder girth": maybe(90, 280), "Upper arm": maybe(20, 80) },
  ...{ Wrist: maybe(14, 60), Hand: maybe(15, 70), Heel: maybe(20, 90), "Back waist": maybe(30, 120) },
  ...{ "Foot length": maybe(20, 70), Calf: maybe(20, 90), "Foot girth": maybe(20, 90) },
});
const traits = fc.record({
  "Hands removable": fc.constantFrom("yes", "no", ""),
  "Head removable": fc.constantFrom("yes", "no", ""),
  Body: fc.constantFrom("soft", "hard", ""),
  Jointed: fc.constantFrom("yes", "no", ""),
});
const lengths = fc.record({
  ...{ "Thickness (mm)": mm(0, 2), "Neck opening": maybe(30, 260), "Cuff opening": maybe(15, 90) },
  ...{ "Hem opening": maybe(15, 400), "Waist opening": maybe(50, 300), "Opening length": mm(5, 150) },
  ...{ Bust: maybe(80, 300), Waist: maybe(70, 300), Hip: maybe(80, 400), "Upper arm": maybe(20, 90) },
  ...{ "Back waist": maybe(30, 120), "Foot length": maybe(20, 80), Calf: maybe(20, 90) },
});
const words = fc.record({
  "Garment class": fc.constantFrom(...new Set(defaultEaseRules.map(({ garmentClass }) => garmentClass))),
  Opens: fc.constantFrom("back", "side", "waist"),
  "Stretch %": fc.integer({ min: 0, max: 120 }).map((percent) => `${String(percent)}%`),
});

const judge = (pattern: Row, body: Row, options = {}): Verdict =>
  matchAll(fittingOf({ G: pattern }, { A: { ...body, "Face width": 50 } }, options)).verdict(0, 0);

const openings = ["Neck opening", "Cuff opening", "Hem opening", "Waist opening", "Opening length"] as const;

// Each run reads a chart and a table of patterns anew.
describe("fit, for any figure and any garment", () => {
  it("a larger opening never makes a verdict worse", () => {
    fc.assert(
      fc.property(
        ...([figure, traits, lengths, words, fc.constantFrom(...openings), mm(0, 200)] as const),
        (readings, like, sizes, said, opening, more) => {
          const before = sizes[opening];
          fc.pre(before !== undefined);
          const body = { ...readings, ...like };
          const pattern = { ...said, ...sizes };
          const larger = { ...pattern, [opening]: (before ?? 0) + more };
          expect(rank[judge(larger, body)]).toBeLessThanOrEqual(rank[judge(pattern, body)]);
        },
      ),
      { numRuns: 250 },
    );
  });

  it("more stretch never makes a clearance smaller, nor a garment tighter", () => {
    fc.assert(
      fc.property(mm(10, 500), mm(10, 500), mm(0, 2), mm(0, 1), (opening, obstacle, stretch, more) => {
        expect(clearance(opening, obstacle, { stretch: stretch + more })).toBeGreaterThanOrEqual(
          clearance(opening, obstacle, { stretch }),
        );
      }),
    );
    fc.assert(
      fc.property(figure, lengths, words, fc.integer({ min: 0, max: 80 }), (readings, sizes, said, more) => {
        const pattern = { ...said, ...sizes };
        const percent = `${String(Number(said["Stretch %"].slice(0, -1)) + more)}%`;
        const stretchier = judge({ ...pattern, "Stretch %": percent }, readings);
        expect(rank[stretchier]).toBeLessThanOrEqual(rank[judge(pattern, readings)]);
      }),
      { numRuns: 200 },
    );
  });

  it("scaling figure, garment, cloth, fixed parts of the rules and reading error changes no verdict", () => {
    fc.assert(
      fc.property(figure, traits, lengths, words, mm(0.25, 12), (readings, like, sizes, said, factor) => {
        const atSize = judge({ ...said, ...sizes }, { ...readings, ...like });
        const scaled = judge(
          { ...said, ...scale(sizes, factor) },
          { ...scale(readings, factor), ...like },
          {
            rules: defaultEaseRules.map((rule) => scaleRule(rule, factor)),
            readingError: { ...usualReadingError, mm: usualReadingError.mm * factor },
          },
        );
        expect(scaled).toBe(atSize);
      }),
      { numRuns: 250 },
    );
  });

  it("the reasons of a pair agree with its verdict, and one of them decides it", () => {
    fc.assert(
      fc.property(figure, traits, lengths, words, (readings, like, sizes, said) => {
        const fitting = fittingOf(
          { G: { ...said, ...sizes } },
          { A: { ...readings, ...like, "Face width": 50 } },
        );
        const explained = explainPair(fitting, 0, 0);
        expect(explained.verdict).toBe(matchAll(fitting).verdict(0, 0));
        const counted = explained.checks.filter(({ counts }) => counts).map((check) => rank[check.verdict]);
        const judged = explained.checks.some(({ kind, counts }) => kind !== "opening" && counts);
        if (judged) expect(rank[explained.verdict]).toBe(Math.max(...counted));
        else expect(rank[explained.verdict]).toBeGreaterThanOrEqual(rank["not known"]);
        if (explained.verdict === "not known" && judged) expect(explained.take.length).toBeGreaterThan(0);
      }),
      { numRuns: 250 },
    );
  });
});

function scale(row: Row, factor: number): Row {
  return Object.fromEntries(
    Object.entries(row).map(([name, cell]) => [name, typeof cell === "number" ? cell * factor : cell]),
  );
}

function scaleRule({ least, most, ...rule }: EaseRule, factor: number): EaseRule {
  const scaled = (amount: EaseAmount): EaseAmount => ({ ...amount, mm: amount.mm * factor });
  return {
    ...rule,
    ...(least ? { least: scaled(least) } : {}),
    ...(most ? { most: scaled(most) } : {}),
  };
}
