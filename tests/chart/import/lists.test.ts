import { describe, expect, test } from "vitest";
import { matchColumns } from "../../../addin/chart/import/columns.ts";
import { detectDelimiter } from "../../../addin/chart/import/delimiter.ts";
import { spacesToTabs } from "../../../addin/chart/import/spaces.ts";
import { laidOutText } from "./support.ts";

async function read(text: string) {
  const { laidOut, decimalMark } = await laidOutText(text);
  const columns = matchColumns(laidOut, { decimalMark });
  return {
    laidOut,
    headings: laidOut.headings,
    units: columns.map(({ unit }) => unit),
    figures: laidOut.source.rows.slice(laidOut.firstRow),
  };
}

describe("a list copied from a printed page", () => {
  const single = [
    "Name Bust Waist Hip Back waist length",
    "Orla 7 1/8 5 1/4 7 5/8 3 1/2",
    "Little Brack 5 4 5 1/2 -",
    'Culver 9 1/2" 7 1/4" 10" 4" with her wig',
  ].join("\n");

  test("with single spaces is parted by what it means", async () => {
    expect(detectDelimiter(single)).toBe(" ");
    const { headings, figures } = await read(single);
    expect(headings.slice(0, 5)).toEqual(["Name", "Bust", "Waist", "Hip", "Back waist length"]);
    expect(figures).toEqual([
      ["Orla", "7 1/8", "5 1/4", "7 5/8", "3 1/2"],
      ["Little Brack", "5", "4", "5 1/2", "-"],
      ["Culver", '9 1/2"', '7 1/4"', '10"', '4"', "with her wig"],
    ]);
  });

  test("with wide gaps is parted there", () => {
    expect(spacesToTabs("Name      Bust (mm)   Waist\nOrla the second   181,5   133")).toBe(
      "Name\tBust (mm)\tWaist\nOrla the second\t181,5\t133",
    );
  });

  test("with decimal commas is no file with commas between the cells", () => {
    expect(detectDelimiter("Name Bust Waist\nOrla 181,5 133,2\nBrack 127,0 101,6")).toBe(" ");
  });

  test("and other separators stay what they are", () => {
    expect(detectDelimiter("Name,Bust,Waist\nOrla the first,181,133")).toBe(",");
    expect(detectDelimiter("Name\tBust\tWaist\nOrla the first\t181\t")).toBe("\t");
    expect(detectDelimiter("Name;Bust;Waist\nOrla;181,5;133,0")).toBe(";");
  });
});

describe("headings over two rows", () => {
  test("with units in a row of their own give each column its unit", async () => {
    const { headings, units, figures } = await read("Name,Bust,Waist,Hip\n,mm,in,(cm)\nOrla,181,5 1/4,19.4");
    expect(headings).toEqual(["Name", "Bust (mm)", "Waist (in)", "Hip (cm)"]);
    expect(units.slice(1)).toEqual(["mm", "in", "cm"]);
    expect(figures).toEqual([["Orla", "181", "5 1/4", "19.4"]]);
  });

  test("of which the first column has no unit still has its heading", async () => {
    const { laidOut } = await read("Name,Bust,Waist\n,cm,cm\nOrla,18.1,13.3");
    expect(laidOut.unheaded).toEqual([]);
    expect((await read("Name,Bust,\n,cm,\nOrla,18.1,her wig")).laidOut.unheaded).toEqual([2]);
  });

  test("are read together where that names a measure", async () => {
    const { headings, figures } = await read(
      ["Name,Upper arm,,Waist,Bust", ",girth,length,girth,girth", "Orla,50,60,133,181"].join("\n"),
    );
    expect(headings).toEqual(["Name", "Upper arm girth", "Upper arm length", "Waist girth", "Bust girth"]);
    expect(figures).toEqual([["Orla", "50", "60", "133", "181"]]);
  });

  test("are not made of a figure whose readings are missing", async () => {
    const { figures } = await read("Name,Maker,Bust,Waist\nOrla,own,,\nBrack,own,127,101");
    expect(figures.map(([name]) => name)).toEqual(["Orla", "Brack"]);
    const marks = await read("Name,Bust,Waist\nOrla,-,n/a\nBrack,127,101");
    expect(marks.figures.map(([name]) => name)).toEqual(["Orla", "Brack"]);
  });
});

describe("a list with German headings", () => {
  test("is read as one with English headings, sums and notes left out", async () => {
    const { laidOut, units, figures } = await read(
      [
        "Liste vom Frühjahr;;;;",
        "Puppe;Größe;Kopfumfang;Hüfte;Fußlänge",
        ";cm;cm;cm;cm",
        ...["Anouk;42,5;18,2;20,3;5,1", "Bertil;42,3;18,3;20,2;5,1"],
        ...["Mittelwert;42,4;18,25;20,25;5,1", "Anmerkung: ohne Perücke;;;;"],
      ].join("\n"),
    );
    const columns = matchColumns(laidOut, { decimalMark: "," });
    expect(columns.map(({ role, name }) => (role === "measure" ? name : role))).toEqual([
      ...["figure", "Height", "Head girth", "Hip girth", "Foot length"],
    ]);
    expect(units.slice(1)).toEqual(["cm", "cm", "cm", "cm"]);
    expect(figures.map(([name]) => name)).toEqual(["Anouk", "Bertil"]);
  });
});

describe("rows that are no figures", () => {
  test("are left out and named: sums, notes and the headings once more", async () => {
    const { figures, laidOut } = await read(
      [
        ...["Name,Bust,Waist", "Orla,181,133", "", "Name,Bust,Waist", "Max,127,101", "Average,154,117"],
        ...["* over her underwear,,", "Note: measured twice,,"],
      ].join("\n"),
    );
    expect(figures.map(([name]) => name)).toEqual(["Orla", "Max"]);
    expect(laidOut.leftOut).toEqual([
      { begins: "Name", number: 4 },
      { begins: "Average", number: 6 },
      { begins: "* over her underwear", number: 7 },
      { begins: "Note: measured twice", number: 8 },
    ]);
  });
});

describe("a list from a sheet that was not made for this", () => {
  const rows = [
    "\tMy dolls\t\t\t\t",
    "\tName\tBust\tHips\tPrice\tRemarks",
    "\t\tin\tcm\t€\t",
    "\tMirabel\t7 1/8\t19,4\t210\twig removed",
    "\tMirabeth\t7.125\t19.4\t215\t",
    "\tAverage\t7.1\t19.4\t\t",
    "\tTansy\t5\t13,6\t140\t",
    "\tTeasel\t\t\t\t",
    "\tMean\t6\t17\t\t",
    "\t* over the stocking\t\t\t\t",
    "\tAll measured with the narrow tape.\t\t\t\t",
  ].join("\n");

  test("has its figures read, units from their row, both decimal marks, and nothing of what stands around", async () => {
    const { laidOut, decimalMark } = await laidOutText(rows);
    const columns = matchColumns(laidOut, { decimalMark });
    expect(columns.map(({ heading, role, unit }) => [heading, role, unit]).slice(0, 5)).toEqual([
      ["Column A", "left out", "mm"],
      ["Name", "figure", "mm"],
      ["Bust (in)", "measure", "in"],
      ["Hips (cm)", "measure", "cm"],
      ["Price (€)", "text", "mm"],
    ]);
    const names = laidOut.source.rows.slice(laidOut.firstRow).map((row) => row[1]);
    expect(names).toEqual(["Mirabel", "Mirabeth", "Tansy", "Teasel"]);
    expect(laidOut.leftOut.map(({ begins }) => begins)).toEqual([
      ...["Average", "Mean", "* over the stocking", "All measured with the narrow tape."],
    ]);
    expect(decimalMark).toBeUndefined();
  });
});
