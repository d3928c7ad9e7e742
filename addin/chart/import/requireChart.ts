import { InputError } from "../../measures/inputError.ts";
import type { ImportColumn } from "./columns.ts";
import type { LaidOutSource } from "./source.ts";
import type { ImportFigure } from "./figures.ts";

/**
 * Refuses what has no chart in it.
 *
 * @param name what the rows came from, for the message
 * @throws {InputError} for no rows, headings without figures, one column only, or no readings
 */
export function requireChart(
  name: string,
  laidOut: LaidOutSource,
  columns: readonly ImportColumn[],
  figures: readonly ImportFigure[],
): void {
  requireRows(name, laidOut, columns, figures, "figure");
  if (!columns.some((column) => column.role === "measure" || column.role === "own"))
    throw new InputError(
      `No column of ${name} is taken for a measure. Say below what the columns hold, or which row has the headings.`,
    );
}

/**
 * Refuses what has no rows under headings in it.
 *
 * @param what a row is
 * @throws {InputError} for no rows, headings without rows, one column only
 */
export function requireRows(
  name: string,
  laidOut: LaidOutSource,
  columns: readonly ImportColumn[],
  figures: readonly ImportFigure[],
  what: "figure" | "pattern",
): void {
  if (laidOut.source.rows.length === 0)
    throw new InputError(
      `${name} holds nothing but blank rows. Choose another file, or paste the ${what === "figure" ? "chart" : "list"}.`,
    );
  if (figures.length === 0)
    throw new InputError(
      `${name} has headings (${laidOut.headings.slice(0, 3).join(", ")} …) but no ${what} below them.`,
    );
  if (columns.length < 2)
    throw new InputError(
      `${name} has only one column, “${laidOut.headings[0] ?? ""}”. If there should be more, choose another separator.`,
    );
}
