import { BooleanNumber, BorderStyleTypes } from "@univerjs/core";
import { RangeThemeStyle } from "@univerjs/sheets";

/** The grid gives tables the look of this name when it opens a workbook, so ours takes its place. */
export const tableLookName = "table-default-0";

const line = { s: BorderStyleTypes.THIN, cl: { rgb: "#D9D3C5" } };

/** Tables on muslin: a quiet ground for headings, and a thin line under every row. */
export function tableLook(): RangeThemeStyle {
  return new RangeThemeStyle(tableLookName, {
    wholeStyle: { bd: { t: line, b: line, l: line, r: line } },
    headerRowStyle: { bg: { rgb: "#F4F0E6" }, cl: { rgb: "#26292E" }, bl: BooleanNumber.TRUE },
    firstRowStyle: { bg: { rgb: "#FFFFFF" } },
    secondRowStyle: { bg: { rgb: "#FBF9F4" } },
  });
}
