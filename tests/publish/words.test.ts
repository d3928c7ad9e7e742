import { describe, expect, it } from "vitest";
import { defaultGarmentClasses } from "../../addin/chart/garmentClass.ts";
import { verdicts } from "../../addin/fit/verdict.ts";
import type { Cells } from "../../addin/chart/cell.ts";
import { measures } from "../../addin/measures/dictionary.ts";
import { usualShareOfHeight } from "../../addin/measures/usualShareOfHeight.ts";
import { english } from "../../addin/publish/words/english.ts";
import { german } from "../../addin/publish/words/german.ts";
import { fromTables, published } from "./published.ts";

const openings = ["neck", "waist", "narrowest", "sleeve", "wrist", "hem", "leg", "ankle"] as const;

describe("the words of the buyers", () => {
  it("name every measure, with how to take it, in both languages", () => {
    for (const { id } of measures) {
      for (const words of [english, german]) {
        expect(words.measure(id) ?? "", id).not.toBe("");
        expect(words.howToTake(id) ?? "", id).not.toBe("");
      }
      expect(german.measure(id)).not.toBe(english.measure(id));
    }
    const terms = measures.map(({ id }) => german.measure(id));
    expect(new Set(terms).size).toBe(terms.length);
  });

  it("name every garment class, verdict and obstacle in German", () => {
    for (const { name } of defaultGarmentClasses) expect(german.garmentClass(name), name).not.toBe(name);
    for (const verdict of verdicts) expect(german.verdicts[verdict]).not.toBe(english.verdicts[verdict]);
    for (const place of openings)
      for (const passes of [
        "headGirth",
        "neckGirth",
        "handGirth",
        "wristGirth",
        "heelGirth",
        "footGirth",
        "ankleGirth",
        "hipGirth",
        "bustGirth",
        "shoulderGirth",
      ])
        expect(
          german.reason({ kind: "opening", place, passes, verdict: "will not go on", by: undefined }),
        ).not.toMatch(/Körper/u);
  });

  // DIN EN 13402-1:2001, as public pages about the standard list its terms.
  it("use the terms of the standard for the measures that it names", () => {
    const terms = {
      headGirth: "Kopfumfang",
      neckGirth: "Halsumfang",
      bustGirth: "Brustumfang",
      underBustGirth: "Unterbrustumfang",
      waistGirth: "Taillenumfang",
      hipGirth: "Hüftumfang",
      handGirth: "Handumfang",
    };
    for (const [id, term] of Object.entries(terms)) expect(german.measure(id)).toBe(term);
  });

  it("leave no English in what is worked out for the demo", () => {
    const { patterns, bodies, rounded, cautions, columns, rows } = published({
      language: "German",
    }).published;
    const said = [
      ...patterns.flatMap(({ garment, answers }) => [garment, ...answers.map(({ says }) => says)]),
      ...bodies,
      rounded,
      ...cautions,
      ...columns.map(({ term }) => term),
      ...rows.flatMap(({ cells }) => cells.map(({ remark }) => remark)),
    ].join("\n");
    expect(said).not.toMatch(/\b(the|and|girth|length|too|not|by|measure|opening|small|larger|is)\b/u);
    expect(said).not.toMatch(/\d\.\d/u);
    expect(said).toMatch(/\d,\d\u00a0mm \/ \S+\u00a0Zoll zu eng/u);
  });

  it("call the parts of every class of garment as sewers do, whatever is wrong with it", () => {
    const said = wordsOfAllClasses();
    expect(said.size).toBe(2 * defaultGarmentClasses.length);
    const inHips = /\b(leg|legs|sleeves?|wrist)\b|[Bb]ein|Ärmel/u;
    const forbidden: Readonly<Record<string, RegExp>> = {
      "upper body": /\b(legs?|ankle|waist opening)\b|[Bb]ein|Taillenöffnung/u,
      "whole body": /\b(legs?|ankle|waist opening)\b|[Bb]ein|Taillenöffnung/u,
      hips: inHips,
      "hips and legs": /\b(hem|sleeves?|at the hem)\b|Saum|Ärmel/u,
      "body and legs": /\b(hem|at the hem|waist opening)\b|Saum|Taillenöffnung/u,
      arm: /\bhem\b|leg opening|Beinöffnung|Saum/u,
      leg: /\b(hem|sleeves?)\b|leg opening|Beinöffnung|Saum|Ärmel/u,
      foot: /\b(hem|sleeves?)\b|leg opening|Beinöffnung|Saum|Ärmel/u,
      hand: /\b(sleeves?|hem)\b|Saum|Ärmel/u,
      head: /\b(hem|sleeves?)\b|leg opening|Beinöffnung|Saum|Ärmel/u,
    };
    for (const { name, wornOn } of defaultGarmentClasses)
      for (const language of ["English", "German"] as const) {
        const texts = said.get(`${language} ${name}`) ?? [];
        expect(texts.length, name).toBeGreaterThan(0);
        for (const text of texts) {
          expect(text, `${language}, ${name}`).not.toMatch(forbidden[wornOn]!);
          // What does not go on is too small first; no amount stands before a verb.
          expect(text, name).not.toMatch(/will not go on by|(mm|Zoll|in) (lässt|will not)/u);
          expect(text, name).not.toMatch(/undefined|NaN|girth: too|[a-z][A-Z]/u);
        }
      }
  });
});

/** What is said of each class where all that its garments may measure is far too small, a little off, or far too large. */
function wordsOfAllClasses(): ReadonlyMap<string, readonly string[]> {
  const known = measures.filter(({ id }) => usualShareOfHeight[id] !== undefined);
  const mm = (id: string, factor = 1): number => Math.round(400 * (usualShareOfHeight[id] ?? 0) * factor);
  const figures: Cells = [
    ["Figure", ...known.map(({ name }) => `${name} (mm)`), "Heel height (mm)"],
    ["Ada", ...known.map(({ id }) => mm(id)), 10],
    ["Bea", ...known.map(({ id }) => mm(id, 1.08)), 12],
    ["Cleo", ...known.map(({ id }) => (id.endsWith("Girth") ? undefined : mm(id))), 10],
  ];
  const finished = known.filter(({ id }) => id !== "height");
  const patterns: Cells = [
    [
      ...["Pattern", "Garment class", "Neck opening (mm)", "Cuff opening (mm)", "Hem opening (mm)"],
      ...["Waist opening (mm)", "Length (mm)", "Ends at"],
      ...finished.map(({ name }) => `Finished ${name.toLowerCase()} (mm)`),
      "Finished heel height (mm)",
    ],
    ...defaultGarmentClasses.flatMap(({ name, wornOn }, at) =>
      [0.6, 0.97, 1.06, 1.6].map((factor) => [
        `${String(at)}-${String(factor)}`,
        name,
        ...["headGirth", "handGirth", "heelGirth", "hipGirth"].map((id) => mm(id, factor)),
        wornOn === "hips" || wornOn === "whole body" ? mm("outsideLeg", factor) : undefined,
        wornOn === "hips" || wornOn === "whole body" ? "knee" : undefined,
        ...finished.map(({ id }) => mm(id, factor)),
        10 * factor,
      ]),
    ),
  ];
  const said = new Map<string, readonly string[]>();
  for (const language of ["English", "German"] as const) {
    const given = { ...fromTables(figures, patterns), flags: [] };
    const work = published({ language, sharedRows: false }, given);
    for (const pattern of work.published.patterns) {
      const { name } = defaultGarmentClasses[Number(pattern.code.split("-")[0])]!;
      const texts = pattern.answers.flatMap(({ says, gist }) => [says, gist]).filter((text) => text !== "");
      const key = `${language} ${name}`;
      said.set(key, [...(said.get(key) ?? []), ...texts]);
    }
  }
  return said;
}
