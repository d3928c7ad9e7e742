import { describe, expect, it } from "vitest";
import { toGridFormula } from "../../../addin/standalone/grid/gridFormula.ts";

// The long form is the one that workbook files hold: ECMA-376 part 1, 18.17.6.5 (structure references), “#This Row”.
describe("a formula for the grid", () => {
  it.each([
    ["=Figures[@Bust]", "=Figures[[#This Row],[Bust]]"],
    ["=Figures[@[Upper arm (mm)]]*2", "=Figures[[#This Row],[Upper arm (mm)]]*2"],
    ["=[@Bust]-[@Waist]", "=Chart[[#This Row],[Bust]]-Chart[[#This Row],[Waist]]"],
    ["=Figures[@]", "=Figures[#This Row]"],
    ["=FIT.ECHO(Figures[#All])", "=FIT.ECHO(Figures[#All])"],
    ['="a [@Bust] in text"&Figures[Bust]', '="a [@Bust] in text"&Figures[Bust]'],
  ])("%s → %s", (formula, expected) => {
    expect(toGridFormula(formula, "Chart")).toBe(expected);
  });

  it("leaves “this row” without a table alone", () => {
    expect(toGridFormula("=[@Bust]")).toBe("=[@Bust]");
  });
});
