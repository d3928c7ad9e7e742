import { describe, expect, test } from "vitest";
import { shiftFormula } from "../../../addin/workbook/xlsx/shiftFormula.ts";
import { storedFormula, typedFormula } from "../../../addin/workbook/xlsx/storedFormula.ts";

describe("a formula in a file", () => {
  test.each([
    ["=FIT.GROUPS(Figures[#All])", "_xldudf_FIT_GROUPS(Figures[#All])"],
    ['=FIT.LENGTH("FIT.TAPE(1)","mm")', '_xldudf_FIT_LENGTH("FIT.TAPE(1)","mm")'],
    ["=1+FIT.TAPE(FIT.LENGTH(A2))", "1+_xldudf_FIT_TAPE(_xldudf_FIT_LENGTH(A2))"],
    ["='FIT.X('!A1", "'FIT.X('!A1"],
    ["=SUM(Figures[Waist (mm)])", "SUM(Figures[Waist (mm)])"],
    // Names after [MS-XLSX], future-function-list.
    [
      "=IFNA(XLOOKUP(A1,B:B,C:C),STDEV.S(D1:D9))",
      "_xlfn.IFNA(_xlfn.XLOOKUP(A1,B:B,C:C),_xlfn.STDEV.S(D1:D9))",
    ],
    [
      "=SORT(UNIQUE(FILTER(A1:A9,B1:B9>2)))",
      "_xlfn._xlws.SORT(_xlfn.UNIQUE(_xlfn._xlws.FILTER(A1:A9,B1:B9>2)))",
    ],
    ["=LET(x,FIT.LENGTH(A1),x*x)", "_xlfn.LET(_xlpm.x,_xldudf_FIT_LENGTH(A1),_xlpm.x*_xlpm.x)"],
    [
      '=MAP(A1:A3,LAMBDA(v,IF(v>1,"v",v)))',
      '_xlfn.MAP(A1:A3,_xlfn.LAMBDA(_xlpm.v,IF(_xlpm.v>1,"v",_xlpm.v)))',
    ],
  ])("%s is stored as %s, and comes back", (typed, stored) => {
    expect(storedFormula(typed)).toBe(stored);
    expect(typedFormula(stored)).toBe(typed);
  });

  test.each([
    ["=Figures[@Waist]", undefined, "Figures[[#This Row],[Waist]]"],
    ["=Figures[@[Waist (mm)]]*2", undefined, "Figures[[#This Row],[Waist (mm)]]*2"],
    ["=[@Hip]-[@Waist]", "Figures", "Figures[[#This Row],[Hip]]-Figures[[#This Row],[Waist]]"],
    ["=SUM([Waist])", "Figures", "SUM(Figures[Waist])"],
    ["=SUM(Figures[@])", undefined, "SUM(Figures[#This Row])"],
  ])("%s in table %s is written out as %s", (typed, table, stored) => {
    expect(storedFormula(typed, table)).toBe(stored);
  });

  test("our functions come back in capitals, whatever program stored them", () => {
    expect(typedFormula("_xldudf_fit_groups(A1:B2)")).toBe("=FIT.GROUPS(A1:B2)");
  });
});

describe("a formula filled down", () => {
  test.each([
    ["A1+$A1+A$1+$A$1", 2, 1, "B3+$A3+B$1+$A$1"],
    ['IF(A1="A1",LOG10(B2),Sheet1!C3)', 1, 0, 'IF(A2="A1",LOG10(B3),Sheet1!C4)'],
    ["SUM('Jan 2'!A1:B2)", 1, 1, "SUM('Jan 2'!B2:C3)"],
    ["SUM(A:B)+SUM(3:$5)", 1, 1, "SUM(B:C)+SUM(4:$5)"],
    ["Figures[[#This Row],[A1]]+Z9", 1, 1, "Figures[[#This Row],[A1]]+AA10"],
    ["A1", -1, 0, "#REF!"],
    ["1E5+rate.A1+XFE1", 1, 1, "1E5+rate.A1+XFE1"],
  ])("%s, %i down and %i to the right, is %s", (formula, rows, columns, moved) => {
    expect(shiftFormula(formula, rows, columns)).toBe(moved);
  });
});
