import { InputError } from "../../measures/inputError.ts";
import { download } from "../../../taskpane/drawing/download.ts";
import type { NotCalculated } from "../../workbook/keptFormula.ts";
import { notCalculatedWords } from "../../workbook/keptFormula.ts";
import { cellName } from "../../workbook/address.ts";
import type { LostHeading } from "../grid/followHeadings.ts";
import type { BesideTable } from "../grid/tendTables.ts";
import type { SetAside } from "../storage/bookStore.ts";
import type { Book } from "../storage/books.ts";
import { StorageError } from "../storage/records.ts";
import { columnLetters } from "../../chart/columnLetters.ts";

/** What the page tells the user, with what can be done about it. */
export interface PageNotice {
  readonly id: string;
  readonly kind: "done" | "look" | "failed";
  readonly text: string;
  readonly actions?: readonly { readonly label: string; readonly run: () => void }[];
  /** It tells the result of what the user has just done, so the keyboard goes on there. */
  readonly isResult?: boolean;
}

/** @param instead the book that is open in its place, and from when its save is; `undefined` for the demo */
export function setAsideNotice(
  aside: SetAside,
  instead: { readonly book: Book; readonly savedAt: number } | undefined,
): PageNotice {
  const open = !instead
    ? "The demo is open instead."
    : instead.book.name === aside.name
      ? `The save before it is open instead, from ${when(instead.savedAt)}.`
      : `“${instead.book.name}” is open instead.`;
  return {
    id: aside.key,
    kind: "failed",
    text: `What was kept last of “${aside.name}” is damaged and cannot be opened. Nothing was thrown away: it is set aside, in Books. ${open}`,
    ...(aside.text !== "" && {
      actions: [
        {
          label: "Download the damaged save",
          run: () => {
            downloadAside(aside);
          },
        },
      ],
    }),
  };
}

export function downloadAside({ name, text }: SetAside): void {
  download(`${fileNameFor(name)} (damaged).json`, text, "application/json");
}

export function notOpenedNotice(book: Book, open: () => void): PageNotice {
  return {
    id: "unfinished",
    kind: "look",
    text: `“${book.name}” was not opened: the last times, the page stopped while it opened. It is kept as it is, in Books.`,
    actions: [{ label: "Open it all the same", run: open }],
  };
}

export function newVersionNotice(use: () => void): PageNotice {
  return {
    id: "version",
    kind: "look",
    text: "A new version of Measure Book is ready. Your workbook is kept before the page is loaded again.",
    actions: [{ label: "Use it now", run: use }],
  };
}

/** A formula was typed, pasted or filled that is not calculated. */
export function keptAsTextNotice(formula: string, why: NotCalculated): PageNotice {
  const shown = formula.length > 60 ? `${formula.slice(0, 60)} …` : formula;
  const reason =
    why === "asks"
      ? "it would ask another computer or program, and nothing leaves this page"
      : `it is ${notCalculatedWords[why]}`;
  return { id: "kept as text", kind: "look", text: `“${shown}” is kept as text: ${reason}.` };
}

/** Something was typed beside a table, and is no part of it. */
export function besideNotice({ table, at }: BesideTable, takeIn: () => void): PageNotice {
  return {
    id: "beside",
    kind: "look",
    text: `${cellName(at.row, at.column)} is beside the table “${table}”, not in it. A column joins when its heading is typed beside the others.`,
    actions: [{ label: `Take column ${columnLetters(at.column)} into “${table}”`, run: takeIn }],
  };
}

/** Formulas do not find a column any longer. */
export function lostHeadingNotice(
  { table, heading, now, formulas }: LostHeading,
  takeBack: () => void,
): PageNotice {
  const why =
    now === ""
      ? "its heading is empty"
      : /[[\]#'\n]|^\s|\s$/.test(now)
        ? `a formula cannot name “${now}”: a heading begins and ends with a sign, and has none of [ ] # '`
        : `another column is called “${now}” too`;
  const [first, ...others] = formulas.map(({ sheet, row, column }) => `${sheet}!${cellName(row, column)}`);
  const where = others.length === 0 ? first : `${String(first)} and ${String(others.length)} more`;
  return {
    id: "heading lost",
    kind: "look",
    text: `Formulas that read “${heading}” of the table “${table}” read it no longer, since ${why}: ${String(where)}.`,
    actions: [{ label: `Put “${heading}” back`, run: takeBack }],
  };
}

/** @param trouble why nothing is kept, where it is not as in a private window */
export function notKeptNotice(trouble: StorageError | undefined): PageNotice {
  const why =
    trouble?.reason === "silent"
      ? "The browser’s storage does not answer, so nothing is kept. What was kept before is not touched: close the browser and open it again to see it."
      : trouble
        ? `Nothing is kept for now. ${trouble.message}`
        : "This browser keeps nothing for this page (a private window, perhaps).";
  return {
    id: "not kept",
    kind: "look",
    text: `${why} Your work is gone when you close the page: save it as .xlsx.`,
  };
}

export const twoTabsNotice: PageNotice = {
  id: "two tabs",
  kind: "look",
  text: "This workbook is open in another tab too. Work in one of them only, and close the other.",
};

export function otherTabNotice(takeOver: () => void): PageNotice {
  return {
    id: "other tab",
    kind: "look",
    text: "Another tab has kept this workbook since it was opened here, so the changes made here are not kept. Save this workbook as .xlsx, or keep it in the place of the other one.",
    actions: [
      { label: "Keep this one", run: takeOver },
      {
        label: "Open the other one here",
        run: () => {
          location.reload();
        },
      },
    ],
  };
}

export function clock(time: number): string {
  return new Date(time).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", hour12: false });
}

export function dayAndClock(time: number): string {
  const day = new Date(time).toLocaleDateString([], { day: "numeric", month: "short", year: "numeric" });
  return `${day}, ${clock(time)}`;
}

/** A time as one says it. */
export function when(time: number): string {
  const isToday = new Date(time).toDateString() === new Date().toDateString();
  return isToday ? `today, ${clock(time)}` : dayAndClock(time);
}

export function inWords(error: unknown): string {
  if (error instanceof InputError || error instanceof StorageError) return error.message;
  return `This is a fault in Measure Book (${error instanceof Error ? error.message : String(error)}).`;
}

/** What is open is not kept and would be lost. The user may go on all the same. */
export class WouldBeLost extends InputError {}

/** Names that Windows keeps for devices. Source: Microsoft, “Naming Files, Paths, and Namespaces”. */
const deviceName = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i;

/**
 * The name of a book as the name of a file on any system, without its ending.
 *
 * @example
 * fileNameFor("Spring: 1/4 scale"); // "Spring 1 4 scale"
 */
export function fileNameFor(book: string): string {
  const name = book
    .replace(/[<>:"/\\|?*\p{Cc}\p{Cf}]+/gu, " ")
    .replace(/\s+/gu, " ")
    .replace(/^[\s.]+|[\s.]+$/gu, "")
    .slice(0, 80)
    .trim();
  return name === "" || deviceName.test(name) ? `Book ${name}`.trim() : name;
}
