import { cellText, isBlank } from "../cell.ts";
import { cutShort } from "../../measures/quote.ts";
import type { ImportPlan } from "./importPlan.ts";

/** A reading that cannot be stored as one. */
export interface Refusal {
  /** Indices into the plan’s figures and targets. */
  readonly figure: number;
  readonly target: number;
  readonly text: string;
  readonly reason: string;
}

/** What an import will do, counted before anything is done. */
export interface Survey {
  readonly added: number;
  readonly updated: number;
  readonly skipped: number;
  /** Readings stored where there was nothing, including those of new figures. */
  readonly readings: number;
  /** Cells of the present chart that get another content. */
  readonly changed: number;
  /** Readings not taken: blank, “-”, “n/a”. */
  readonly missing: number;
  readonly refusals: readonly Refusal[];
}

/**
 * Goes through every cell of a plan. Yields now and then with the share done (0 to 1), so that the caller can let
 * the page breathe or stop.
 */
export function* survey(plan: ImportPlan): Generator<number, Survey> {
  const refusals: Refusal[] = [];
  const actions = { add: 0, update: 0, skip: 0 };
  let readings = 0;
  let changed = 0;
  let missing = 0;
  for (const [f, figure] of plan.figures.entries()) {
    actions[figure.action]++;
    if (figure.action !== "skip") {
      for (const [t, target] of plan.targets.entries()) {
        const cell = plan.cell(f, t);
        if (cell.kind === "new" && cell.as === "reading") readings++;
        else if (cell.kind === "changed") changed++;
        else if (cell.kind === "blank" && target.holds === "readings") missing++;
        else if (cell.kind === "refused")
          refusals.push({ figure: f, target: t, text: cell.text, reason: cell.reason });
      }
    }
    if (f % 200 === 199) yield (f + 1) / plan.figures.length;
  }
  return {
    added: actions.add,
    updated: actions.update,
    skipped: actions.skip,
    readings,
    changed,
    missing,
    refusals,
  };
}

/** What the reader should know about the shape of the file, in sentences; empty when there is nothing to say. */
export function shapeRemarks(plan: ImportPlan): readonly string[] {
  const { laidOut, targets, figures, what } = plan;
  const one = what === "figures" ? "figure" : "pattern";
  const bare = targets.filter((t) => laidOut.unheaded.includes(t.from.position)).map((t) => t.from.heading);
  const apart = targets.filter((t) => t.from.repeated);
  const nameless = figures.filter((f) => f.nameless).length;
  const ragged = raggedRows(plan);
  return [
    ...(bare.length > 0
      ? [`${quotedList(bare)} ${bare.length === 1 ? "has" : "have"} no heading in the file.`]
      : []),
    ...apart.map(
      (t) =>
        `“${t.from.heading}” means the same as a column before it. It is kept as “${t.from.name}”, so that no reading is lost.`,
    ),
    ...targets
      .filter((t) => t.from.foreignUnit !== undefined)
      .map(
        (t) =>
          `“${t.from.heading}” is in “${t.from.foreignUnit ?? ""}”, which a ${what === "figures" ? "chart " : ""}column cannot be in. It is taken as ${t.holds === "text" ? "text" : t.from.unit}: give it in mm, cm or in.`,
      ),
    ...(ragged.length > 0
      ? [
          `${count(ragged.length, "row is", "rows are")} shorter or longer than the headings, first row ${String(ragged[0])}. ` +
            "If readings look shifted, choose another separator or decimal mark.",
        ]
      : []),
    ...(laidOut.leftOut.length > 0
      ? [
          `${count(laidOut.leftOut.length, "row is", "rows are")} left out, as ${laidOut.leftOut.length === 1 ? `it is no ${one}` : `they are no ${what}`}: ${laidOut.leftOut
            .slice(0, 4)
            .map(({ begins, number }) => `“${cutShort(begins)}” (row ${String(number)})`)
            .join(", ")}${laidOut.leftOut.length > 4 ? " and more" : ""}.`,
        ]
      : []),
    ...(nameless > 0 ? [`${count(nameless, `${one} has`, `${what} have`)} no name.`] : []),
  ];
}

/** Rows, numbered as in the file, with more cells than headings or fewer. Rows of a worksheet have no length of their own. */
function raggedRows({ laidOut, figures }: ImportPlan): readonly number[] {
  const { rows, numbers, formats } = laidOut.source;
  if (formats) return [];
  const headed = laidOut.headings.findLastIndex((_, c) => !laidOut.unheaded.includes(c)) + 1;
  return figures.flatMap(({ row }) => {
    const cells = rows[row] ?? [];
    const fits = cells.length >= headed && cells.slice(headed).every(isBlank);
    return fits ? [] : [numbers[row] ?? row + 1];
  });
}

/** 1, “row is” → “1 row is”. */
function count(n: number, one: string, many: string): string {
  return `${n.toLocaleString("en-GB")} ${n === 1 ? one : many}`;
}

function quotedList(texts: readonly string[]): string {
  return texts.map((text) => `“${cellText(text)}”`).join(", ");
}
