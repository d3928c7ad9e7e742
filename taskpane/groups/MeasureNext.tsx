import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo, useState } from "react";
import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import type { ChangingGroups, ChangingPair } from "../../addin/similarity/certainty/changingGroups.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import type { NextReading } from "../../addin/similarity/next.ts";
import { card, plainList } from "../ui/boxes.ts";
import { Choice } from "../ui/Choice.tsx";
import { FailureBox } from "../ui/FailureBox.tsx";
import { failureText } from "../shell/notice.ts";
import { Part } from "../ui/Part.tsx";
import { useSession } from "../shell/session.ts";
import { ShowMore } from "../ui/ShowMore.tsx";
import { count } from "../ui/words.ts";
import { startOn } from "../shell/writing.ts";
import { WriteBox } from "../shell/WriteBox.tsx";
import { changeWords } from "./changeWords.ts";
import { partOptions } from "./parts.ts";
import type { FiguresToGroup, GroupsInput } from "./readGroups.ts";
import { readingErrorWords } from "./secondReadings.ts";
import { figureAt } from "./sharing.ts";
import { useCompared } from "./useCompared.ts";
import type { JobAnswer } from "../work/job.ts";
import type { Working } from "../work/useJob.ts";
import { useJob } from "../work/useJob.ts";
import { VerdictsWait } from "./VerdictsWait.tsx";
import { chanceWords, chartTeaches } from "./words.ts";
import { WorkingWords } from "../work/Working.tsx";
import { planBodyFormula, planValues } from "./writeSheet.ts";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
  list: plainList,
  card,
  name: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600 },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
});

/** Rows shown at first and added by “Show more”. */
const pageSize = 8;

/** Question 4: which reading to take, for groups and for verdicts, and which to take again. */
export function MeasureNext(props: {
  readonly input: GroupsInput;
  readonly figures: FiguresToGroup;
  readonly part: string;
  readonly onPart: (part: string) => void;
  readonly writing: number;
}): ReactNode {
  const { input, figures, onPart, writing } = props;
  const { part, columns, failure } = useCompared(figures, props.part);
  const { chart } = figures;
  const job = useMemo(() => columns && { kind: "next" as const, chart, columns }, [chart, columns]);
  const working = useJob(job, readingsIn);
  return (
    <>
      <Choice label="What is shared" value={part} options={partOptions(figures.garments)} onChoose={onPart} />
      {failure !== undefined && <FailureBox what="Cannot be compared." why={failure} />}
      {columns && (
        <>
          <ToTake figures={figures} working={working} />
          <VerdictsWait
            figures={figures}
            cellOf={(place, measure) => {
              const column = chart.measures.find(({ key }) => key === measure);
              return column && <GoToCell {...{ figures, place, column }} label="Go to the cell" />;
            }}
          />
          <ToTakeAgain figures={figures} columns={columns} />
          {working.answer && (
            <WriteReadings
              input={input}
              figures={figures}
              part={part}
              readings={working.answer}
              asked={writing}
            />
          )}
        </>
      )}
    </>
  );
}

/** Missing readings, best first. */
function ToTake(props: {
  readonly figures: FiguresToGroup;
  readonly working: Working<readonly NextReading[]>;
}): ReactNode {
  const styles = useStyles();
  const { figures, working } = props;
  const { chart } = figures;
  const [shown, setShown] = useState(pageSize);
  const readings = working.answer;
  return (
    <Part title="Readings to take">
      <WorkingWords
        working={working}
        doing={`Looking through the gaps of ${count(chart.figures.length, "figure")}`}
      />
      {readings?.length === 0 && (
        <p className={styles.text}>✓ No missing reading would tell more about who shares.</p>
      )}
      {readings && readings.length > 0 && (
        <>
          <p className={styles.text}>
            {count(readings.length, "missing reading")} would tell more about who shares, those that settle
            most first.
          </p>
          <ul className={styles.list} aria-label="Readings to take, best first">
            {readings.slice(0, shown).map((reading, i) => (
              <li key={i} className={styles.card}>
                <h3 className={styles.name}>
                  {reading.figure}: {reading.column.heading}
                </h3>
                <p className={styles.text}>{settlesWords(reading)}</p>
                <div className={styles.actions}>
                  <GoToCell
                    figures={figures}
                    place={placeOf(chart, reading)}
                    column={reading.column}
                    label="Go to the cell"
                  />
                </div>
              </li>
            ))}
          </ul>
          <ShowMore
            what="readings"
            left={readings.length - shown}
            onMore={() => {
              setShown(shown + pageSize);
            }}
          />
        </>
      )}
    </Part>
  );
}

function settlesWords({ settles, neededBy }: NextReading): string {
  if (settles === 0) {
    return `${count(neededBy, "pair waits", "pairs wait")} for it, but ${neededBy === 1 ? "needs" : "need"} another reading too.`;
  }
  const settled = `Settles ${count(settles, "pair")} of figures`;
  return neededBy > settles
    ? `${settled}; ${count(neededBy - settles, "more waits", "more wait")} for it and for others.`
    : `${settled}.`;
}

/** Pairs so close to the limit that readings may decide wrongly. */
function ToTakeAgain(props: {
  readonly figures: FiguresToGroup;
  readonly columns: readonly ComparedColumn[];
}): ReactNode {
  const styles = useStyles();
  const { figures, columns } = props;
  const { chart, second } = figures;
  const { errors } = second;
  const [shown, setShown] = useState(pageSize);
  const job = useMemo(() => ({ kind: "doubt" as const, chart, columns, errors }), [chart, columns, errors]);
  const working = useJob(job, doubtIn);
  const doubt = working.answer;
  return (
    <Part title="Readings to take again">
      <WorkingWords
        working={working}
        doing={`Asking how sure each pair of ${count(chart.figures.length, "figure")} is`}
      />
      {doubt?.pairCount === 0 && (
        <p className={styles.text}>
          ✓ Of every pair it is clear whether they share, though readings are never exact.
        </p>
      )}
      {doubt && doubt.pairCount > 0 && (
        <>
          <p className={styles.text}>
            Of {count(doubt.pairCount, "pair")} it is not clear whether they share, since readings are never
            exact. Most in doubt: {mostInDoubt(doubt)}.
          </p>
          <ul className={styles.list} aria-label="Pairs that are not clear, most doubtful first">
            {doubt.pairs.slice(0, shown).map((pair) => (
              <PairInDoubt key={pair.places.join(" ")} figures={figures} pair={pair} />
            ))}
          </ul>
          <ShowMore
            what="pairs"
            left={doubt.pairs.length - shown}
            onMore={() => {
              setShown(shown + pageSize);
            }}
          />
          <p className={styles.quiet}>
            {readingErrorWords(second, columns)} {chartTeaches} Group numbers are those of “Who shares a
            body?” at your tolerances.
          </p>
        </>
      )}
    </Part>
  );
}

function PairInDoubt(props: { readonly figures: FiguresToGroup; readonly pair: ChangingPair }): ReactNode {
  const styles = useStyles();
  const { figures, pair } = props;
  const { chart } = figures;
  const { places, doubt, probability } = pair;
  return (
    <li className={styles.card}>
      <h3 className={styles.name}>
        {figureAt(chart, places[0])} and {figureAt(chart, places[1])}
      </h3>
      <p className={styles.text}>
        That they share is {chanceWords(probability)}
        {doubt ? `; ${doubt.column.heading} leaves most doubt` : ""}.
      </p>
      <p className={styles.text}>{changeWords(pair)}</p>
      {doubt && (
        <div className={styles.actions}>
          {places.map((place) => (
            <GoToCell
              key={place}
              figures={figures}
              place={place}
              column={doubt.column}
              label={`${doubt.column.heading} of ${figureAt(chart, place)}`}
            />
          ))}
        </div>
      )}
    </li>
  );
}

/** Brings a reading of the chart into sight. */
function GoToCell(props: {
  readonly figures: FiguresToGroup;
  readonly place: number;
  readonly column: MeasureColumn;
  readonly label: string;
}): ReactNode {
  const { workbook, say } = useSession();
  const { figures, place, column, label } = props;
  async function go(): Promise<void> {
    try {
      const { area } = figures.data;
      const row = figures.chart.rows[place];
      if (row === undefined) throw new InputError("The figure is not in the chart any more.");
      await workbook.select({
        sheet: area.sheet,
        row: area.row + row,
        column: area.column + column.position,
        rows: 1,
        columns: 1,
      });
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    }
  }
  return (
    <Button size="small" onClick={() => void go()}>
      {label}
    </Button>
  );
}

const nothingToWrite = {
  label: "",
  preview: "There is no reading to write: none would tell more about who shares.",
  done: "",
  at: startOn(""),
  isDone: true,
  edits: () => [],
};

/** As many readings as the worksheet function lists when it is not told. */
const usualCount = 10;

const forms = {
  formulas: "As a formula that follows every change",
  values: "As words and numbers that stay as they are",
} as const;

function WriteReadings(props: {
  readonly input: GroupsInput;
  readonly figures: FiguresToGroup;
  readonly part: string;
  readonly readings: readonly NextReading[];
  readonly asked: number;
}): ReactNode {
  const { input, figures, part, readings, asked } = props;
  const sheet = {
    name: "To measure",
    title: "What to measure next",
    what: readings.length === 0 ? "empty list" : `list of ${count(readings.length, "reading")}`,
    values: [
      ["Figure", "Measure", "Settles", "Needed by"],
      ...readings.map(({ figure, column, settles, neededBy }) => [figure, column.heading, settles, neededBy]),
    ],
    widths: [128, 144, 80, 96],
  };
  return (
    <WriteBox
      forms={forms}
      plan={(form) => {
        if (form === "values") return readings.length > 0 ? planValues(sheet, input) : nothingToWrite;
        const more = readings.length > usualCount ? [String(readings.length)] : [];
        return planBodyFormula(sheet, { name: "FIT.MEASURENEXT", more, part }, input, figures);
      }}
      asked={asked}
    />
  );
}

/** Where the figure stands that lacks the reading. */
function placeOf({ figures }: Chart, { figure, column }: NextReading): number {
  return figures.findIndex((name, place) => name === figure && Number.isNaN(column.mm[place] ?? Number.NaN));
}

const mostNames = 4;

function mostInDoubt({ figures }: ChangingGroups): string {
  return figures
    .slice(0, mostNames)
    .map(({ figure, pairs }) => `${figure} (${count(pairs, "pair")})`)
    .join(", ");
}

function readingsIn(answer: JobAnswer): readonly NextReading[] | undefined {
  return answer.kind === "next" ? answer.readings : undefined;
}

function doubtIn(answer: JobAnswer): ChangingGroups | undefined {
  return answer.kind === "doubt" ? answer.doubt : undefined;
}
