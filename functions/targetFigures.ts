import { cellText, isBlank, isCellError } from "../addin/chart/cell.ts";
import type { Chart } from "../addin/chart/chart.ts";
import { figureIndex, figureKey } from "../addin/chart/find.ts";
import { InputError } from "../addin/measures/inputError.ts";
import { quote } from "../addin/measures/quote.ts";
import type { Parameter } from "./arguments.ts";
import { range, toCells } from "./arguments.ts";

/**
 * One figure or several, still to be found in the chart of the same call: a range of names, or one text with commas. A name
 * of the chart that has a comma itself is one name.
 */
export function targetFigures(help: string): Parameter<(chart: Chart) => readonly number[]> {
  return {
    ...range(help, (cells, name) => {
      const failed = cells.flat().find(isCellError);
      if (failed)
        throw new InputError(`${name}: the cell holds the error ${failed.error}. Mend that cell first.`);
      const written = cells
        .flat()
        // As in the names of a chart: some hosts pass 0 for an empty cell.
        .filter((cell) => !isBlank(cell) && cell !== 0)
        .map(cellText);
      return (chart: Chart) => rowsOf(chart, written);
    }),
    names: "figures",
    isBlank: (raw) => toCells(raw).every((row) => row.every(isBlank)),
  };
}

function rowsOf(chart: Chart, written: readonly string[]): readonly number[] {
  const names = new Set(chart.figures.map(figureKey));
  const wanted = written.flatMap((text) => (names.has(figureKey(text)) ? [text] : split(text)));
  if (wanted.length === 0)
    throw new InputError("target: no figure is named. Name one of the chart, or several.");
  const rows = wanted.map((name) => figureIndex(chart, name));
  const twice = wanted.find((_, i) => rows.indexOf(rows[i] ?? -1) < i);
  if (twice === undefined) return rows;
  throw new InputError(`${quote(twice)} is among the targets twice. Name it once.`);
}

function split(text: string): readonly string[] {
  const parts = text.split(/[,;]/u).map((part) => part.trim());
  return parts.length > 1 ? parts.filter((part) => part !== "") : [text];
}
