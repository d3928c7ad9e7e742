import { workbookContract } from "../contract.ts";
import { openExcel } from "./openExcel.ts";

workbookContract("the adapter for Excel", (content) => Promise.resolve(openExcel(content).workbook));

// Without notes (1.18), without one undo step for one action (1.20), without word of who made a change (1.14).
workbookContract("the adapter for an older Excel", (content) =>
  Promise.resolve(openExcel(content, 9).workbook),
);
