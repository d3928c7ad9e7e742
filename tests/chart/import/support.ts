import { detectDecimalMark } from "../../../addin/chart/import/decimalMark.ts";
import { detectDelimiter } from "../../../addin/chart/import/delimiter.ts";
import { readRows } from "../../../addin/chart/import/rows.ts";
import type { LaidOutSource } from "../../../addin/chart/import/source.ts";
import { detectHeadingRow, layOut } from "../../../addin/chart/import/source.ts";
import { textReader } from "../../../addin/chart/import/texts.ts";
import type { DecimalMark } from "../../../addin/measures/decimal.ts";

/** A text as the import lays it out when nothing is changed by hand. */
export async function laidOutText(
  text: string,
): Promise<{ laidOut: LaidOutSource; decimalMark: DecimalMark | undefined }> {
  const texts = textReader();
  const delimiter = detectDelimiter(text, texts);
  const { rows, numbers } = await readRows(text, { delimiter });
  const laidOut = layOut({ rows, numbers, texts }, detectHeadingRow(rows, texts));
  return { laidOut, decimalMark: detectDecimalMark(rows.slice(1).flat()) };
}
