import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { starterWorkbook } from "../../../addin/demo/starterWorkbook.ts";
import { lengthUnits } from "../../../addin/measures/units.ts";
import { changedWords } from "../../../addin/workbook/xlsx/leftOutWords.ts";
import { readFormula } from "../../../addin/workbook/xlsx/readFormula.ts";
import { readXlsx } from "../../../addin/workbook/xlsx/readXlsx.ts";
import { shiftFormula } from "../../../addin/workbook/xlsx/shiftFormula.ts";
import { storedFormula, typedFormula } from "../../../addin/workbook/xlsx/storedFormula.ts";
import { writeXlsx } from "../../../addin/workbook/xlsx/writeXlsx.ts";

const book = {
  sheets: ["S", "Sheet1", "FIT.X(", "Jan 2", "Ada's"],
  tables: [{ name: "Figures", headings: ["Figure", "Waist", "Waist (mm)", "Hip", "At [1] #2", "a\nb"] }],
};

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
    // [MS-XLSX], future-function-list: ANCHORARRAY and SINGLE stand for the two signs.
    ["=A4#", "_xlfn.ANCHORARRAY(A4)"],
    ["=SUM(S!$A$4#)/COUNT(B2#)", "SUM(_xlfn.ANCHORARRAY(S!$A$4))/COUNT(_xlfn.ANCHORARRAY(B2))"],
    ["=@A1:A3", "_xlfn.SINGLE(A1:A3)"],
    ["=-@A1:A3*2", "-_xlfn.SINGLE(A1:A3)*2"],
    ['=@A4#&"@A1#"', '_xlfn.SINGLE(_xlfn.ANCHORARRAY(A4))&"@A1#"'],
    ["=@SORT(A1:A3)+@(A1:A3,B2)", "_xlfn.SINGLE(_xlfn._xlws.SORT(A1:A3))+_xlfn.SINGLE((A1:A3,B2))"],
    ["=FIT.LENGTH(@Figures[Waist])", "_xldudf_FIT_LENGTH(_xlfn.SINGLE(Figures[Waist]))"],
    ['=COUNTA(Figures[#Data])&"T[]"', 'COUNTA(Figures[])&"T[]"'],
    ["=SUM('Ada''s'!A1:INDEX(B:B,3) Figures[Hip])", "SUM('Ada''s'!A1:INDEX(B:B,3) Figures[Hip])"],
  ])("%s is stored as %s, and comes back", (typed, stored) => {
    expect(storedFormula(typed, book)).toMatchObject({ formula: stored });
    expect(typedFormula(stored)).toBe(typed);
  });

  test.each([
    ["=Figures[@Waist]", undefined, "Figures[[#This Row],[Waist]]"],
    ["=Figures[@[Waist (mm)]]*2", undefined, "Figures[[#This Row],[Waist (mm)]]*2"],
    ["=[@Hip]-[@Waist]", "Figures", "Figures[[#This Row],[Hip]]-Figures[[#This Row],[Waist]]"],
    ["=SUM([Waist])", "Figures", "SUM(Figures[Waist])"],
    ["=SUM(Figures[@])", undefined, "SUM(Figures[#This Row])"],
    ['=ROWS(Figures)+LEN("Figures")+Figures()', undefined, 'ROWS(Figures[])+LEN("Figures")+Figures()'],
  ])("%s in table %s is written out as %s", (typed, table, stored) => {
    expect(storedFormula(typed, book, table)).toMatchObject({ formula: stored });
  });

  test("our functions come back in capitals, whatever program stored them", () => {
    expect(typedFormula("_xldudf_fit_groups(A1:B2)")).toBe("=FIT.GROUPS(A1:B2)");
  });
});

// ECMA-376 part 1, 18.17.2: what each production allows, by its own examples and their like.
describe("a formula that Excel can parse", () => {
  test.each([
    ...["1", "-1.5E-3%", ".5", '"a ""b"""', "TRUE", "#REF!", '{1,-2;"a",#N/A}', "( ( 1 + 2 ) ) * 3"],
    ...["A1", "$A$1:B$2", "A:C", "$1:3", "Sheet1!A1", "'Jan 2'!A:A", "S:Sheet1!A1", "'S:Sheet1'!A1"],
    ...["A1:B2 B1:B3", "SUM((A1,B2:C3))", "A1 :B2", "INDEX(A:A,1):INDEX(A:A,2)", "2^-1", "A1%%", "-+-1"],
    ...["SUM(A1,,B1)", "RAND()", "IF(A1,,)", "MyName", "rate.2+_x", "UDF(1)(2)", "LAMBDA(x,x+1)(2)"],
    ...[
      "Figures",
      "Figures[]",
      "Figures[Waist]",
      "Figures[[#All],[Waist]:[Hip]]",
      "Figures[ [#Headers], [Hip] ]",
    ],
    ...["Figures[At '[1'] '#2]", "Figures[[a\nb]]", "figures[[#this row],[WAIST]]", "Figures[#Totals]"],
    ...['A1<>"x"', "A1>=1=TRUE", "1+\n 2", "LOG10(100)", "ABC1234567", `${"(".repeat(60)}1${")".repeat(60)}`],
    ...['HYPERLINK("#A1","go")', "SUM(1:1)", "A1#:B2", "XFD1048576", "FIT.GROUPS(Figures[#All])"],
  ])("%s", (formula) => {
    expect(readFormula(formula, book)).toBeTypeOf("object");
  });
});

describe("a formula that Excel cannot parse", () => {
  test.each([
    ["SUM(1,2", "it ends too early"],
    ["", "it ends too early"],
    ["1+", "it ends too early"],
    ["Figures[", "“[” is not expected there"],
    ["1 2", "“2” is not expected there"],
    ["A1)", "“)” is not expected there"],
    ["*1", "“*1” is not expected there"],
    ["A1=>2", "“>2” is not expected there"],
    ['"open', '“"open” is not expected there'],
    ["'open!A1", "“'open!A1” is not expected there"],
    ["1;2", "“;2” is not expected there"],
    ["SUM(1;2)", "“;2)” is not expected there"],
    ["1,2", "“,2” is not expected there"],
    ["(1,2)", "a comma outside of a function joins references only"],
    ["1:A2", "“:” needs a reference on both sides"],
    ["SUM(A1):B2", "“:” needs a reference on both sides"],
    ["1#", "“#” is not expected there"],
    ["SUM(A1)#", "“#” is not expected there"],
    ["#SPILL!", "“#SPILL!” is not expected there"],
    ["{1,2;3}", "the rows of its array differ in length"],
    ["{A1}", "“A1}” is not expected there"],
    ["{}", "“}” is not expected there"],
    ["[@Waist]", "“[@Waist]” is not expected there"],
    ["Nowhere!A1", "there is no sheet “Nowhere”"],
    ["'No where'!A1", "there is no sheet “No where”"],
    ["[1]Sheet1!A1", "it refers to another workbook"],
    ["'C:\\[b.xlsx]S'!A1", "it refers to another workbook"],
    ["Chart[Waist]", "there is no table “Chart”"],
    ["Figures[Bust]", "the table “Figures” has no column “Bust”"],
    ["Figures[[#All],[Bust]]", "the table “Figures” has no column “Bust”"],
    ["Figures[[Waist][Hip]]", "“[[Waist][Hip]]” does not name columns of a table"],
    ["SUM()", "SUM needs more entries in its brackets"],
    ["IF(1,2,3,4)", "IF has too many entries in its brackets"],
    ["_xlfn.XLOOKUP(1,A:A)", "XLOOKUP needs more entries in its brackets"],
    [`SUM(${"1,".repeat(255)}1)`, "SUM has too many entries in its brackets"],
    [`LEN("${"x".repeat(256)}")`, "a text in it has 256 characters, and 255 are allowed"],
    [`${"ABS(".repeat(65)}1${")".repeat(65)}`, "it is nested too deep"],
    ["=1", "“=1” is not expected there"],
  ])("%s: %s", (formula, why) => {
    expect(readFormula(formula, book)).toBe(why);
  });

  test("whatever is typed, an answer comes at once", () => {
    const pieces = [
      "(",
      ")",
      "[",
      "]",
      "{",
      "}",
      "'",
      '"',
      "#",
      "@",
      "!",
      ":",
      ",",
      ";",
      "A1",
      "1",
      "SUM(",
      " ",
      "=",
      "-",
      "%",
      "Figures[",
      "é",
      "𝒳",
    ];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 300 }), (parts) => {
        const read = readFormula(parts.join(""), book);
        expect(typeof read === "string" ? read : "parsed").not.toBe("");
      }),
      { numRuns: 2000 },
    );
    expect(readFormula("(".repeat(8000), book)).toBe("it is nested too deep");
  });
});

describe("a workbook with a formula that Excel cannot parse", () => {
  const content = {
    sheets: [
      {
        name: "S",
        cells: [
          [
            { formula: "=SUM(1,", value: { error: "#ERROR!" } },
            { formula: "=1+1", value: 2 },
          ],
        ],
      },
    ],
  };

  test("has it as text, and the words for it", async () => {
    const { bytes, changed } = await writeXlsx(content);
    expect((await readXlsx(bytes)).sheets[0]?.cells).toEqual([
      [{ value: "=SUM(1," }, { formula: "=1+1", value: 2 }],
    ]);
    expect(changed).toEqual(["the formula in A1 on sheet “S”, which Excel cannot read (it ends too early)"]);
    expect(changedWords(changed)).toBe(
      "Saved as text instead of a formula: the formula in A1 on sheet “S”, which Excel cannot read (it ends too early). Your workbook is as it was; mend it there and save again.",
    );
    expect(changedWords([])).toBeUndefined();
  });

  test("has its last value where only values are written", async () => {
    const { bytes, changed } = await writeXlsx(content, { cells: "values" });
    expect((await readXlsx(bytes)).sheets[0]?.cells).toEqual([
      [{ value: { error: "#VALUE!" } }, { value: 2 }],
    ]);
    expect(changed).toEqual([]);
  });
});

test("every formula of the demo and of the starters is one that Excel can parse", async () => {
  for (const content of [demoWorkbook(), ...lengthUnits.map(starterWorkbook)])
    expect((await writeXlsx(content)).changed).toEqual([]);
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
