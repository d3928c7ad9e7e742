import type { Cell } from "../../addin/chart/cell.ts";
import type { SheetContent, WorkbookContent } from "../../addin/workbook/content.ts";

type Rows = readonly (readonly Cell[])[];

/** A sheet of these rows, as a table where it is given a name. */
function sheet(name: string, rows: Rows, table?: string): SheetContent {
  return {
    name,
    cells: rows.map((row) => row.map((value) => ({ value }))),
    ...(table !== undefined && {
      tables: [{ name: table, row: 0, column: 0, rows: rows.length, columns: rows[0]?.length ?? 0 }],
    }),
  };
}

const headings = ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"];

/** Workbooks that people open in good faith, and that hold less, or something else, than a chart and patterns. */
export const workbooks = {
  empty: { sheets: [{ name: "Sheet1", cells: [] }] },
  headingsOnly: { sheets: [sheet("Figures", [headings, [undefined]], "Figures")] },
  oneFigure: { sheets: [sheet("Figures", [headings, ["Quillon", 201, 150, 210]], "Figures")] },
  noPatterns: {
    sheets: [
      sheet(
        "Figures",
        [headings, ["Quillon", 201, 150, 210], ["Quellan", 201, 150, 210], ["Quorn", 140, 105, 150]],
        "Figures",
      ),
    ],
  },
  unknownColumns: {
    sheets: [
      sheet(
        "Figures",
        [
          ["Figure", "Wibble", "Wobble"],
          ["Quillon", 201, 150],
          ["Quellan", 203, 151],
        ],
        "Figures",
      ),
    ],
  },
  twoCharts: {
    sheets: [
      sheet("Small", [headings, ["Quillon", 201, 150, 210], ["Quellan", 201, 150, 210]], "SmallOnes"),
      sheet("Large", [headings, ["Torvald", 401, 300, 420], ["Tarquin", 380, 300, 420]], "LargeOnes"),
    ],
  },
  oneInTheFirst: {
    sheets: [
      sheet("Small", [headings, ["Quillon", 201, 150, 210]], "SmallOnes"),
      sheet("Large", [headings, ["Torvald", 401, 300, 420], ["Tarquin", 380, 300, 420]], "LargeOnes"),
    ],
  },
  otherTableFirst: {
    sheets: [
      sheet(
        "Fabric",
        [
          ["Cloth", "Shop"],
          ["lawn", "Corner shop"],
        ],
        "Fabric",
      ),
      sheet("Dolls", [headings, ["Quillon", 201, 150, 210], ["Quellan", 201, 150, 210]], "Dolls"),
    ],
  },
  anotherKind: {
    sheets: [
      sheet("Fabric", [
        ["Bought", "Shop", "Cloth", "Paid"],
        ["3 May", "Corner shop", "lawn", 12.5],
        ["9 May", "Market", "felt", 4],
      ]),
    ],
  },
} as const satisfies Readonly<Record<string, WorkbookContent>>;
