import Papa from "papaparse";

export const delimiters = [",", ";", "\t", "|"] as const;

/** What stands between two cells of a row. */
export type Delimiter = (typeof delimiters)[number];

export const delimiterNames: Readonly<Record<Delimiter, string>> = {
  ",": "Comma",
  ";": "Semicolon",
  "\t": "Tab",
  "|": "Upright bar",
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
}

/**
 * A delimited text → rows of cells, after RFC 4180: quoted cells may hold the delimiter, line breaks and doubled
 * quotation marks. Everything arrives as text, formulas too; line breaks inside a cell arrive as line feeds.
 *
 * @throws the signal’s reason when reading is cancelled
 */
export async function readRows(text: string, reading: RowReading): Promise<TextRows> {
  const { delimiter, pause, chunkSize = 1 << 18, signal } = reading;
  const rows: string[][] = [];
  const numbers: number[] = [];
  let read = 0;
  let openQuote: number | undefined;

  await new Promise<void>((resolve, reject) => {
    Papa.parse<string[]>(unixLines(text), {
      delimiter,
      newline: "\n",
      chunkSize,
      chunk: ({ data, errors, meta }: Papa.ParseResult<string[]>, parser: Papa.Parser) => {
        for (const row of data) {
          read++;
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

/** The first rows of a text, for telling its delimiter and decimal mark. */
export function firstRows(text: string, delimiter: Delimiter, count: number): readonly string[][] {
  const start = unixLines(text.slice(0, 1 << 18));
  return Papa.parse<string[]>(start, { delimiter, newline: "\n", preview: count, skipEmptyLines: "greedy" })
    .data;
}

/** Files that were put together from several hold more than one kind of line break. */
function unixLines(text: string): string {
  return text.includes("\r") ? text.replace(/\r\n?/g, "\n") : text;
}
