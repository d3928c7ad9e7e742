import { readHeading } from "../../measures/heading.ts";
import { headingKey } from "../../measures/headingKey.ts";
import type { DecimalMark } from "../../measures/decimal.ts";
import type { LengthUnit } from "../../measures/units.ts";
import type { Cells } from "../cell.ts";
import { cellText, isBlank } from "../cell.ts";
import { isPercentFormat, toPercent } from "../numberFormat.ts";
import type { PatternKey } from "../patternKeys.ts";
import { bodyMeasure, columnFor, holdsLengths, keyName, stretchText, usualHeading } from "../patternKeys.ts";
import type { PatternColumns } from "../readPatterns.ts";
import { patternColumns } from "../readPatterns.ts";
import { bodyMeasureOf, bodyReader } from "./bodyMeasures.ts";
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

/** For whom a pattern may be drafted that names no figure, by the body that it is to fit. */
export interface FigureOffer {
  /** That body: “bust 181 mm, waist 134 mm”. */
  readonly text: string;
  /** The figure; undefined where the user has to choose, `""` where the cell stays empty. */
  readonly value: string | undefined;
  /** How near the figure is, or why it has to be chosen. */
  readonly says: string;
  /** True where its readings do not leave just one. */
  readonly isAsked: boolean;
  /** The figures of the chart, nearest first, the first of them with how near each is. */
  readonly choices: readonly { readonly value: string; readonly says?: string }[];
}

/** What is offered for a row of the source; undefined for a row that tells nothing of a body. */
export type FigureOffers = (row: number) => FigureOffer | undefined;

/** Puts together where every column of a list of patterns goes and what every cell becomes. Changes nothing. */
export function patternPlanOf(options: {
  readonly laidOut: LaidOutSource;
  readonly columns: readonly ImportColumn[];
  readonly figures: readonly ImportFigure[];
  readonly decimalMark: DecimalMark | undefined;
  readonly present: PresentPatterns;
  readonly words: Words;
  readonly offers: FigureOffers;
}): ImportPlan {
  const { laidOut, columns, figures, decimalMark, present, words, offers } = options;
  const table = patternColumns(present.cells, {});
  const targets = columns.flatMap((column) =>
    column.role === "left out" ? [] : [targetOf(column, table, present)],
  );
  const name = targets.find(({ holds }) => holds === "name");
  // Without a column for it, the name says what the garment is.
  if (name && !targets.some(({ from }) => from.key === "garmentClass"))
    targets.push({ ...targetOf({ ...name.from, key: "garmentClass", role: "text" }, table, present) });
  const isFor = ({ from }: TargetColumn): boolean => from.key === "draftedFor";
  if (name && !targets.some(isFor) && figures.some(({ row }) => offers(row)))
    targets.push(targetOf(nowhere("draftedFor", name.from), table, present));
  const { cells, rows } = presentPatternRows(present);
  return planWith({
    what: "patterns",
    ...{ laidOut, targets, figures },
    present: { cells, rows },
    readers: targets.map((target): CellReader => {
      const { key } = target.from;
      if (target.holds === "readings")
        return (isBody(key) ? bodyReader : lengthReader)(target, laidOut, decimalMark);
      if (key === "stretch") return readStretchCell;
      if (!isWordKey(key)) return readPlain;
      const read = wordReader(key, words, laidOut, name?.from.position);
      return key === "draftedFor" ? orOffered(read, offers) : read;
    }),
  });
}

function isBody(key: PatternKey | undefined): boolean {
  return key !== undefined && bodyMeasure(key) !== undefined;
}

/** A column that the list does not have. */
function nowhere(key: PatternKey, name: ImportColumn): ImportColumn {
  return { ...name, key, role: "text", position: -1, heading: keyName(key), name: keyName(key), example: "" };
}

/** A figure for rows that name none. */
function orOffered(read: CellReader, offers: FigureOffers): CellReader {
  return (cell, format, row) => {
    const offer = isBlank(cell) ? offers(row) : undefined;
    if (!offer) return read(cell, format, row);
    const { value, says } = offer;
    return value ? { kind: "value", value, as: "text", says } : { kind: "missing", says };
  };
}

/** The column of the table that holds a measure of the body, which the table itself does not read. */
function bodyColumn(
  key: PatternKey,
  present: PresentPatterns,
): Pick<TargetColumn, "position" | "heading" | "unit"> {
  const id = bodyMeasure(key);
  const headings = (present.cells[0] ?? []).map((cell) => readHeading(cellText(cell), present.unit));
  const at = headings.findIndex(({ name }) => bodyMeasureOf(name)?.id === id);
  return at < 0
    ? { position: undefined, heading: usualHeading(key, present.unit), unit: present.unit }
    : { position: at, heading: cellText(present.cells[0]?.[at]), unit: headings[at]?.unit ?? present.unit };
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
  if (key && isBody(key)) return { from, holds, ...bodyColumn(key, present) };
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
  /** Set where the text is a body that patterns are to fit. */
  readonly offer?: FigureOffer;
}

/** The words of the columns that have a list to choose from, each once: those that are asked about first. */
export function wordsFound(
  { laidOut, targets, figures }: ImportPlan,
  words: Words,
  offers: FigureOffers,
): readonly FoundWord[] {
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
      if (text === "") {
        const offer = key === "draftedFor" ? offers(row) : undefined;
        if (offer) {
          const times = (found.get(offer.text)?.times ?? 0) + 1;
          found.set(offer.text, {
            ...offer,
            key,
            times,
            offer,
            column: `${keyName(key)}, by what it is to fit`,
          });
        }
        continue;
      }
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
