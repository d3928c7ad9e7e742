import type { Cell } from "../../addin/chart/cell.ts";
import { cellText, isBlank } from "../../addin/chart/cell.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { Edit } from "../../addin/workbook/port.ts";
import { count } from "../ui/words.ts";
import type { Writing } from "../shell/writing.ts";
import type { FiguresToGroup } from "./readGroups.ts";
import { sizesOf } from "./words.ts";

/** The heading that is offered first. */
export const groupHeading = "Group";

const alone = "alone";
const isGroupWord = /^(group \d+|alone)$/iu;

/**
 * Plans a column of the chart with the group of each figure, as words: numbers would count as readings. A column of that
 * heading is brought up to date, and the preview says what is lost there.
 *
 * @throws {InputError} when the heading is empty or stands over names or readings
 */
export function planColumn(figures: FiguresToGroup, groupOf: Int32Array, wanted: string): Writing {
  const { table, data, chart } = figures;
  const heading = wanted.trim();
  if (heading === "") throw new InputError("The column needs a heading. Write one, such as Group.");
  const words = groupWordsByRow(figures, groupOf);
  const groups = sizesOf(groupOf).filter((size) => size > 1).length;
  const written = `${groups === 0 ? "" : `“Group 1”${groups === 1 ? "" : ` to “Group ${String(groups)}”`}, and `}“${alone}” for figures by themselves`;
  const label = `Write the groups to the column ${heading}`;
  const done = `The column “${heading}” of the table ${table.name} holds the groups.`;
  const { sheet, row, column } = data.area;
  const headed = (place: number): Writing["at"] => ({ sheet, row, column: column + place });
  const at = table.headings.findIndex((each) => sameName(each, heading));
  if (at < 0) {
    const values = data.values.slice(1).map((_, i) => words.get(i + 1));
    return {
      label,
      preview: `Adds the column “${heading}” at the right of the table ${table.name}: ${written}. Nothing else changes.`,
      done,
      at: headed(table.headings.length),
      edits: () => [{ kind: "column", table: table.name, heading, values }],
    };
  }
  if (at === 0 || chart.measures.some(({ position }) => position === at)) {
    throw new InputError(
      `“${heading}” heads the ${at === 0 ? "names of the figures" : "readings of a measure"}. Write another heading, such as ${groupHeading}.`,
    );
  }
  const before = (row: number): Cell => data.values[row]?.[at];
  const changes = [...words].filter(([row, word]) => cellText(before(row)) !== word);
  const lost = changes.filter(([row]) => !isBlank(before(row)) && !isGroupWord.test(cellText(before(row))));
  return {
    label,
    preview: `${previewOf(changes, heading, table.name, before)}${lostWords(lost, before)}`,
    done,
    at: headed(at),
    isDone: changes.length === 0,
    edits: () =>
      changes.map(([row, value]): Edit => ({
        kind: "cells",
        at: { sheet: data.area.sheet, row: data.area.row + row, column: data.area.column + at },
        cells: [[{ value }]],
      })),
  };
}

type Change = readonly [row: number, word: string];

function previewOf(
  changes: readonly Change[],
  heading: string,
  table: string,
  before: (row: number) => Cell,
): string {
  const [first] = changes;
  const place = `the column “${heading}” of the table ${table}`;
  if (!first) return `The groups stand in ${place} already.`;
  const was = isBlank(before(first[0])) ? "an empty cell" : `“${cellText(before(first[0]))}”`;
  return `Changes ${count(changes.length, "cell")} in ${place}; the first from ${was} to “${first[1]}”.`;
}

function lostWords(lost: readonly Change[], before: (row: number) => Cell): string {
  const [first] = lost;
  if (!first) return "";
  return ` Take care: ${count(lost.length, "cell holds", "cells hold")} something else than a group, such as “${cellText(before(first[0]))}”, which is written over. To keep it, write another heading.`;
}

/** “Group 3”, or “alone”, by row of the table from 0. */
function groupWordsByRow({ chart }: FiguresToGroup, groupOf: Int32Array): ReadonlyMap<number, string> {
  const sizes = sizesOf(groupOf);
  return new Map(
    chart.rows.map((row, figure) => {
      const group = groupOf[figure] ?? 0;
      return [row, (sizes[group - 1] ?? 0) > 1 ? `Group ${String(group)}` : alone];
    }),
  );
}
