import { demoWorkbook } from "../../demo/demoWorkbook.ts";
import { starterWorkbook } from "../../demo/starterWorkbook.ts";
import { lengthUnits, type LengthUnit } from "../../measures/units.ts";
import type { WorkbookContent } from "../../workbook/content.ts";
import { writeXlsx, type WriteOptions } from "../../workbook/xlsx/writeXlsx.ts";
import { calculated } from "./calculate.ts";

/** A workbook to be handed out as a file. */
export interface WorkbookFile {
  readonly name: string;
  /** What it is, as a sentence. */
  readonly says: string;
  readonly content: WorkbookContent;
  readonly options: WriteOptions;
}

const unitNames: Readonly<Record<LengthUnit, string>> = {
  mm: "millimetres",
  cm: "centimetres",
  in: "inches",
};

/** Empty books to begin with, and the demo. Who measures in inches prints on letter paper, others on A4. */
export function workbookFiles(): readonly WorkbookFile[] {
  const demo = calculated(demoWorkbook());
  return [
    ...lengthUnits.map((unit): WorkbookFile => ({
      name: `measure-book-starter-${unit}.xlsx`,
      says: `A book to fill in, in ${unitNames[unit]}.`,
      content: starterWorkbook(unit),
      options: { paper: unit === "in" ? "letter" : "a4" },
    })),
    {
      name: "measure-book-demo.xlsx",
      says: "The demo, for Excel with Measure Book.",
      content: demo,
      options: { paper: "a4" },
    },
    {
      name: "measure-book-demo-values.xlsx",
      says: "The demo with results in the place of formulas, for every spreadsheet program.",
      content: demo,
      options: { paper: "a4", cells: "values" },
    },
  ];
}

/** The bytes of each file by name. */
export async function writtenWorkbooks(): Promise<ReadonlyMap<string, Uint8Array>> {
  const files = workbookFiles().map(async ({ name, content, options }) => {
    const { bytes } = await writeXlsx(content, options);
    return [name, bytes] as const;
  });
  return new Map(await Promise.all(files));
}
