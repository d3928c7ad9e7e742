import { useCallback, useDeferredValue, useEffect, useState } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import type { PatternTable } from "../../addin/chart/pattern.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import type { Publication } from "../../addin/publish/publication.ts";
import { usualPublication, usualPublicationOf } from "../../addin/publish/publication.ts";
import { readPublication } from "../../addin/publish/publicationTable.ts";
import type { PublicationAtWork } from "../../addin/publish/published.ts";
import { publish } from "../../addin/publish/published.ts";
import type { PublicationHistory } from "../../addin/publish/record.ts";
import { wordsOf } from "../../addin/publish/words/wordsOf.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { RangeData, TableInfo } from "../../addin/workbook/port.ts";
import { useCheck } from "../check/useCheck.ts";
import type { Fit, UsedTables } from "../fit/readFit.ts";
import { useFit } from "../fit/useFit.ts";
import type { GroupsInput } from "../groups/readGroups.ts";
import { readGroups } from "../groups/readGroups.ts";
import type { Book } from "../shell/book.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { useRead } from "../shell/useRead.ts";
import type { Since } from "./sinceWords.ts";
import { readHistory, sinceLast } from "./history.ts";

/** The name of the table in which the workbook remembers what is published. */
export const publicationTable = "Publication";

/** What the workbook remembers of a publication. */
interface Remembered {
  readonly table: TableInfo | undefined;
  readonly publication: Publication | undefined;
  /** Why it could not be read, in words. */
  readonly failure: string | undefined;
}

async function readRemembered(book: Book): Promise<Remembered> {
  try {
    const table = (await book.tables()).find(({ name }) => sameName(name, publicationTable));
    if (!table) return { table: undefined, publication: undefined, failure: undefined };
    const { values } = await book.readTable(table.name);
    return book.once(rememberedIn, table, values);
  } catch (error) {
    return { table: undefined, publication: undefined, failure: failureText(error) };
  }
}

function rememberedIn(table: TableInfo, values: RangeData["values"]): Remembered {
  try {
    return { table, publication: readPublication(values), failure: undefined };
  } catch (error) {
    return { table, publication: undefined, failure: `Table ${table.name}: ${failureText(error)}` };
  }
}

/** What the workbook holds to be published. */
export interface ToPublish {
  readonly sheets: readonly string[];
  readonly chart: Chart | undefined;
  readonly patterns: PatternTable | undefined;
  readonly tolerances: ToleranceTable | undefined;
  readonly used: UsedTables;
  /** True where a table changes the garment classes that come with the project: formulas must name it. */
  readonly hasOwnClasses: boolean;
  readonly remembered: Remembered;
  /** What stands in the way, in words. */
  readonly failure: string | undefined;
  readonly work: PublicationAtWork | undefined;
  /** What is set where the user has set nothing. */
  readonly usual: Publication;
  /** What changed since the last publication, where there was one; in words where that cannot be told. */
  readonly since: Since | undefined;
  readonly sinceFailure: string | undefined;
  /** What would be published with all that is set at this moment; `work` follows it a moment later. */
  readonly workNow: () => PublicationAtWork | undefined;
  /** To be called when something was published. */
  readonly lookAgain: () => void;
}

/**
 * What would be published now, kept up to date with the workbook; `undefined` until all is read for the first time.
 *
 * @param chosen what the user has set; what the workbook remembers, or what was published last, where she has set nothing
 */
export function usePublishing(chosen: Publication | undefined): ToPublish | undefined {
  const { book } = useSession();
  const fit = useFit(noChoice);
  const groups = useRead(readGroups, noChoice);
  const { check, working } = useCheck(undefined);
  const remembered = useRead(readRemembered, undefined);
  const { past, lookAgain } = useHistory();
  const usual =
    remembered?.publication ??
    past?.history[0]?.publication ??
    (fit?.chart ? usualPublicationOf(fit.chart) : usualPublication);
  const set = chosen ?? usual;
  const publication = useDeferredValue(set);
  if (!fit || !groups || !remembered || !past || (fit.chart && !check && working.failure === undefined))
    return undefined;
  const flags = check?.checked?.flags ?? noFlags;
  const workOut = (of: Publication) =>
    book.once(toPublish, fit, groups, flags, remembered, of, dayWords(new Date(), of));
  const found = workOut(publication);
  const since = found.work && book.once(sinceLast, past.history, found.work);
  const workNow = () => workOut(set).work;
  return { ...found, usual, since, sinceFailure: past.failure, workNow, lookAgain };
}

interface Past {
  readonly history: PublicationHistory;
  /** Why it could not be read, in words. */
  readonly failure: string | undefined;
}

/** What was published, read again when the workbook changes or something is published. */
function useHistory(): { readonly past: Past | undefined; readonly lookAgain: () => void } {
  const { workbook, book, isShown } = useSession();
  const [past, setPast] = useState<Past>();
  const [asked, setAsked] = useState(0);
  useEffect(() => {
    if (!isShown) return undefined;
    let current = true;
    const told = (next: Past): void => {
      if (current) setPast((before) => (JSON.stringify(before) === JSON.stringify(next) ? before : next));
    };
    readHistory(workbook).then(
      (history) => {
        told({ history, failure: undefined });
      },
      (error: unknown) => {
        told({ history: [], failure: failureText(error) });
      },
    );
    return () => {
      current = false;
    };
  }, [workbook, book, isShown, asked]);
  const lookAgain = useCallback(() => {
    setAsked((times) => times + 1);
  }, []);
  return { past, lookAgain };
}

function dayWords(day: Date, { language }: Publication): string {
  return new Intl.DateTimeFormat(wordsOf(language).tag, { dateStyle: "long" }).format(day);
}

const noChoice = {};
const noFlags: readonly Flag[] = [];

function toPublish(
  fit: Fit,
  groups: GroupsInput,
  flags: readonly Flag[],
  remembered: Remembered,
  publication: Publication,
  today: string,
): Omit<ToPublish, "usual" | "since" | "sinceFailure" | "workNow" | "lookAgain"> {
  const { chart, fitting, problems, rules } = fit;
  const patterns = fitting && { patterns: fitting.patterns.map(({ pattern }) => pattern), problems };
  const tolerances = groups.figures?.tolerances;
  const { sheets, used, hasOwnClasses } = fit;
  const known = { sheets, used, hasOwnClasses, chart, patterns, tolerances, remembered };
  const failure = fit.failure ?? groups.failure;
  if (!chart || failure !== undefined) return { ...known, failure, work: undefined };
  const dated = publication.date.trim() === "" ? { ...publication, date: today } : publication;
  try {
    const work = publish(
      { chart, patterns, rules, readingError: fit.second?.errors, tolerances, flags },
      dated,
    );
    return { ...known, failure: undefined, work };
  } catch (error) {
    return { ...known, failure: failureText(error), work: undefined };
  }
}
