import { Button, Field, Input, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useId, useMemo, useRef, useState } from "react";
import type { PresentChart } from "../../addin/chart/import/importPlan.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import type { ReadingError } from "../../addin/measures/readingError.ts";
import { readingErrorMm, usualReadingError } from "../../addin/measures/readingError.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { Edit, TableInfo } from "../../addin/workbook/port.ts";
import { readGroups } from "../groups/readGroups.ts";
import { usualSecond } from "../groups/secondReadings.ts";
import { chartTable } from "../import/planEdits.ts";
import type { Destination } from "../import/useDestination.ts";
import { readDestination } from "../import/useDestination.ts";
import type { KnownReadings } from "../readings/readings.ts";
import { readingsTable, readKnownReadings } from "../readings/readings.ts";
import type { Book } from "../shell/book.ts";
import { chartTables } from "../shell/chartTables.ts";
import type { Errand } from "../shell/errands.ts";
import { failureText } from "../shell/notice.ts";
import { OfferDemo } from "../shell/OfferDemo.tsx";
import { SectionFrame } from "../shell/SectionFrame.tsx";
import { undoneWords, useSession } from "../shell/session.ts";
import { useRead } from "../shell/useRead.ts";
import { card } from "../ui/boxes.ts";
import { Choice } from "../ui/Choice.tsx";
import { FailureBox } from "../ui/FailureBox.tsx";
import { OpenList } from "../ui/OpenList.tsx";
import { count, dayName, isoDay, shownLength } from "../ui/words.ts";
import type { Draft, Remembered } from "./draft.ts";
import { nothingRemembered, readingsIn, readRemembered, remember } from "./draft.ts";
import { GuidePart } from "./GuidePart.tsx";
import { KeepingPanel } from "./KeepingPanel.tsx";
import type { MeasureOrder } from "./measuring.ts";
import { inOrder, measuredFigure, mostWanted, without } from "./measuring.ts";
import type { Before, MeasuringContext, Outcome, Rounds } from "./rounds.ts";
import {
  earlierReadings,
  latestOf,
  outcomesOf,
  repeatability,
  repeatOf,
  sessionEdits,
  sessionReadings,
} from "./rounds.ts";
import { Step } from "./Step.tsx";

const useStyles = makeStyles({
  text: { margin: 0 },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
  card: { ...card, gap: "8px" },
  strong: { margin: 0, fontWeight: 600 },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
});

/** The chart that is measured into, and what is known of its readings. */
interface ToMeasure extends Destination {
  /** The charts of the workbook; second readings are none. */
  readonly charts: readonly TableInfo[];
  readonly readings: KnownReadings | undefined;
  readonly errors: ReadingError;
  readonly tolerances: ToleranceTable | undefined;
}

/**
 * Reads the chosen chart, else the table Figures, else the only chart; of several others none is taken unasked. Never rejects: what
 * fails is said in the result.
 */
async function readToMeasure(book: Book, chosen: string | undefined): Promise<ToMeasure> {
  const charts = book.once(chartsToMeasure, await book.tables().catch(() => noTables));
  const named = (name: string | undefined): TableInfo | undefined =>
    name === undefined ? undefined : charts.find((table) => sameName(table.name, name));
  const table = named(chosen) ?? named(chartTable) ?? (charts.length === 1 ? charts[0] : undefined);
  const destination = await readDestination(book, table?.name);
  const { present } = destination;
  const groups = await readGroups(book, table ? { figures: table.name } : noChoice);
  const figures = groups.figures?.chart === present?.chart ? groups.figures : undefined;
  return {
    ...destination,
    charts,
    readings: figures?.second.known ?? (present && (await readKnownReadings(book, present.chart))),
    errors: figures?.second.errors ?? usualReadingError,
    tolerances: figures?.tolerances,
  };
}

const noChoice = {};
const noTables: readonly TableInfo[] = [];

function chartsToMeasure(tables: readonly TableInfo[]): readonly TableInfo[] {
  return chartTables(tables).filter(({ name }) => !sameName(name, usualSecond));
}

/** Takes the measures of one figure with the tape in hand: one measure at a time, doubtful readings asked about at once. */
export function MeasureSection(): ReactNode {
  const styles = useStyles();
  const { ask, workbook } = useSession();
  const [remembered, setRemembered] = useRemembered();
  const found = useRead(readToMeasure, remembered?.table);
  const { table, present, obstacle, readings, charts = noTables } = found ?? {};
  const choose = (name: string, last: Remembered): void => {
    const next = { ...last, table: name };
    setRemembered(next);
    // Where it cannot be kept it is asked again, no more.
    remember(workbook, next).catch(() => undefined);
  };
  if (found && table && present && readings && remembered) {
    return (
      <Session
        key={table.name}
        {...{ found, table, present, readings }}
        first={remembered}
        onChart={choose}
      />
    );
  }
  const isBeingRead = charts.some(({ name }) => sameName(name, remembered?.table ?? ""));
  const isAsked = found && remembered && !table && !isBeingRead && obstacle === undefined;
  return (
    <SectionFrame
      title="Measure"
      primary={
        isAsked && charts.length === 0
          ? {
              label: "Begin a chart",
              run: () => {
                ask("newChart");
              },
            }
          : undefined
      }
    >
      {obstacle === undefined && !isAsked && <p className={styles.text}>Reading the chart …</p>}
      {obstacle !== undefined && <FailureBox what="Nothing can be written yet." why={obstacle} />}
      {isAsked && charts.length > 0 && (
        <>
          <p className={styles.text}>
            There are {charts.length} charts in this workbook. Which one holds the figure that you measure?
            The answer is remembered, and you can change it here.
          </p>
          <div className={styles.actions}>
            {charts.map(({ name, area }) => (
              <Button
                key={name}
                onClick={() => {
                  choose(name, remembered);
                }}
              >
                {name} on the sheet “{area.sheet}”
              </Button>
            ))}
          </div>
        </>
      )}
      {isAsked && charts.length === 0 && (
        <>
          <p className={styles.text}>
            There is no chart in the workbook to write readings into. Begin one: it has a column for each
            measure.
          </p>
          <OfferDemo />
        </>
      )}
    </SectionFrame>
  );
}

/** Why readings are not written. */
type Left = "closed" | "taken back";

/** What the workbook remembers of measuring; `undefined` until it is read. */
function useRemembered(): readonly [Remembered | undefined, (next: Remembered) => void] {
  const { workbook } = useSession();
  const [remembered, setRemembered] = useState<Remembered>();
  useEffect(() => {
    let current = true;
    readRemembered(workbook).then(
      (found) => {
        if (current) setRemembered(found);
      },
      () => {
        if (current) setRemembered(nothingRemembered);
      },
    );
    return () => {
      current = false;
    };
  }, [workbook]);
  return [remembered, setRemembered];
}

interface SessionProps {
  readonly found: ToMeasure;
  readonly table: TableInfo;
  readonly present: PresentChart;
  readonly readings: KnownReadings;
  readonly first: Remembered;
  /** Told the chart to measure into instead, and what is remembered by then. */
  readonly onChart: (name: string, remembered: Remembered) => void;
}

function Session({ found, table, present, readings, first, onChart }: SessionProps): ReactNode {
  const styles = useStyles();
  const { apply, say, working, notice, errand } = useSession();
  const { chart } = present;
  const { errors, tolerances, sheets } = found;
  const [remembered, setRemembered] = useState<Remembered>({ ...first, draft: undefined });
  const [left, setLeft] = useState(first.draft && { draft: first.draft, why: "closed" as Left });
  const [written, setWritten] = useState<{ readonly label: string; readonly draft: Draft }>();
  const [before, setBefore] = useState<Before>("count");
  const [name, setName] = useState("");
  const [order, setOrder] = useState<MeasureOrder>("body");
  const [at, setAt] = useState(0);
  const [rounds, setRounds] = useState<Rounds>([{}]);
  const [told, setTold] = useState("");
  const names = useId();
  const keep = useKeep();
  const figure = useMemo(() => measuredFigure(chart, name), [chart, name]);
  const steps = useMemo(() => {
    const all =
      figure && order === "wanted"
        ? mostWanted(chart, figure, tolerances)
        : inOrder(chart, figure?.place, order === "missing" ? "missing" : "body");
    // A second round takes what the first one took.
    return rounds.length === 1
      ? all
      : all.filter((column) => sessionReadings(rounds.slice(0, -1), column).length > 0);
  }, [chart, figure, order, tolerances, rounds]);
  // What was written and taken back is offered again, so that nobody has to type it twice.
  if (written && notice?.text === undoneWords(written.label)) {
    setWritten(undefined);
    setLeft({ draft: written.draft, why: "taken back" });
  }
  const column = steps[at];
  const taken = rounds.at(-1) ?? {};
  const context: MeasuringContext | undefined = figure && {
    ...{ present, figure, errors, known: readings.taken.readings },
  };
  const outcomes = context ? outcomesOf(context, rounds, inOrder(chart, undefined, "body"), before) : [];
  const number = readingsIn({ rounds });
  const all = count(number, "reading");

  const change = (next: Rounds, changed: Partial<Remembered> = {}): void => {
    setRounds(next);
    const kept = { ...remembered, ...changed };
    setRemembered(kept);
    keep({ ...kept, draft: { figure: figure?.name ?? name, day: isoDay(new Date()), rounds: next } });
  };
  const wanted = errand?.kind === "measure" ? errand : undefined;
  const [begun, setBegun] = useState<Errand>();
  if (wanted?.about && wanted !== begun && !left) {
    setBegun(wanted);
    const asked = measuredFigure(chart, wanted.about.figure);
    // What was typed of another figure stays until it is written; another chart may not have the figure.
    if (number === 0 && asked?.place !== undefined) {
      setName(asked.name);
      setOrder("body");
      setAt(
        Math.max(
          0,
          inOrder(chart, asked.place, "body").findIndex(({ key }) => key === wanted.about?.measure),
        ),
      );
    }
  }
  const begin = (): void => {
    change([{}]);
    setTold("");
    setAt(0);
  };
  const takeUp = (draft: Draft): void => {
    const keys = new Set(chart.measures.map(({ key }) => key));
    const there = draft.rounds.map((each) =>
      Object.fromEntries(Object.entries(each).filter(([key]) => keys.has(key))),
    );
    keep({ ...remembered, draft });
    setLeft(undefined);
    setName(draft.figure);
    setRounds(there.length === 0 ? [{}] : there);
    // On from the first measure that this round has not reached.
    const down = inOrder(chart, undefined, "body").filter(
      (each) => there.length < 2 || there.slice(0, -1).some((round) => round[each.key] !== undefined),
    );
    const last = down.findLastIndex(({ key }) => there.at(-1)?.[key] !== undefined);
    setAt(last + 1);
  };
  const write = async (measuring: MeasuringContext): Promise<void> => {
    const day = isoDay(new Date());
    const { keeps, by, tool } = remembered;
    const keeping = keeps ? { date: day, by: by.trim(), tool: tool.trim() } : undefined;
    const where = keeps ? `, and each one in the table ${readingsTable}` : "";
    const label = `Write ${all} of ${measuring.figure.name}`;
    const edits = editsOrWhy(() =>
      sessionEdits(measuring, table, outcomes, keeping, { readings, sheets, before }),
    );
    if (typeof edits === "string") {
      say({ kind: "failed", text: `Nothing is written. ${edits}` });
      return;
    }
    const isWritten = await apply(label, edits, {
      kind: "done",
      text: `${all} of ${measuring.figure.name} ${number === 1 ? "stands" : "stand"} in the chart now, on the sheet “${table.area.sheet}”${where}.`,
    });
    if (!isWritten) return;
    setWritten({ label, draft: { figure: measuring.figure.name, day, rounds } });
    begin();
    setName("");
    keep({ ...remembered, draft: undefined });
  };

  if (left) {
    return (
      <SectionFrame title="Measure">
        <section className={styles.card} aria-label="Readings that were not written">
          <p className={styles.strong}>
            {count(readingsIn(left.draft), "reading")} of {left.draft.figure}{" "}
            {readingsIn(left.draft) === 1 ? "is" : "are"} not written yet, last taken on{" "}
            {dayName(left.draft.day, new Date())}.
          </p>
          <p className={styles.text}>
            {left.why === "closed"
              ? "They were kept when the page was closed."
              : "They were written and taken back."}
          </p>
          <div className={styles.actions}>
            <Button
              appearance="primary"
              onClick={() => {
                takeUp(left.draft);
              }}
            >
              Go on measuring {left.draft.figure}
            </Button>
            <Button
              onClick={() => {
                setLeft(undefined);
                keep({ ...remembered, draft: undefined });
                say({ kind: "done", text: `The readings of ${left.draft.figure} are thrown away.` });
              }}
            >
              Throw them away
            </Button>
          </div>
        </section>
      </SectionFrame>
    );
  }

  return (
    <SectionFrame
      title="Measure"
      primary={{
        label: number === 0 ? "Write the readings" : `Write ${all}`,
        run: () => {
          if (context) void write(context);
        },
        disabled: !context || number === 0,
      }}
    >
      <p className={styles.text}>
        One figure, the tape in your hand: type what it says and press Enter. Nothing is written into the
        chart until you say so; what you typed is kept until then, also when you close the page.
      </p>
      {found.charts.length > 1 &&
        (number === 0 ? (
          <Choice
            label="Chart"
            value={table.name}
            options={found.charts.map(({ name: each, area }) => [each, `${each} on sheet ${area.sheet}`])}
            onChoose={(chosen) => {
              onChart(chosen, remembered);
            }}
          />
        ) : (
          <p className={styles.quiet}>
            Into the chart {table.name} on the sheet “{table.area.sheet}”.
          </p>
        ))}
      <Field
        label="Which figure?"
        hint={
          !figure
            ? "One of your chart, or the name of a new one."
            : figure.place === undefined
              ? "A new figure. It gets a row of its own."
              : `In the chart, with ${String(takenBefore(present, figure.place))} of ${count(chart.measures.length, "measure")} taken.`
        }
      >
        <Input
          input={{ list: names }}
          value={name}
          disabled={working !== undefined || number > 0}
          onChange={(_, data) => {
            setName(data.value);
            setAt(0);
          }}
        />
      </Field>
      <datalist id={names}>
        {[...new Set(chart.figures)].map((each) => (
          <option key={each} value={each} />
        ))}
      </datalist>
      {told !== "" && (
        <p className={styles.text} role="status">
          {told}
        </p>
      )}
      {context && column && (
        <Step
          key={`${column.key} ${String(rounds.length)}`}
          {...{ context, column }}
          latest={latestOf(rounds)}
          reading={taken[column.key]}
          before={readBefore(context, rounds, column, before)}
          goesOn={at > 0 || number > 0}
          number={`${String(at + 1)} of ${String(steps.length)}${rounds.length > 1 ? `, round ${String(rounds.length)}` : ""}`}
          onTake={(mm) => {
            const repeat = repeatOf(readBefore(context, rounds, column, before), mm, column, errors);
            setTold(repeat ? `${column.heading}: ${repeat.says}` : "");
            change([...rounds.slice(0, -1), { ...taken, [column.key]: mm }]);
            setAt(at + 1);
          }}
          onSkip={() => {
            setTold("");
            if (taken[column.key] !== undefined) change([...rounds.slice(0, -1), without(taken, column)]);
            setAt(at + 1);
          }}
          onBack={
            at === 0
              ? undefined
              : () => {
                  setAt(at - 1);
                }
          }
        />
      )}
      {context && !column && (
        <p className={styles.text}>
          That was the last measure. {number === 0 ? "Nothing was taken." : "Write the readings, above."}
        </p>
      )}
      {context && number > 0 && (
        <>
          <RepeatWords outcomes={outcomes} errors={errors} />
          <OpenList
            label="Taken so far"
            items={outcomes}
            keyOf={({ column: of }) => of.key}
            rowOf={(each) => ({
              name: each.column.heading,
              says: each.now.map((mm) => shownLength(mm, each.column.unit)).join(", "),
              words: each.words,
            })}
            onOpen={(each) => {
              setAt(Math.max(0, steps.indexOf(each.column)));
            }}
          />
          <div className={styles.actions}>
            <Button
              disabled={Object.keys(taken).length === 0}
              onClick={() => {
                change([...rounds, {}]);
                setTold("");
                setAt(0);
              }}
            >
              Measure all of it again
            </Button>
            <Button onClick={begin}>Throw them away</Button>
          </div>
        </>
      )}
      {figure && (
        <Choice
          label="In which order"
          value={order}
          options={[
            ["body", "From head to foot"],
            ["missing", "First what is missing"],
            ["wanted", "First what tells most"],
          ]}
          onChoose={(next) => {
            setOrder(next);
            setAt(0);
          }}
        />
      )}
      <KeepingPanel
        remembered={remembered}
        onRemember={(changed) => {
          change(rounds, changed);
        }}
        before={before}
        onBefore={setBefore}
      />
      <GuidePart chart={chart} />
    </SectionFrame>
  );
}

/** Keeps what is remembered, one write after the other, so that the last one stays. Says once where that cannot be. */
function useKeep(): (remembered: Remembered) => void {
  const { workbook, say } = useSession();
  const last = useRef<Promise<unknown>>(Promise.resolve());
  const failed = useRef(false);
  return (remembered) => {
    last.current = last.current
      .then(() => remember(workbook, remembered))
      .catch(() => {
        if (failed.current) return;
        failed.current = true;
        say({
          kind: "failed",
          text: "What you type cannot be kept in this workbook until it is written. Write the readings before you close it.",
        });
      });
  };
}

/** The edits, or why there can be none, as where the table Readings lacks a heading. */
function editsOrWhy(plan: () => readonly Edit[]): readonly Edit[] | string {
  try {
    return plan();
  } catch (error) {
    return failureText(error);
  }
}

/** What was read of a measure before this round. */
function readBefore(
  context: MeasuringContext,
  rounds: Rounds,
  column: Outcome["column"],
  before: Before,
): readonly number[] {
  const earlier = before === "count" ? earlierReadings(context, column).mm : [];
  return [...earlier, ...sessionReadings(rounds.slice(0, -1), column)];
}

/** How closely the readings repeat, once some were taken twice. */
function RepeatWords(props: {
  readonly outcomes: readonly Outcome[];
  readonly errors: ReadingError;
}): ReactNode {
  const styles = useStyles();
  const { outcomes, errors } = props;
  const repeated = repeatability(outcomes);
  if (!repeated) return null;
  const { tem, relativePercent, mean, pairs } = repeated;
  return (
    <p className={styles.text}>
      {count(pairs, "measure")} read twice: a reading is off by{" "}
      {shownLength(Math.round(tem * 100) / 100, "mm")} as a rule ({relativePercent.toFixed(2)} %). Usual is{" "}
      {shownLength(readingErrorMm({ ...errors, ofMeasures: {} }, mean), "mm")}.
    </p>
  );
}

function takenBefore({ chart }: PresentChart, place: number): number {
  return chart.measures.filter(({ mm }) => !Number.isNaN(mm[place] ?? Number.NaN)).length;
}
