import { describe, expect, test } from "vitest";
import { readXlsx } from "../../../addin/workbook/xlsx/readXlsx.ts";
import { handMade } from "./handMade.ts";

async function firstSheet(file: Uint8Array) {
  return (await readXlsx(file)).sheets[0];
}

const data = (rows: string) => `<sheetData>${rows}</sheetData>`;

// What other programs write, after ECMA-376 part 1, 18.3 and 18.5.
describe("reading what other programs write", () => {
  test("text inside cells, text in several letter styles, truth values and errors", async () => {
    const sheet = await firstSheet(
      handMade({
        sheet: data(
          `<row r="2"><c r="B2" t="inlineStr"><is><t xml:space="preserve"> Ada </t></is></c>
           <c r="C2" t="inlineStr"><is><r><t>Wa</t></r><r><rPr><b/></rPr><t>ist</t></r></is></c>
           <c r="D2" t="b"><v>1</v></c><c r="E2" t="e"><v>#DIV/0!</v></c><c r="F2" t="e"><f>1/0</f><v>#DIV/0!</v></c></row>`,
        ),
      }),
    );
    expect(sheet?.cells).toEqual([
      [],
      [
        undefined,
        { value: " Ada " },
        { value: "Waist" },
        { value: true },
        { value: { error: "#DIV/0!" } },
        { value: { error: "#DIV/0!" }, formula: "=1/0" },
      ],
    ]);
  });

  test("formulas that are stored once for the cells filled from them", async () => {
    const sheet = await firstSheet(
      handMade({
        sheet: data(
          `<row r="1"><c r="A1"><v>2</v></c><c r="B1"><f t="shared" ref="B1:B3" si="0">A1*$A$1</f><v>4</v></c></row>
           <row r="2"><c r="A2"><v>3</v></c><c r="B2"><f t="shared" si="0"/><v>6</v></c></row>
           <row r="3"><c r="A3"><v>4</v></c><c r="B3"><f t="shared" si="0"/><v>8</v></c></row>`,
        ),
      }),
    );
    expect(sheet?.cells.map((row) => row[1])).toEqual([
      { value: 4, formula: "=A1*$A$1" },
      { value: 6, formula: "=A2*$A$1" },
      { value: 8, formula: "=A3*$A$1" },
    ]);
  });

  test("array formulas of either kind: the cells that they fill are marked", async () => {
    const sheet = await firstSheet(
      handMade({
        sheet: data(
          `<row r="1"><c r="A1" t="str"><f t="array" ref="A1:B2">_xldudf_FIT_STEPS(Figures[#All])</f><v>Step</v></c><c r="B1" t="str"><v>Waist</v></c></row>
           <row r="2"><c r="A2" t="str"><v>Ada – Bo</v></c><c r="C2"><v>7</v></c></row>
           <row r="3"><c r="A3"><f t="array" ref="A3">_xlfn._xlws.SORT(C2:C2)</f><v>7</v></c></row>`,
        ),
      }),
    );
    expect(sheet?.cells).toEqual([
      [
        { value: "Step", formula: "=FIT.STEPS(Figures[#All])", spill: { rows: 2, columns: 2 } },
        { value: "Waist", spilled: true },
      ],
      [{ value: "Ada – Bo", spilled: true }, undefined, { value: 7 }],
      [{ value: 7, formula: "=SORT(C2:C2)" }],
    ]);
  });

  describe("dates", () => {
    const styles = `<numFmts count="1"><numFmt numFmtId="164" formatCode="d/m/yy"/></numFmts>
      <cellXfs count="3"><xf numFmtId="0"/><xf numFmtId="16"/><xf numFmtId="164"/></cellXfs>`;
    const cells = data(
      `<row r="1"><c r="A1" s="1"><v>60</v></c><c r="B1" s="2"><v>0.25</v></c><c r="C1"><v>45000</v></c></row>`,
    );

    test("stay numbers with their format", async () => {
      expect((await firstSheet(handMade({ sheet: cells, styles })))?.cells).toEqual([
        [{ value: 60, format: "d-mmm" }, { value: 0.25, format: "d/m/yy" }, { value: 45_000 }],
      ]);
    });

    test("counted from 1904 are counted from 1900", async () => {
      // ECMA-376 part 1, 18.17.4.1: 1 January 1904 is 0 in one count and 1462 in the other.
      expect(
        (await firstSheet(handMade({ sheet: cells, styles, properties: 'date1904="1"' })))?.cells,
      ).toEqual([
        [{ value: 1522, format: "d-mmm" }, { value: 1462.25, format: "d/m/yy" }, { value: 45_000 }],
      ]);
    });
  });

  test("a width for the rest of the sheet counts only where there are cells", async () => {
    const cells = data(`<row r="1"><c r="B1"><v>1</v></c></row>`);
    const widths = async (last: number) =>
      (
        await firstSheet(
          handMade({ sheet: `<cols><col min="1" max="${String(last)}" width="10"/></cols>${cells}` }),
        )
      )?.columnWidths;
    expect(await widths(3)).toEqual([70, 70, 70]);
    expect(await widths(16_384)).toEqual([70, 70]);
  });

  test("merged cells keep the value of the first, and it is said", async () => {
    const read = await readXlsx(
      handMade({
        sheet:
          data(
            `<row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>2</v></c></row><row r="2"><c r="A2"><v>3</v></c><c r="C2"><v>4</v></c></row>`,
          ) + `<mergeCells count="1"><mergeCell ref="A1:B2"/></mergeCells>`,
      }),
    );
    expect(read.sheets[0]?.cells).toEqual([[{ value: 1 }], [undefined, undefined, { value: 4 }]]);
    expect(read.leftOut).toEqual([
      "merged cells, which are single cells now, with the text in the first, on sheet “First”",
    ]);
  });

  test("hidden sheets are read, sheets of a chart are not, and both are said", async () => {
    const read = await readXlsx(
      handMade({
        sheet: "<sheetData/>",
        moreSheets: [
          { name: "Chart1", kind: "chartsheet" },
          { name: "Old", state: "hidden" },
        ],
      }),
    );
    expect(read.sheets.map(({ name }) => name)).toEqual(["First", "Old"]);
    expect(read.leftOut).toEqual([
      "that sheet “Old” was hidden: it is shown now",
      "a sheet that holds only a chart or a dialogue",
    ]);
  });

  test("macros, rules for input, links, protection and foreign colours are named as left out", async () => {
    const read = await readXlsx(
      handMade({
        sheet: `${data(`<row r="1" hidden="1"><c r="A1" s="1"><v>1</v></c></row>`)}<sheetProtection sheet="1"/>
          <dataValidations count="1"><dataValidation type="whole" sqref="A1"><formula1>1</formula1><formula2>9</formula2></dataValidation></dataValidations>
          <hyperlinks><hyperlink ref="A1" location="First!B1"/></hyperlinks>`,
        styles: `<fonts count="1"><font/></fonts><fills count="3"><fill/><fill/><fill><patternFill patternType="solid"><fgColor rgb="FF00FF00"/></patternFill></fill></fills>
          <cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="0" fillId="2"/></cellXfs>`,
        parts: { "xl/vbaProject.bin": "x" },
      }),
    );
    expect(read.sheets[0]?.cells).toEqual([[{ value: 1 }]]);
    expect(read.leftOut).toEqual([
      "rules for input on sheet “First”",
      "links, of which the text stays, on sheet “First”",
      "hidden rows or columns, which are shown now, on sheet “First”",
      "the protection against changes on sheet “First”",
      "the macros",
      "some colours, borders and letter styles",
    ]);
  });

  test("a table gives its name, its area without the row of totals, and nothing when it hides its headings", async () => {
    const table = (range: string, more: string) =>
      `<table id="1" name="T" displayName="Figures" ref="${range}" ${more}><tableColumns count="2"><tableColumn id="1" name="Figure"/><tableColumn id="2" name="Waist_x000a_(mm)"/></tableColumns></table>`;
    const rows = data(
      `<row r="2"><c r="B2" t="str"><v>Figure</v></c><c r="C2" t="str"><v>Waist\n(mm)</v></c></row><row r="3"><c r="B3" t="str"><v>Ada</v></c><c r="C3"><v>80</v></c></row><row r="4"><c r="C4"><v>80</v></c></row>`,
    );
    const read = async (range: string, more: string) =>
      (
        await firstSheet(
          handMade({
            sheet: rows,
            parts: { "xl/tables/table1.xml": table(range, more) },
            related: { table: "../tables/table1.xml" },
          }),
        )
      )?.tables;
    expect(await read("B2:C4", 'totalsRowCount="1"')).toEqual([
      { name: "Figures", row: 1, column: 1, rows: 2, columns: 2 },
    ]);
    expect(await read("B3:C4", 'headerRowCount="0"')).toBeUndefined();
  });

  test("a conversation is read as a note, without the line about programs that cannot show it", async () => {
    const sheet = await firstSheet(
      handMade({
        sheet: data(`<row r="1"><c r="A1"><v>1</v></c></row>`),
        parts: {
          "xl/comments1.xml": `<comments><authors><author>tc</author></authors><commentList><comment ref="A1" authorId="0"><text><t>[Threaded comment] Your version is too old</t></text></comment></commentList></comments>`,
          "xl/threadedComments/threadedComment1.xml": `<ThreadedComments><threadedComment ref="A1" id="{1}" personId="{2}"><text>Measure again?</text></threadedComment><threadedComment ref="A1" id="{3}" parentId="{1}" personId="{2}"><text>Done.</text></threadedComment></ThreadedComments>`,
        },
        related: {
          comments: "../comments1.xml",
          threadedComment: "../threadedComments/threadedComment1.xml",
        },
      }),
    );
    expect(sheet?.notes).toEqual([{ row: 0, column: 0, text: "Measure again?\nDone." }]);
  });
});
