/** What stands in the first cell of the demo, by which it is known. */
export const demoTitle = "Measure Book: a workbook to try things in";
