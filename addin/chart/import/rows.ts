import Papa from "papaparse";
import { InputError } from "../../measures/inputError.ts";
import { spacesToTabs } from "./spaces.ts";

export const delimiters = [",", ";", "\t", "|", " "] as const;

/** What stands between two cells of a row. */
export type Delimiter = (typeof delimiters)[number];

export const delimiterNames: Readonly<Record<Delimiter, string>> = {
  ",": "Comma",
  ";": "Semicolon",
  "\t": "Tab",
  "|": "Upright bar",
  " ": "Spaces",
};

/** Rows of text cells as they stand in a file; rows may differ in length. Blank rows are left out. */
export interface TextRows {
  readonly rows: readonly (readonly string[])[];
  /** Row of the file, from 1, of each of `rows`. Blank rows count; a cell with line breaks is one row. */
  readonly numbers: readonly number[];
  /** Row, from 1, in which a quotation mark is opened and never closed. */
  readonly openQuote?: number;
}

export interface RowReading {
  readonly delimiter: Delimiter;
  /** Called between chunks with the share read (0 to 1); what it returns is awaited, so that the page stays alive. */
  readonly pause?: (share: number) => Promise<void>;
  /** Characters read between two pauses. */
  readonly chunkSize?: number;
  readonly signal?: AbortSignal;
  /** Cells in all, blank ones too, and characters of a cell that are read at most; any number when omitted. */
  readonly most?: { readonly cells: number; readonly text: number };
}

/**
 * A delimited text → rows of cells, after RFC 4180: quoted cells may hold the delimiter, line breaks and doubled
 * quotation marks. Everything arrives as text, formulas too; line breaks inside a cell arrive as line feeds.
 *
 * @throws {InputError} when there are more cells, or longer ones, than may be read
 * @throws the signal’s reason when reading is cancelled
 */
export async function readRows(text: string, reading: RowReading): Promise<TextRows> {
  const { delimiter, pause, chunkSize = 1 << 18, signal, most } = reading;
  const rows: string[][] = [];
  const numbers: number[] = [];
  let read = 0;
  let openQuote: number | undefined;
  let cells = 0;

  await new Promise<void>((resolve, reject) => {
    Papa.parse<string[]>(linesFor(text, delimiter), {
      delimiter: delimiter === " " ? "\t" : delimiter,
      newline: "\n",
      chunkSize,
      chunk: ({ data, errors, meta }: Papa.ParseResult<string[]>, parser: Papa.Parser) => {
        for (const row of data) {
          read++;
          cells += row.length;
          const reason = most && reasonAgainst(row, read, cells, most);
          if (reason !== undefined) {
            reject(new InputError(reason));
            parser.abort();
            return;
          }
          if (row.every((cell) => cell.trim() === "")) continue;
          rows.push(row);
          numbers.push(read);
        }
        if (errors.some((error) => error.code === "MissingQuotes")) openQuote = read;
        if (signal?.aborted) {
          reject(signal.reason);
          parser.abort();
        } else if (pause && meta.cursor < text.length) {
          parser.pause();
          pause(meta.cursor / text.length).then(() => {
            parser.resume();
          }, reject);
        }
      },
      complete: () => {
        resolve();
      },
      error: reject,
    });
  });
  return { rows, numbers, ...(openQuote === undefined ? {} : { openQuote }) };
}

function reasonAgainst(
  row: readonly string[],
  number: number,
  cells: number,
  most: NonNullable<RowReading["most"]>,
): string | undefined {
  if (cells > most.cells)
    return `The file holds more than ${most.cells.toLocaleString("en-GB")} cells, which is more than can be imported. Keep the rows and columns of the chart alone, and import that.`;
  const longest = row.reduce((length, cell) => Math.max(length, cell.length), 0);
  if (longest > most.text)
    return `Row ${number.toLocaleString("en-GB")} holds a text of ${longest.toLocaleString("en-GB")} characters; a cell holds ${most.text.toLocaleString("en-GB")}. A quotation mark that is never closed may be to blame: look for one there.`;
  return undefined;
}

/** The first rows of a text, for telling its delimiter and decimal mark. */
export function firstRows(text: string, delimiter: Delimiter, count: number): readonly string[][] {
  const start = linesFor(text.slice(0, 1 << 18), delimiter);
  const between = delimiter === " " ? "\t" : delimiter;
  return Papa.parse<string[]>(start, {
    delimiter: between,
    newline: "\n",
    preview: count,
    skipEmptyLines: "greedy",
  }).data;
}

function linesFor(text: string, delimiter: Delimiter): string {
  return delimiter === " " ? spacesToTabs(unixLines(text)) : unixLines(text);
}

/** Files that were put together from several hold more than one kind of line break. */
function unixLines(text: string): string {
  return text.includes("\r") ? text.replace(/\r\n?/g, "\n") : text;
}
