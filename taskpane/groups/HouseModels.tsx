import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useDeferredValue, useMemo, useState } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { differenceWords } from "../../addin/similarity/differenceWords.ts";
import type { BasesAnswer } from "../../addin/similarity/fewest/fewestShared.ts";
import { card, plainList } from "../ui/boxes.ts";
import { Choice } from "../ui/Choice.tsx";
import { useDoubts } from "../check/useCheck.ts";
import { Disclosure } from "../ui/Disclosure.tsx";
import { DoubtList } from "../ui/DoubtWords.tsx";
import { FailureBox } from "../ui/FailureBox.tsx";
import { Part } from "../ui/Part.tsx";
import { ShowMore } from "../ui/ShowMore.tsx";
import { useSession } from "../shell/session.ts";
import { count } from "../ui/words.ts";
import { WriteBox } from "../shell/WriteBox.tsx";
import type { HouseModel, ModelDoubt } from "./houseModels.ts";
import { houseModels, modelDoubts, modelRows } from "./houseModels.ts";
import { partOf, partOptions } from "./parts.ts";
import type { FiguresToGroup, GroupsInput } from "./readGroups.ts";
import { figureAt } from "./sharing.ts";
import { MendedWords, SolveWords } from "./SolveWords.tsx";
import { TimesField } from "./TimesField.tsx";
import { useCompared } from "./useCompared.ts";
import { useMended } from "./useMended.ts";
import { useSolve } from "./useSolve.ts";
import { namesWords, tolerancesWords } from "./words.ts";
import { planBodyFormula, planValues } from "./writeSheet.ts";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  result: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600 },
  list: plainList,
  card,
  head: { display: "flex", flexWrap: "wrap", columnGap: "8px", justifyContent: "space-between" },
  name: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600 },
});

/** Cards shown at first and added by “Show more”. */
const pageSize = 20;
/** Names written out on one card, or of the figures that serve only themselves. */
const mostNames = 60;

export interface ModelSettings {
  readonly part: string;
  /** How far a house model may be from the figures that it serves, in tolerances. */
  readonly reach: number;
}

/** Question 3: the fewest figures to draft for, so that all others are near enough to one of them. */
export function HouseModels(props: {
  readonly input: GroupsInput;
  readonly figures: FiguresToGroup;
  readonly settings: ModelSettings;
  readonly onSettings: (settings: ModelSettings) => void;
  readonly writing: number;
}): ReactNode {
  const { input, figures, settings, onSettings, writing } = props;
  const { part, columns, failure } = useCompared(figures, settings.part);
  const parts = partOptions(figures.garments);
  return (
    <>
      <Disclosure
        title="What counts"
        says={`${partOf(parts, part)}; altered ${settings.reach === 1 ? "as far as your tolerances allow" : `by up to ${tolerancesWords(settings.reach)}`}`}
      >
        <Choice
          label="What is drafted for"
          value={part}
          options={parts}
          onChoose={(next) => {
            onSettings({ ...settings, part: next });
          }}
        />
        <TimesField
          label="How far you are ready to alter"
          hint="1 = as far as your tolerances allow; 2 = twice as far"
          value={settings.reach}
          onChange={(reach) => {
            onSettings({ ...settings, reach });
          }}
        />
      </Disclosure>
      {failure !== undefined && <FailureBox what="Cannot be compared." why={failure} />}
      {columns && (
        <Models
          input={input}
          figures={figures}
          columns={columns}
          settings={{ ...settings, part }}
          writing={writing}
        />
      )}
    </>
  );
}

function Models(props: {
  readonly input: GroupsInput;
  readonly figures: FiguresToGroup;
  readonly columns: readonly ComparedColumn[];
  readonly settings: ModelSettings;
  readonly writing: number;
}): ReactNode {
  const styles = useStyles();
  const { input, figures, columns, settings, writing } = props;
  const { book } = useSession();
  const { chart } = figures;
  const reach = useDeferredValue(settings.reach);
  const task = useMemo(
    () => ({ kind: "bases" as const, figures: chart.figures, columns, reach }),
    [chart, columns, reach],
  );
  const solving = useSolve(task);
  const [shown, setShown] = useState(pageSize);
  const { answer } = solving;
  const models = answer ? book.once(houseModels, chart, columns, answer) : [];
  const doubtful = useDoubts(figures.table, chart);
  const mended = useMended(task, solving, chart, doubtful);
  const after = mended?.ended === undefined ? undefined : mended.answer;
  const inDoubt =
    answer && doubtful ? book.once(modelDoubts, chart, columns, answer, reach, doubtful, after) : [];
  const doubtsAt = (places: readonly number[]) =>
    inDoubt
      .filter(({ place }) => places.includes(place))
      .map(({ place, says }) => ({ name: figureAt(chart, place), says }));
  const serving = models.filter(({ served }) => served.length > 0);
  const alone = models.filter(({ served }) => served.length === 0);
  return (
    <>
      <SolveWords solving={solving} what="house model" many={count(chart.figures.length, "figure")} />
      {answer && (
        <>
          <h2 className={styles.result} aria-live="polite">
            {count(answer.count, "house model")} for {count(chart.figures.length, "figure")}: {serving.length}{" "}
            {serving.length === 1 ? "serves" : "serve"} others, {alone.length}{" "}
            {alone.length === 1 ? "serves" : "serve"} only {alone.length === 1 ? "itself" : "themselves"}.
          </h2>
          <MendedWords solving={mended} what="house model" />
          {answer.isLeastAlteration && (
            <p className={styles.text}>No other choice of as few needs less altering in all.</p>
          )}
          <ul className={styles.list} aria-label="House models, those that serve most first">
            {serving.slice(0, shown).map((model) => (
              <Model
                key={model.base}
                chart={chart}
                model={model}
                doubts={doubtsAt([model.base, ...model.served])}
              />
            ))}
          </ul>
          <ShowMore
            what="house model"
            left={serving.length - shown}
            onMore={() => {
              setShown(shown + pageSize);
            }}
          />
          {alone.length > 0 && (
            <Part title={`Only for themselves: ${count(alone.length, "figure")}`}>
              <p className={styles.text}>
                {namesWords(
                  alone.map(({ base }) => figureAt(chart, base)),
                  mostNames,
                )}
              </p>
              <DoubtList
                label="Doubtful among those only for themselves"
                doubts={doubtsAt(alone.map(({ base }) => base))}
              />
            </Part>
          )}
          <WriteModels
            input={input}
            figures={figures}
            columns={columns}
            settings={{ ...settings, reach }}
            answer={answer}
            inDoubt={inDoubt}
            asked={writing}
          />
        </>
      )}
    </>
  );
}

function Model(props: {
  readonly chart: Chart;
  readonly model: HouseModel;
  /** What rests on doubtful readings, by figure. */
  readonly doubts: Parameters<typeof DoubtList>[0]["doubts"];
}): ReactNode {
  const styles = useStyles();
  const { chart, model, doubts } = props;
  const { base, served, farthest } = model;
  return (
    <li className={styles.card}>
      <div className={styles.head}>
        <h3 className={styles.name}>{figureAt(chart, base)}</h3>
        <span>serves {count(served.length, "other")}</span>
      </div>
      <p className={styles.text}>
        {namesWords(
          served.map((place) => figureAt(chart, place)),
          mostNames,
        )}
      </p>
      <p className={styles.text}>
        {farthest
          ? `Most to alter: for ${figureAt(chart, farthest.place)}, ${differenceWords(farthest.difference)} (${tolerancesWords(farthest.difference.ofTolerance)}).`
          : "Nothing to alter: all of them are the same."}
      </p>
      <DoubtList label={`Doubtful with ${figureAt(chart, base)}`} doubts={doubts} />
    </li>
  );
}

const forms = {
  formulas: "As a formula that follows every change",
  values: "As words and numbers that stay as they are",
} as const;

function WriteModels(props: {
  readonly input: GroupsInput;
  readonly figures: FiguresToGroup;
  readonly columns: readonly ComparedColumn[];
  readonly settings: ModelSettings;
  readonly answer: BasesAnswer;
  readonly inDoubt: readonly ModelDoubt[];
  readonly asked: number;
}): ReactNode {
  const { input, figures, columns, settings, answer, inDoubt, asked } = props;
  const { part, reach } = settings;
  const sheet = {
    name: "House models",
    title: "Which figures to keep as house models",
    what: `house models of ${count(figures.chart.figures.length, "figure")}`,
    values: modelRows(figures.chart, columns, answer, inDoubt),
    widths: [128, 128, 144, 104, ...(inDoubt.length > 0 ? [480] : [])],
  };
  return (
    <WriteBox
      forms={forms}
      plan={(form) =>
        form === "values"
          ? planValues(sheet, input)
          : planBodyFormula(sheet, { name: "FIT.BASES", more: [String(reach)], part }, input, figures)
      }
      asked={asked}
    />
  );
}
