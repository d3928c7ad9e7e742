import { describe, expect, it } from "vitest";
import type { FormulaPart } from "../../addin/workbook/formulaParts.ts";
import { formulaParts, quotedText } from "../../addin/workbook/formulaParts.ts";

/** Each text with the innermost argument that it stands in: `Ada in FIT.APART 1`. */
const texts = (formula: string) =>
  formulaParts(formula).flatMap((part) =>
    part.kind === "text" ? [`${part.text} in ${part.within.map(argumentWords).join(", ") || "none"}`] : [],
  );
const what = (part: FormulaPart) => ({ ...part, within: undefined });
const argumentWords = ({ name, argument }: FormulaPart["within"][number]) => `${name} ${String(argument)}`;

// Grammar: ECMA-376 part 1, 18.17.2; structure references: [MS-XLSX] 2.2.2.
describe("the parts of a formula", () => {
  it("are its texts, each with the arguments that it stands in", () => {
    expect(texts('=fit.apart(Figures[#All],"Ada", IF(A1>0,"Bela","Caro"))&"Dora"')).toEqual([
      "Ada in FIT.APART 1",
      "Bela in IF 1, FIT.APART 2",
      "Caro in IF 2, FIT.APART 2",
      "Dora in none",
    ]);
  });

  it("count commas of their own call alone", () => {
    expect(
      texts('=FIT.GRADE(Figures[[#All],[Figure]:[Bust]],(A1,B2),{"Ada","Bela";"x,y","z"},"a,b")'),
    ).toEqual([
      "Ada in FIT.GRADE 2",
      "Bela in FIT.GRADE 2",
      "x,y in FIT.GRADE 2",
      "z in FIT.GRADE 2",
      "a,b in FIT.GRADE 3",
    ]);
  });

  it("have doubled quotation marks once, and places that cut the text out", () => {
    const formula = '=FIT.NEAREST(\'A "B" sheet\'!A1:C9,"Ada ""the Tall""")';
    const [part] = formulaParts(formula).filter(({ kind }) => kind === "text");
    expect(part).toMatchObject({ text: 'Ada "the Tall"' });
    if (part?.kind !== "text") throw new Error("There is no text.");
    expect(formula.slice(part.start, part.end)).toBe('"Ada ""the Tall"""');
    expect(quotedText(part.text)).toBe('"Ada ""the Tall"""');
  });

  it("are the cells that it names, on which sheet", () => {
    expect(formulaParts("=F(B3,$C$4:A2,'It''s'!D5,Fit!AA10#)+LOG10(7)").map(what)).toEqual([
      { kind: "area", sheet: undefined, row: 2, column: 1, rows: 1, columns: 1 },
      { kind: "area", sheet: undefined, row: 1, column: 0, rows: 3, columns: 3 },
      { kind: "area", sheet: "It's", row: 4, column: 3, rows: 1, columns: 1 },
      { kind: "area", sheet: "Fit", row: 9, column: 26, rows: 1, columns: 1 },
    ]);
  });

  it("are the tables that it names, with their columns", () => {
    expect(
      formulaParts("=F(Figures[#All],[@Figure],T[[#This Row],[Drafted for]],T[[A]:[C]],T['#x])").map(what),
    ).toEqual([
      { kind: "table", table: "Figures", columns: [], isThisRow: false },
      { kind: "table", table: undefined, columns: ["Figure"], isThisRow: true },
      { kind: "table", table: "T", columns: ["Drafted for"], isThisRow: true },
      { kind: "table", table: "T", columns: ["A", "C"], isThisRow: false },
      { kind: "table", table: "T", columns: ["#x"], isThisRow: false },
    ]);
  });

  it("take no names of functions, numbers or half-typed ends for cells", () => {
    expect(formulaParts('=LOG10(1E5)+ATAN2(1,2)+FIT.X("half')).toEqual([]);
  });
});
