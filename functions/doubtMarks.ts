import type { Chart, MeasureColumn } from "../addin/chart/chart.ts";
import { doubtSays, restsOnWords } from "../addin/chart/doubt.ts";
import type { AnswerLine } from "../addin/chart/doubtfulLines.ts";
import { lineDoubts } from "../addin/chart/doubtfulLines.ts";
import { someOf } from "../addin/measures/quote.ts";
import type { Table, Value } from "./descriptor.ts";
import { doubtsBeside } from "./listed.ts";

/** What a table says of some chart, headings first. */
type TableOn = (chart: Chart) => Table;

export interface MarkOptions {
  /** How many first columns tell a row from others. */
  readonly keys: number;
  /** The figures that every row is about, by their places; beside them those that it names. */
  readonly about?: readonly number[];
  /** A column after the keys that is no part of the answer. */
  readonly except?: string;
  /** The measures that count; all where none are given. */
  readonly columns?: readonly MeasureColumn[] | undefined;
  /** True where a row may be another one only because rows before it are: what is doubtful about others is not told then. */
  readonly isInOrder?: boolean;
}

/** The table with a last column Doubtful, where some of its rows rest on doubtful readings. */
export function withDoubts(chart: Chart, tableOn: TableOn, options: MarkOptions): Table {
  const table = tableOn(chart);
  return withMarks(
    table,
    doubtMarks(chart, (on) => (on === chart ? table : tableOn(on)), options),
  );
}

/** A table with a last column Doubtful, where there is anything to say. */
export function withMarks(
  [headings = [], ...rows]: Table,
  marks: readonly string[],
  heading = "Doubtful",
): Table {
  if (marks.every((mark) => mark === "")) return [headings, ...rows];
  return [[...headings, heading], ...rows.map((row, i) => [...row, marks[i] ?? ""])];
}

/** What each row rests on, and what it would be with all doubtful readings mended; a blank or nothing where it rests on sound ones. */
export function doubtMarks(chart: Chart, tableOn: TableOn, options: MarkOptions): readonly string[] {
  const { columns } = options;
  const counts = (at: number) => !columns || columns.some(({ position }) => position === at);
  const doubtful = doubtsBeside(chart).filter(({ cells }) => cells.some(({ column }) => counts(column)));
  const found = lineDoubts(chart, doubtful, (other) => linesOf(chart, tableOn(other), options));
  const figures = new Set(found.flatMap((line) => line?.grounds.flatMap(({ figure }) => figure || []) ?? []));
  const whose = figures.size > 0 ? ` of ${someOf([...figures], 30)}` : "";
  return found.map((line) => {
    if (!line) return "";
    const { grounds, isMended, changes } = line;
    const after = changes
      ? someOf(changes.map(([what, answer]) => `${what} ${answer}`)) || "the same"
      : "no such answer";
    if (grounds.length > 0)
      return `${restsOnWords(grounds.map((doubt) => doubtSays(doubt)))} ${isMended ? "Mended" : "Without"}: ${after}.`;
    return options.isInOrder || changes?.length === 0
      ? ""
      : `If doubtful readings${whose} were mended or left out: ${after}.`;
  });
}

function linesOf(
  chart: Chart,
  [headings = [], ...rows]: Table,
  { keys, about = [], except }: MarkOptions,
): readonly AnswerLine[] {
  const times = new Map<string, number>();
  const placesOf = new Map<Value, number[]>();
  chart.figures.forEach((figure, place) => placesOf.set(figure, [...(placesOf.get(figure) ?? []), place]));
  return rows.map((row) => {
    const named = row.slice(0, keys).join("\n");
    const time = (times.get(named) ?? 0) + 1;
    times.set(named, time);
    return {
      key: `${named}\n${String(time)}`,
      figures: [...about, ...row.flatMap((cell) => placesOf.get(cell) ?? [])],
      answers: headings.flatMap((heading, c) =>
        c < keys || heading === except ? [] : [[String(heading), shortly(row[c] ?? "")] as const],
      ),
    };
  });
}

/** A cell in a sentence. */
function shortly(value: Value): string {
  if (typeof value === "number") return String(Math.round(value * 1000) / 1000);
  return value === ""
    ? "blank"
    : /\W/.test(String(value))
      ? `“${String(value).replace(/\.$/, "")}”`
      : String(value);
}
