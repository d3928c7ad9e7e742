import type { WorkbookContent } from "../../../addin/workbook/content.ts";

/** Something of everything that a workbook can hold. */
export const everyKind: WorkbookContent = {
  sheets: [
    {
      name: "Chart & notes",
      cells: [
        [{ value: "Chart", style: "title" }],
        [{ value: "<quiet> & 'small'", style: "quiet" }],
        [
          { value: "Figure", style: "heading" },
          { value: "Waist\n(mm)", style: "heading" },
          { value: "waist\n(MM)" },
          { value: 5 },
        ],
        [{ value: "Ada" }, { value: 80.1, format: "0.0", style: "marked" }, { value: true }, undefined],
        [{ value: "=1+1" }, { value: 1 / 3 }, { value: "#N/A" }, { value: { error: "#N/A" } }],
        [{ value: 12, formula: "=[@[Waist\n(mm)]]*2" }],
      ],
      tables: [{ name: "Figures", row: 2, column: 0, rows: 4, columns: 5 }],
      notes: [
        { row: 3, column: 1, text: " twice " },
        { row: 9, column: 6, text: "alone" },
      ],
      frozenRows: 3,
      frozenColumns: 1,
      columnWidths: [150, undefined, 80],
      pickLists: [
        { row: 3, column: 2, rows: 9, columns: 1, from: ["yes", "no & more", '5" wide'] },
        { row: 3, column: 1, rows: 2, columns: 2, from: { table: "figures", heading: "Figure" } },
      ],
    },
    {
      name: "Groups",
      cells: [
        [
          { value: "Figure", formula: "=FIT.GROUPS(Figures[#All])", spill: { rows: 2, columns: 2 } },
          { value: "Group", spilled: true },
        ],
        [
          { value: "Ada", spilled: true },
          { value: 1, spilled: true },
        ],
        [{ value: { error: "#N/A" }, formula: '=FIT.APART(Figures[#All],"x")' }],
        [{ value: "", formula: '=IF(A1="","","")' }],
        [{ value: "Ada" }, { value: "too tight", style: "verdict" }, { value: "fits", style: "verdict" }],
        [{ value: "Bela" }, { value: "snug", style: "verdict" }, { style: "verdict" }],
      ],
      notes: [{ row: 0, column: 0, text: "Groups" }],
      tables: [{ name: "Empty", row: 9, column: 0, rows: 1, columns: 1 }],
    },
  ],
};
