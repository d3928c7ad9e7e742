import { readHeading } from "../../measures/heading.ts";
import { headingKey } from "../../measures/headingKey.ts";
import type { DecimalMark } from "../../measures/decimal.ts";
import type { LengthUnit } from "../../measures/units.ts";
import type { Cells } from "../cell.ts";
import { cellText, isBlank } from "../cell.ts";
import { isPercentFormat, toPercent } from "../numberFormat.ts";
import type { PatternKey } from "../patternKeys.ts";
import { columnFor, holdsLengths, keyName, stretchText, usualHeading } from "../patternKeys.ts";
import type { PatternColumns } from "../readPatterns.ts";
import { patternColumns } from "../readPatterns.ts";
import type { ImportColumn } from "./columns.ts";
import type { ImportFigure } from "./figures.ts";
import type { CellReader, ImportPlan, PresentRows, TargetColumn } from "./importPlan.ts";
import { lengthReader, planWith, readPlain } from "./importPlan.ts";
import type { WordKey, Words } from "./patternWords.ts";
import { isWordKey } from "./patternWords.ts";
import type { LaidOutSource } from "./source.ts";

/** The table of patterns that is imported into. Headings alone for one that will be made. */
export interface PresentPatterns {
  readonly cells: Cells;
  /** The unit of lengths in columns that are added. */
  readonly unit: LengthUnit;
}

/** The rows of a table of patterns, and every name that the pattern of each goes by: its code and its title. */
export function presentPatternRows({ cells }: PresentPatterns): PresentRows & {
  readonly names: readonly (readonly string[])[];
} {
  const { code, title } = patternColumns(cells, {});
  const rows = cells.flatMap((row, i) => (i > 0 && !isBlank(row[code.position]) ? [i] : []));
  const textIn = (row: number, at: number | undefined): string =>
    at === undefined ? "" : cellText(cells[row]?.[at]);
  return {
    cells,
    rows,
    names: rows.map((row) => [textIn(row, code.position), textIn(row, title?.position)]),
  };
}

/** A list of patterns without the lines that only head what follows: one cell, where the others have several. */
export function withoutGroupLines(laidOut: LaidOutSource): LaidOutSource {
  const { source, firstRow } = laidOut;
  const filled = source.rows.map((row) => row.filter((cell) => !isBlank(cell)).length);
  const below = filled.slice(firstRow);
  if (below.filter((count) => count > 2).length * 2 <= below.length) return laidOut;
  const isLine = (i: number): boolean => i >= firstRow && filled[i] === 1;
  const keep = <T>(list: readonly T[]): readonly T[] => list.filter((_, i) => !isLine(i));
  return {
    ...laidOut,
    source: {
      ...source,
      rows: keep(source.rows),
      numbers: keep(source.numbers),
      ...(source.formats && { formats: keep(source.formats) }),
    },
    leftOut: [
      ...laidOut.leftOut,
      ...source.rows.flatMap((row, i) =>
        isLine(i)
          ? [{ begins: cellText(row.find((cell) => !isBlank(cell))), number: source.numbers[i] ?? i + 1 }]
          : [],
      ),
    ],
  };
}

/** Puts together where every column of a list of patterns goes and what every cell becomes. Changes nothing. */
export function patternPlanOf(options: {
  readonly laidOut: LaidOutSource;
  readonly columns: readonly ImportColumn[];
  readonly figures: readonly ImportFigure[];
  readonly decimalMark: DecimalMark | undefined;
  readonly present: PresentPatterns;
  readonly words: Words;
}): ImportPlan {
  const { laidOut, columns, figures, decimalMark, present, words } = options;
  const table = patternColumns(present.cells, {});
  const targets = columns.flatMap((column) =>
    column.role === "left out" ? [] : [targetOf(column, table, present)],
  );
  const name = targets.find(({ holds }) => holds === "name");
  // Without a column for it, the name says what the garment is.
  if (name && !targets.some(({ from }) => from.key === "garmentClass"))
    targets.push({ ...targetOf({ ...name.from, key: "garmentClass", role: "text" }, table, present) });
  const { cells, rows } = presentPatternRows(present);
  return planWith({
    what: "patterns",
    ...{ laidOut, targets, figures },
    present: { cells, rows },
    readers: targets.map((target): CellReader => {
      if (target.holds === "readings") return lengthReader(target, laidOut, decimalMark);
      const { key } = target.from;
      if (key === "stretch") return readStretchCell;
      return isWordKey(key) ? wordReader(key, words, laidOut, name?.from.position) : readPlain;
    }),
  });
}

function targetOf(from: ImportColumn, table: PatternColumns, present: PresentPatterns): TargetColumn {
  const { key } = from;
  const found = key && columnFor(table, key);
  const holds =
    from.role === "figure"
      ? "name"
      : key
        ? holdsLengths(key)
          ? "readings"
          : "text"
        : from.role === "text"
          ? "text"
          : "readings";
  const unit = found?.heading.unit ?? present.unit;
  if (key || from.role === "figure") {
    const named: PatternKey = key ?? "code";
    const column = found ?? columnFor(table, named);
    return {
      ...{ from, holds, unit },
      position: column?.position,
      heading: column?.written ?? usualHeading(named, unit),
    };
  }
  const own = headingKey(readHeading(from.name, "mm").name);
  const at =
    present.cells[0]?.findIndex((cell) => headingKey(readHeading(cellText(cell), "mm").name) === own) ?? -1;
  const written = cellText(present.cells[0]?.[at]);
  return {
    ...{ from, holds },
    unit: at < 0 ? unit : readHeading(written, unit).unit,
    position: at < 0 ? undefined : at,
    heading: at < 0 ? (holds === "text" ? from.name : `${from.name} (${unit})`) : written,
  };
}

function wordReader(
  key: WordKey,
  words: Words,
  { source }: LaidOutSource,
  name: number | undefined,
): CellReader {
  return (cell, _, row) => {
    // A garment that is left blank may be told by the name.
    const said =
      cellText(cell) ||
      (key === "garmentClass" && name !== undefined ? cellText(source.rows[row]?.[name]) : "");
    if (said === "") return { kind: "missing" };
    const meaning = words.meaningOf(key, said);
    if ("reason" in meaning) return { kind: "refused", reason: meaning.reason };
    return meaning.value === "" ? { kind: "missing" } : { kind: "value", value: meaning.value, as: "text" };
  };
}

const readStretchCell: CellReader = (cell, format) => {
  if (isBlank(cell) || /^[-–—?]$/u.test(cellText(cell))) return { kind: "missing" };
  const isShare = typeof cell === "number" && format !== undefined && isPercentFormat(format);
  const text = isShare ? `${String(toPercent(cell))}%` : cellText(cell).replace(/\s+(?=%)/gu, "");
  return { kind: "value", value: stretchText(text), as: "text" };
};

/** A word of the list, how often it stands there, and what it means. */
export interface FoundWord {
  readonly key: WordKey;
  /** “Garment class” */
  readonly column: string;
  readonly text: string;
  readonly times: number;
  /** What is written for it; undefined where it is not understood. */
  readonly value: string | undefined;
  /** True where nothing but the user can tell. */
  readonly isAsked: boolean;
}

/** The words of the columns that have a list to choose from, each once: those that are asked about first. */
export function wordsFound({ laidOut, targets, figures }: ImportPlan, words: Words): readonly FoundWord[] {
  const found = new Map<string, FoundWord>();
  const name = targets.find(({ holds }) => holds === "name")?.from.position;
  for (const { from } of targets) {
    const { key } = from;
    if (!isWordKey(key)) continue;
    for (const { row } of figures) {
      const cells = laidOut.source.rows[row] ?? [];
      const text =
        cellText(cells[from.position]) ||
        (key === "garmentClass" && name !== undefined ? cellText(cells[name]) : "");
      if (text === "") continue;
      const id = `${key} ${text.toLowerCase()}`;
      const meaning = words.meaningOf(key, text);
      const value = "value" in meaning ? meaning.value : undefined;
      found.set(id, {
        ...{ key, text, value, column: keyName(key) },
        times: (found.get(id)?.times ?? 0) + 1,
        isAsked: words.isAsked(key, text),
      });
    }
  }
  return [...found.values()].sort((a, b) => Number(b.isAsked) - Number(a.isAsked));
}
