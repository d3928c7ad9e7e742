/** The error values that every file may hold. Source: ECMA-376 part 1, 18.17.3 (error values). */
const storable = new Set([
  "#NULL!",
  "#DIV/0!",
  "#VALUE!",
  "#REF!",
  "#NAME?",
  "#NUM!",
  "#N/A",
  "#GETTING_DATA",
]);

export function isStorableError(error: string): boolean {
  return storable.has(error);
}

/** Marks the error value that a formula gave last, since the writer knows only numbers, text and truth values. */
const mark = "\uE000";

export function errorMark(error: string): string {
  return mark + (isStorableError(error) ? error : "#VALUE!");
}

/** Turns marked text in a sheet’s XML into error values. */
export function errorsUnmarked(sheetXml: string): string {
  return sheetXml.replace(new RegExp(` t="str">(<f[^>]*>[^<]*</f><v>)${mark}(?=#)`, "g"), ' t="e">$1');
}
