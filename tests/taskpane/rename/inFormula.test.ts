import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FormulaPart } from "../../../addin/workbook/formulaParts.ts";
import { formulaParts, quotedText } from "../../../addin/workbook/formulaParts.ts";
import { descriptors } from "../../../functions/all.ts";
import { nameInFormula, renamedInList } from "../../../taskpane/rename/inFormula.ts";
import type { Rename } from "../../../taskpane/rename/renames.ts";

const figure: Rename = { what: "figure", table: "Figures", from: ["Ardwen"], to: "Ardwen II" };
const pattern: Rename = { what: "pattern", table: "Patterns", from: ["D-1"], to: "D-1a" };

const followed = (formula: string, rename = figure, others: readonly string[] = []) => {
  const { renamed, isAsked } = nameInFormula(formula, rename, others);
  return isAsked ? renamed : undefined;
};

describe("a name in a formula", () => {
  it.each([
    ['=FIT.APART(Figures[#All],"Ardwen","Dovelle")', '=FIT.APART(Figures[#All],"Ardwen II","Dovelle")'],
    [
      '=fit.apart(Figures[#All], " aRDWEN ", "Ardwen")',
      '=fit.apart(Figures[#All], "Ardwen II", "Ardwen II")',
    ],
    [
      '=1+SUM(FIT.SHARES(Figures[#All],IF(B2="y","Ardwen","Dovelle"),"Ardwen"))',
      '=1+SUM(FIT.SHARES(Figures[#All],IF(B2="y","Ardwen II","Dovelle"),"Ardwen II"))',
    ],
    [
      '=INDEX(FIT.NEAREST(Figures[#All],"Ardwen"),2,1)&" is like Ardwen"',
      '=INDEX(FIT.NEAREST(Figures[#All],"Ardwen II"),2,1)&" is like Ardwen"',
    ],
    [
      '=FIT.GRADE(A1:F9,"Ardwen","Dovelle; ardwen,Elsin")',
      '=FIT.GRADE(A1:F9,"Ardwen II","Dovelle; Ardwen II,Elsin")',
    ],
    ['=FIT.GRADE(A1:F9,"Elsin",{"Dovelle";"Ardwen"})', '=FIT.GRADE(A1:F9,"Elsin",{"Dovelle";"Ardwen II"})'],
  ])("is followed in %s", (formula, expected) => {
    expect(followed(formula)).toBe(expected);
  });

  it.each([
    "a measure of the same name", '=FIT.EXPECTED(Figures[#All],"Dovelle","Ardwen")',
    "a longer text", '=FIT.APART(Figures[#All],"Ardwen II","Ardwenna")',
    "a pattern of that name", '=FIT.WEARERS(Patterns[#All],Figures[#All],"Ardwen")',
    "a function of the spreadsheet", '=COUNTIF(Figures[Figure],"Ardwen")',
    "a formula without texts", "=FIT.GROUPS(Figures[#All])",
  ].flatMap((what, i, all) => (i % 2 === 0 ? [[what, all[i + 1] ?? ""] as const] : [])))(
    "is not seen in %s",
    (_, formula) => {
      expect(followed(formula)).toBeUndefined();
    },
  ); // prettier-ignore

  it("is left alone where another chart is asked about", () => {
    const formula = '=FIT.APART(Mannequins[#All],"Ardwen","Dovelle")';
    expect(nameInFormula(formula, figure, ["Mannequins"])).toMatchObject({ renamed: undefined });
    expect(
      followed('=FIT.WARDROBE(Patterns[#All],Figures[#All],"Ardwen")', figure, ["Mannequins"]),
    ).toContain('"Ardwen II"');
  });

  it("is told apart as figure and as pattern", () => {
    const formula = '=FIT.REASONS(Patterns[#All],Figures[#All],"X","X")';
    const named = { from: ["X"], to: "Y" };
    expect(followed(formula, { ...figure, ...named })).toBe(
      '=FIT.REASONS(Patterns[#All],Figures[#All],"X","Y")',
    );
    expect(followed(formula, { ...pattern, ...named })).toBe(
      '=FIT.REASONS(Patterns[#All],Figures[#All],"Y","X")',
    );
  });

  it("may hold quotation marks, before and after", () => {
    const rename = { ...figure, from: ['Ada "the Tall"'], to: 'Ada "A" & $1' };
    expect(followed('=FIT.NEAREST(Figures[#All],"ada ""the tall""")', rename)).toBe(
      '=FIT.NEAREST(Figures[#All],"Ada ""A"" & $1")',
    );
  });

  it("in other formulas is told, and not taken for the figure", () => {
    expect(nameInFormula('=XLOOKUP("Ardwen",A1:A9,B1:B9)', figure, [])).toMatchObject({
      renamed: '=XLOOKUP("Ardwen II",A1:A9,B1:B9)',
      isAsked: false,
    });
  });

  it("of several in a row is the last of them", () => {
    const rename = { ...figure, from: ["Ardwen", "Ardwenn"], to: "Arda" };
    expect(followed('=FIT.APART(Figures[#All],"Ardwenn","Ardwen")', rename)).toBe(
      '=FIT.APART(Figures[#All],"Arda","Arda")',
    );
  });

  // Microsoft, “Excel specifications and limits”: 255 characters of text in a formula, 8,192 characters in all.
  it("that does not fit is told with the reason", () => {
    const long = { ...figure, to: "A".repeat(256) };
    expect(nameInFormula('=FIT.NEAREST(A1:B9,"Ardwen")', long, []).closed).toMatch(/255/);
    const full = `=FIT.NEAREST(A1:B9,"Ardwen")${"+1".repeat(4080)}`;
    expect(nameInFormula(full, { ...figure, to: "A".repeat(200) }, []).closed).toMatch(/8,192/);
    const list = nameInFormula('=FIT.GRADE(A1:B9,"Elsin","Ardwen,Dovelle")', { ...figure, to: "A, B" }, []);
    expect(list.closed).toMatch(/commas/);
    expect(
      nameInFormula('=FIT.GRADE(A1:B9,"Elsin","Ardwen")', { ...figure, to: "A, B" }, []).closed,
    ).toBeUndefined();
  });

  it("stands in the arguments that say so, and no other argument is named like them", () => {
    const named = descriptors.flatMap(({ name, parameters }) =>
      parameters
        .filter((each) => each.names !== undefined)
        .map((each) => `${name} ${each.name} ${String(each.names)}`),
    );
    // DELTA compares readings.
    const others = descriptors.filter(({ name }) => name !== "DELTA");
    const alike = others.flatMap(({ name, parameters }) =>
      parameters
        .filter((each) => /^(figure|other|base|target|pattern)$/.test(each.name))
        .map((each) => `${name} ${each.name}`),
    );
    expect(named.map((each) => each.replace(/ \w+$/, ""))).toEqual(alike);
    expect(named).toContain("GRADE target figures");
  });
});

describe("a formula of any texts", () => {
  const text = fc.oneof(
    fc.constantFrom("Ardwen", "ardwen ", "Dovelle", "", '"', "a,b", "(", "Ardwen,"),
    fc.string(),
  );
  const call = fc.tuple(
    fc.constantFrom("FIT.APART", "FIT.NEAREST", "FIT.EXPECTED", "IF", "LEN"),
    fc.array(text, { maxLength: 4 }),
  );

  it("keeps everything but the name, which is the new one in the same places", () => {
    fc.assert(
      fc.property(
        fc.array(call, { minLength: 1, maxLength: 4 }),
        fc.string({ minLength: 1 }),
        (calls, name) => {
          const formula = `=${calls.map(([f, texts]) => `${f}(Figures[#All],${texts.map(quotedText).join(",")})`).join("&")}`;
          const { renamed } = nameInFormula(formula, { ...figure, to: name }, []);
          const before = formulaParts(formula);
          const after = formulaParts(renamed ?? formula);
          const texts = (parts: readonly FormulaPart[]) =>
            parts.map((part) => (part.kind === "text" ? part.text : part.kind));
          const changed = texts(before).map((each, i) =>
            texts(after)[i] === each ? each : [each, texts(after)[i]],
          );
          expect(after.map(({ within }) => within)).toEqual(before.map(({ within }) => within));
          for (const pair of changed)
            if (typeof pair !== "string")
              expect([pair[0]?.trim().toLowerCase(), pair[1]]).toEqual(["ardwen", name]);
          // Outside of the changed texts, not a letter differs.
          const frame = (of: string, parts: readonly FormulaPart[]) =>
            parts
              .toReversed()
              .reduce(
                (rest, part) =>
                  part.kind === "text" ? rest.slice(0, part.start) + rest.slice(part.end) : rest,
                of,
              );
          expect(frame(renamed ?? formula, after)).toBe(frame(formula, before));
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe("a name in a list", () => {
  it("is changed there, and all else stays as it is", () => {
    expect(renamedInList("U-1,  d-1 ;\nD-10", pattern)).toBe("U-1,  D-1a ;\nD-10");
    expect(renamedInList("D-10, D-12", pattern)).toBeUndefined();
  });
});
