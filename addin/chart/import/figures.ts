import { cellText, isBlank } from "../cell.ts";
import { figureKey } from "../find.ts";
import type { LaidOutSource } from "./source.ts";

/** What to do with a figure that is there already. */
export const twinChoices = ["skip", "update", "keep both"] as const;
export type TwinChoice = (typeof twinChoices)[number];

/** One figure of the file, or one pattern of a list of patterns. */
export interface ImportFigure {
  /** Index into the source’s rows. */
  readonly row: number;
  /** Name in the chart; differs from the file’s where both are kept, or where the file has none. */
  readonly name: string;
  /** True when the file gives none. */
  readonly nameless: boolean;
  /** Set when the same name stands in the chart already, or in an earlier row of the file. */
  readonly twin?: "in the chart" | "in the file";
  readonly action: "add" | "update" | "skip";
  /** For `"update"`: index of the figure in the present chart, or of an earlier figure of this list. */
  readonly target?:
    | { readonly in: "the chart"; readonly figure: number }
    | { readonly in: "the file"; readonly figure: number };
}

export interface TwinChoices {
  /** For figures that are in the chart already. */
  readonly inChart: TwinChoice;
  /** For figures that the file itself holds twice. */
  readonly inFile: TwinChoice;
  /** For single figures, by index of the source row; goes before the two above. */
  readonly byRow?: ReadonlyMap<number, TwinChoice>;
}

/**
 * What becomes of each figure of the file. Names are the same when they differ in letter case and spacing only.
 *
 * @param nameColumn column of the file that holds the figure names
 * @param present names of the figures in the present chart, each by all the names that it goes by
 * @param what they are called in names for those that have none
 */
export function decideFigures(
  laidOut: LaidOutSource,
  nameColumn: number,
  present: readonly (string | readonly string[])[],
  choices: TwinChoices,
  what = "Figure",
): readonly ImportFigure[] {
  const taken = new Map<string, NonNullable<ImportFigure["target"]>>();
  present.forEach((names, figure) => {
    for (const name of [names].flat())
      if (name !== "" && !taken.has(figureKey(name))) taken.set(figureKey(name), { in: "the chart", figure });
  });
  const figures: ImportFigure[] = [];
  for (let row = laidOut.firstRow; row < laidOut.source.rows.length; row++) {
    const cells = laidOut.source.rows[row] ?? [];
    if (cells.every(isBlank)) continue;
    const written = cellText(cells[nameColumn]).replace(/\s+/g, " ");
    const nameless = written === "";
    const name = nameless
      ? `${what} without a name (row ${String(laidOut.source.numbers[row] ?? row + 1)})`
      : written;
    const target = taken.get(figureKey(name));
    const figure: ImportFigure = target
      ? decideTwin({ row, name, nameless, action: "add" }, target, choices, (other) =>
          taken.has(figureKey(other)),
        )
      : { row, name, nameless, action: "add" };
    figures.push(figure);
    if (figure.action === "add")
      taken.set(figureKey(figure.name), { in: "the file", figure: figures.length - 1 });
  }
  return figures;
}

function decideTwin(
  figure: ImportFigure,
  target: NonNullable<ImportFigure["target"]>,
  choices: TwinChoices,
  isTaken: (name: string) => boolean,
): ImportFigure {
  const inChart = target.in === "the chart";
  const twin = inChart ? "in the chart" : "in the file";
  switch (choices.byRow?.get(figure.row) ?? (inChart ? choices.inChart : choices.inFile)) {
    case "skip":
      return { ...figure, twin, action: "skip" };
    case "update":
      return { ...figure, twin, action: "update", target };
    case "keep both":
      return { ...figure, twin, name: freeName(figure.name, isTaken) };
  }
}

function freeName(name: string, isTaken: (name: string) => boolean): string {
  let count = 2;
  while (isTaken(`${name} (${String(count)})`)) count++;
  return `${name} (${String(count)})`;
}
