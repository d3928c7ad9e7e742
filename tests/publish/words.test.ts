import { describe, expect, it } from "vitest";
import { defaultGarmentClasses, openingPlaces } from "../../addin/chart/garmentClass.ts";
import { verdicts } from "../../addin/fit/verdict.ts";
import { measures } from "../../addin/measures/dictionary.ts";
import { english } from "../../addin/publish/words/english.ts";
import { german } from "../../addin/publish/words/german.ts";
import { published } from "./published.ts";

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
    for (const place of openingPlaces)
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
});
