import { workbookContract } from "../contract.ts";
import { openExcel } from "./openExcel.ts";

workbookContract("the adapter for Excel", (content) => Promise.resolve(openExcel(content).workbook));

// Each of the sets 1.x that the adapter asks for at run time, just missed and just met.
// Without notes (1.18), without one undo step for one action (1.20), without word of who made a change (1.14).
workbookContract("the adapter for an older Excel", (content) =>
  Promise.resolve(openExcel(content, 13).workbook),
);
// Also without resizing tables (1.13): the least that the manifest asks for.
workbookContract("the adapter for the oldest Excel", (content) =>
  Promise.resolve(openExcel(content, 10).workbook),
);
