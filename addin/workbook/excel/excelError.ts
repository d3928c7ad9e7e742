import { InputError } from "../../measures/inputError.ts";

/** What Excel’s refusals mean for somebody at the sheet, by the codes that Office.js documents. */
const remedies: Readonly<Record<string, string>> = {
  InvalidOperationInCellEditMode: "A cell is still being edited. Press Enter to finish it, then try again.",
  AccessDenied: "The sheet is protected. Take its protection off under Review, then try again.",
  InvalidSelection: "Several blocks of cells are selected. Select one block, then try again.",
  ItemNotFound: "A sheet or table is no longer there. Look whether it was renamed or deleted.",
  ItemAlreadyExists: "The name is taken already. Choose another name.",
  InsertDeleteConflict:
    "Cells next to the table cannot be moved out of the way. Clear any filter, and move what stands below or beside the table.",
  FilteredRangeConflict: "The rows are filtered. Clear the filter, then try again.",
  MergedRangeConflict: "Merged cells are in the way. Unmerge them, then try again.",
  NonBlankCellOffSheet: "Filled cells would be pushed off the sheet. Clear the last rows or columns.",
  PivotTableRangeConflict: "A PivotTable is in the way. Move it, then try again.",
  UnsupportedSheet: "This kind of sheet holds no cells. Go to a sheet with cells, then try again.",
  RequestAborted: "Excel broke off. Try again.",
  ServiceNotAvailable: "Excel’s service cannot be reached. Try again in a while.",
  Conflict: "Somebody else changed the same cells. Try again.",
};

const formulaRefused =
  "Excel does not take a formula that was to be written. It may name a table or column that was renamed meanwhile: look at the tables, then try again.";

/** A refusal of Excel’s as something that the user can mend; any other error passes as it is. */
export function inWords(error: unknown): Error {
  const code = codeOf(error);
  const remedy = code === undefined ? undefined : isFormulaRefused(error) ? formulaRefused : remedies[code];
  if (remedy !== undefined) return new InputError(remedy, code === "ItemNotFound" ? "absent" : "value");
  const says = error instanceof Error ? error : new Error(String(error));
  return code === undefined ? says : new InputError(`Excel could not do it. It says: “${says.message}”`);
}

/** True for what the user can mend; other failures may be those of a way of doing it, and another way may work. */
export function isMendable(error: unknown): boolean {
  const code = codeOf(error);
  return code === undefined ? error instanceof InputError : code in remedies;
}

/** Excel tells by `debugInfo.errorLocation` which member refused. */
function isFormulaRefused(error: unknown): boolean {
  if (codeOf(error) !== "InvalidArgument" || typeof error !== "object" || error === null) return false;
  const info = "debugInfo" in error ? error.debugInfo : undefined;
  const location =
    typeof info === "object" && info !== null && "errorLocation" in info ? info.errorLocation : undefined;
  return typeof location === "string" && location.startsWith("Range.formulas");
}

/** The code of an error of Office.js. */
export function codeOf(error: unknown): string | undefined {
  return typeof error === "object" && error !== null && "code" in error && typeof error.code === "string"
    ? error.code
    : undefined;
}
