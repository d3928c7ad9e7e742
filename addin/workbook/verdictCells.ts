import type { Cell } from "../chart/cell.ts";
import type { CellContent } from "./content.ts";

/** leaf: in order; brass: look here; thread: stops a garment; quiet: nobody can say yet. */
export type VerdictTone = "leaf" | "brass" | "thread" | "quiet";

/** A verdict as a cell holds it, and the sign that is shown before it. */
export interface VerdictLook {
  readonly word: string;
  readonly sign: string;
  readonly tone: VerdictTone;
}

/** From the best to the worst. The pane shows the same. */
export const verdictCells: readonly VerdictLook[] = [
  { word: "fits", sign: "●", tone: "leaf" },
  { word: "snug", sign: "◐", tone: "leaf" },
  { word: "loose", sign: "○", tone: "leaf" },
  { word: "too close to call", sign: "≈", tone: "brass" },
  { word: "not known", sign: "?", tone: "quiet" },
  { word: "too long", sign: "▹", tone: "brass" },
  { word: "too short", sign: "◂", tone: "thread" },
  { word: "too loose", sign: "▽", tone: "brass" },
  { word: "too tight", sign: "▲", tone: "thread" },
  { word: "will not go on", sign: "✕", tone: "thread" },
];

/** Letters on white. Contrast is at least 5:1. */
export const verdictInk: Readonly<Record<VerdictTone, string>> = {
  leaf: "#2C6E49",
  brass: "#8A6100",
  thread: "#B3261E",
  quiet: "#5C6068",
};

/** How a cell of this value is shown among verdicts; `undefined` for anything else. */
export function verdictLook(value: Cell): VerdictLook | undefined {
  return typeof value === "string" ? verdictCells.find(({ word }) => word === value) : undefined;
}

/** Shows the text of a cell after a sign. ECMA-376 part 1, 18.8.31: `@` stands for the text, quotation marks for what is shown as it is. */
export function signedFormat({ sign }: VerdictLook): string {
  return `"${sign} "@`;
}

/** A rectangle of cells; rows and columns from 0. */
export interface Block {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** The rectangles of cells that hold verdicts, as few as rows of the same columns give. */
export function verdictBlocks(cells: readonly (readonly (CellContent | undefined)[])[]): readonly Block[] {
  const done: Block[] = [];
  let open: Block[] = [];
  cells.forEach((cellsOfRow, row) => {
    const found = runsOf(cellsOfRow).map((run): Block => {
      const above = open.find(({ column, columns }) => column === run.column && columns === run.columns);
      return above ? { ...above, rows: above.rows + 1 } : { ...run, row, rows: 1 };
    });
    done.push(
      ...open.filter(
        (block) => !found.some(({ column, row: top }) => column === block.column && top === block.row),
      ),
    );
    open = found;
  });
  return [...done, ...open];
}

function runsOf(cells: readonly (CellContent | undefined)[]): { column: number; columns: number }[] {
  const runs: { column: number; columns: number }[] = [];
  cells.forEach((cell, column) => {
    if (cell?.style !== "verdict") return;
    const last = runs.at(-1);
    if (last && last.column + last.columns === column) last.columns += 1;
    else runs.push({ column, columns: 1 });
  });
  return runs;
}
