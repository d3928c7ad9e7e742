/** The text of the first cell of the demo: drawn, it says that the grid is. */
export const firstText = "Measure Book: a workbook to try things in";
