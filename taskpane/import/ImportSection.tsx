import { Button, Checkbox, ProgressBar, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useRef, useState } from "react";
import type { ImportColumn } from "../../addin/chart/import/columns.ts";
import type { ImportKind } from "../../addin/chart/import/columns.ts";
import type { Survey } from "../../addin/chart/import/survey.ts";
import { isUnitOpen } from "../../addin/chart/import/guessUnits.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import type { Edit } from "../../addin/workbook/port.ts";
import { leftOutWords } from "../../addin/workbook/xlsx/leftOutWords.ts";
import { Choice } from "../ui/Choice.tsx";
import { FailureBox } from "../ui/FailureBox.tsx";
import { OfferDemo } from "../shell/OfferDemo.tsx";
import { SectionFrame } from "../shell/SectionFrame.tsx";
import type { Book } from "../shell/book.ts";
import { failureText, notShown } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { useRead } from "../shell/useRead.ts";
import { count, unitNames } from "../ui/words.ts";
import { ColumnList } from "./ColumnList.tsx";
import { logEdits, logIn, logTable } from "./importLog.ts";
import { nouns } from "./nouns.ts";
import { NewChart } from "./NewChart.tsx";
import { chartTable } from "./planEdits.ts";
import { Preview } from "./Preview.tsx";
import { ReadingSettings, WhatItHolds, isAskedOpenly } from "./ReadingSettings.tsx";
import type { ImportSource } from "./readSource.ts";
import { Refusals } from "./Refusals.tsx";
import { SourceChooser } from "./SourceChooser.tsx";
import { TwinList } from "./TwinList.tsx";
import { WordList } from "./WordList.tsx";
import type { Import } from "./useImport.ts";
import { useImport } from "./useImport.ts";
import type { WorkbookPart } from "./workbookParts.ts";

const useStyles = makeStyles({
  source: { display: "flex", alignItems: "center", justifyContent: "space-between", gap: "8px" },
  name: { fontWeight: 600, overflowWrap: "anywhere" },
  text: { margin: 0 },
  progress: { display: "flex", flexDirection: "column", gap: "8px", alignItems: "flex-start" },
  bar: { width: "100%" },
  remarks: { margin: 0, paddingLeft: "20px" },
});

/** Bring a chart in: choose, see how it was read, mend the matches, look at every reading, import. */
export function ImportSection(): ReactNode {
  const styles = useStyles();
  const session = useSession();
  const work = useImport();
  const input = useRef<HTMLInputElement>(null);
  const chosen = useRef<HTMLDivElement>(null);
  const { source, read, prepared, survey, destination, goal, settings, progress, change } = work;
  const obstacle = work.failure ?? (source ? (goal?.obstacle ?? prepared?.obstacle) : undefined);
  const [wantsLog, setWantsLog] = useState<boolean>();
  const hasLog = useRead(readHasLog, undefined)?.has === true;
  const keepsLog = wantsLog ?? hasLog;
  const changes = survey ? survey.added + survey.updated : 0;

  // What was pressed to choose it has gone, or imports by now: what is to be looked at comes next.
  useEffect(() => {
    if (source) focusFrom(chosen.current);
  }, [source]);

  const browse = (): void => input.current?.click();
  const primary = source
    ? {
        label: survey && prepared ? importLabel(survey, prepared.what) : "Import",
        run: () => void runImport(work),
        disabled: obstacle !== undefined || changes === 0 || progress !== undefined,
      }
    : { label: "Choose a file", run: browse };

  async function runImport({
    goal,
    source: from,
    prepared,
    survey,
    edits: makeEdits,
    clear,
  }: Import): Promise<void> {
    const edits = await makeEdits();
    if (!edits || !survey || !prepared || !from) return;
    const { what } = prepared;
    const begun = edits.flatMap((edit) => (edit.kind === "sheet" ? (edit.sheet.tables ?? []) : []));
    const name = goal?.table?.name ?? begun[0]?.name ?? chartTable;
    let noted: readonly Edit[] = [];
    try {
      if (keepsLog) noted = await logOf(session.freshBook(), edits, from, survey, name);
    } catch (error) {
      session.say({ kind: "failed", text: failureText(error) });
      return;
    }
    const done = await session.apply(importLabel(survey, what), [...edits, ...noted], {
      kind: "done",
      text: `The table ${name} holds the ${what} now.`,
      more: surveyLines(survey, settings.keepRefused, what),
    });
    if (!done) return;
    clear();
    await showRows(name, survey.added, what);
  }

  /** Goes to the first of the figures or patterns that are new, else to the table. It is there all the same where that fails. */
  async function showRows(name: string, added: number, what: ImportKind): Promise<void> {
    try {
      const table = (await session.freshBook().tables()).find((each) => each.name === name);
      if (!table) return;
      const { sheet, row, column, rows } = table.area;
      const first = row + (added > 0 ? rows - added : 1);
      await session.workbook.select({ sheet, row: first, column, rows: 1, columns: 1 });
    } catch (error) {
      session.say(notShown(`The table ${name} holds the ${what} now.`, error));
    }
  }

  async function logOf(
    book: Book,
    edits: readonly Edit[],
    from: ImportSource,
    done: Survey,
    into: string,
  ): Promise<readonly Edit[]> {
    const tables = await book.tables();
    const log = logIn(tables);
    // A sheet that the import makes takes its name first.
    const made = edits.flatMap((edit) => (edit.kind === "sheet" ? [edit.sheet] : []));
    const taken = {
      sheets: [...(await book.sheets()), ...made.map((sheet) => sheet.name)],
      tables: [
        ...tables.map((table) => table.name),
        ...made.flatMap((sheet) => (sheet.tables ?? []).map((table) => table.name)),
      ],
    };
    return logEdits(
      { when: new Date(), from: sourceWords(from, settings.part), into, survey: done },
      log && { table: log, cells: (await book.readTable(log.name)).values },
      taken,
    );
  }

  return (
    <SectionFrame title="Import" primary={primary}>
      {obstacle !== undefined && <FailureBox what="Cannot be imported yet." why={obstacle} />}
      {progress && (
        <div className={styles.progress}>
          <span>
            {progress.doing}: {Math.round(progress.share * 100)} %
          </span>
          <ProgressBar className={styles.bar} value={progress.share} aria-label={progress.doing} />
          <Button onClick={work.clear}>Cancel</Button>
        </div>
      )}
      {!source && (
        <>
          <SourceChooser input={input} onFile={(file) => void work.openFile(file)} onText={work.openText} />
          {destination && <NewChart sheets={destination.sheets} />}
          {destination && destination.tables.length === 0 && <OfferDemo />}
        </>
      )}
      {source && (
        <div ref={chosen} tabIndex={-1} className={styles.source}>
          <span className={styles.name}>{source.name}</span>
          <Button onClick={work.clear}>Choose another</Button>
        </div>
      )}
      {source && read && prepared && (
        <>
          <ReadingSettings {...{ source, read, prepared, settings, change }} />
          {isAskedOpenly(prepared, settings) && (
            <WhatItHolds what={prepared.what} isSure={prepared.isSure} change={change} />
          )}
          <ColumnList
            what={prepared.what}
            columns={prepared.columns}
            targets={prepared.plan.targets}
            hasTable={goal?.table !== undefined}
            onChoose={(position, choice) => {
              const before = settings.columns.get(position);
              change({ columns: new Map(settings.columns).set(position, { ...before, ...choice }) });
            }}
            onFigureColumn={(figureColumn) => {
              change({ figureColumn });
            }}
          />
          {(settings.assumedUnit ?? guessedUnit(prepared.columns)) && (
            <Choice
              label="Readings without a unit are in"
              hint={settings.assumedUnit ? "Chosen by you." : "◆ The file states none. Please check."}
              value={settings.assumedUnit ?? guessedUnit(prepared.columns) ?? "mm"}
              options={unitNames}
              onChoose={(assumedUnit) => {
                change({ assumedUnit });
              }}
            />
          )}
          {prepared.dictionary && (
            <WordList
              words={prepared.words}
              dictionary={prepared.dictionary}
              chosen={settings.words ?? new Map()}
              change={(words) => {
                change({ words });
              }}
            />
          )}
          {goal && goal.tables.length > 0 && (
            <Choice
              label="Import into"
              value={goal.table?.name ?? ""}
              options={[
                ...goal.tables.map((t) => [t.name, `Table ${t.name} on sheet ${t.area.sheet}`] as const),
                ...(prepared.what === "patterns"
                  ? [["", "A new table of patterns"] as const]
                  : goal.tables.some((t) => t.name === chartTable)
                    ? []
                    : [["", `A new table ${chartTable}`] as const]),
              ]}
              onChoose={(into) => {
                change(prepared.what === "patterns" ? { intoPatterns: into } : { into });
              }}
            />
          )}
          <TwinList
            what={prepared.what}
            figures={prepared.plan.figures}
            twins={settings.twins}
            change={(twins) => {
              change({ twins });
            }}
          />
          <Checkbox
            checked={keepsLog}
            onChange={(_, data) => {
              setWantsLog(data.checked === true);
            }}
            label={`Note in the table ${logTable} what came from where`}
          />
          <Remarks lines={remarks(work)} />
          {survey && !prepared.obstacle && (
            <>
              <p className={styles.text}>
                {surveyLines(survey, settings.keepRefused, prepared.what).join(" ")}
              </p>
              <Refusals
                plan={prepared.plan}
                refusals={survey.refusals}
                unusable={prepared.unusable}
                keep={settings.keepRefused}
                onKeep={(keepRefused) => {
                  change({ keepRefused });
                }}
              />
              <Preview plan={prepared.plan} survey={survey} />
            </>
          )}
        </>
      )}
    </SectionFrame>
  );
}

async function readHasLog(book: Book): Promise<{ readonly has: boolean }> {
  return { has: logIn(await book.tables().catch(() => [])) !== undefined };
}

function sourceWords({ name }: ImportSource, part: WorkbookPart | undefined): string {
  return part ? `${name}, ${part.label.replace(/^./u, (letter) => letter.toLowerCase())}` : name;
}

/** Moves the keyboard there, unless someone has gone on to something outside the section meanwhile. */
function focusFrom(place: HTMLElement | null): void {
  const now = document.activeElement;
  if (!now || now === document.body || place?.closest("[role=region]")?.contains(now)) place?.focus();
}

function Remarks({ lines }: { readonly lines: readonly string[] }): ReactNode {
  const styles = useStyles();
  if (lines.length === 0) return null;
  return (
    <ul className={styles.remarks} aria-label="Remarks on the file">
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

/** The unit of the columns that give no sign of theirs; `undefined` when all do. */
function guessedUnit(columns: readonly ImportColumn[]): LengthUnit | undefined {
  return columns.find((c) => isUnitOpen(c) && (c.role === "measure" || c.role === "own"))?.unit;
}

/** Figures beyond which the spreadsheet, not this pane, takes its time. */
const large = 5000;

function remarks({ source, read, prepared, survey }: Import): readonly string[] {
  if (!read || !prepared) return [];
  const missing = source?.kind === "workbook" ? leftOutWords(source.name, source.leftOut) : undefined;
  return [
    ...(missing === undefined ? [] : [missing]),
    ...(read.openQuote === undefined
      ? []
      : [
          `A quotation mark is opened in row ${String(read.openQuote)} and never closed, so that all that follows stands in one cell. Mend it in the file.`,
        ]),
    ...prepared.remarks,
    ...(survey && survey.added + survey.updated > large
      ? [
          "This is a very large chart. The spreadsheet may take minutes to take it in; do not close the page meanwhile.",
        ]
      : []),
  ];
}

function importLabel({ added, updated }: Survey, what: ImportKind): string {
  const { one } = nouns[what];
  if (added > 0) return `Import ${count(added + updated, one)}`;
  return updated > 0 ? `Update ${count(updated, one)}` : "Nothing to import";
}

function surveyLines(survey: Survey, keepRefused: boolean, what: ImportKind): readonly string[] {
  const { one } = nouns[what];
  const isChart = what === "figures";
  const { added, updated, skipped, readings, changed, missing, refusals } = survey;
  return [
    ...(added > 0 ? [`${count(added, `new ${one}`)}.`] : []),
    ...(updated > 0 ? [`${count(updated, one)} updated, ${count(changed, "cell")} changed.`] : []),
    `${count(readings, isChart ? "new reading" : "new length")}.`,
    ...(skipped > 0 ? [`${count(skipped, one)} ${isChart ? "skipped" : "left out"}.`] : []),
    ...(missing > 0 && isChart ? [`${count(missing, "reading")} not taken.`] : []),
    ...(refusals.length > 0
      ? [
          `${isChart ? `${count(refusals.length, "reading")} could not be read` : `${count(refusals.length, "entry", "entries")} could not be understood`}${keepRefused ? ", kept as marked text" : ", left out"}.`,
        ]
      : []),
  ];
}
