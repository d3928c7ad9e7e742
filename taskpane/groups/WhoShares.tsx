import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useDeferredValue, useMemo } from "react";
import type { Sharing } from "../../addin/similarity/certainty/sharing.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import type { GroupCard } from "../../addin/similarity/cards.ts";
import { useDoubts } from "../check/useCheck.ts";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import { doubtSign } from "../ui/DoubtWords.tsx";
import { FailureBox } from "../ui/FailureBox.tsx";
import { useSession } from "../shell/session.ts";
import { QuestionNav } from "../ui/QuestionNav.tsx";
import { count } from "../ui/words.ts";
import { GroupCards } from "./GroupCards.tsx";
import type { GroupTree, GroupSettings, GroupView } from "./grouping.ts";
import { groupingAt, scaledColumns, groupViews } from "./grouping.ts";
import { HowTheySit } from "./HowTheySit.tsx";
import { MapView } from "./MapView.tsx";
import type { GroupMethod } from "./methods.ts";
import { groupMethods, methodWords } from "./methods.ts";
import { partOf, partOptions } from "./parts.ts";
import type { FiguresToGroup, GroupsInput } from "./readGroups.ts";
import type { SecondReadings } from "./secondReadings.ts";
import { readingErrorWords } from "./secondReadings.ts";
import { MendedWords, SolveWords } from "./SolveWords.tsx";
import { TimesField } from "./TimesField.tsx";
import { TreeView } from "./TreeView.tsx";
import { useCompared } from "./useCompared.ts";
import type { JobAnswer } from "../work/job.ts";
import { useJob } from "../work/useJob.ts";
import { useMended } from "./useMended.ts";
import { useSolve } from "./useSolve.ts";
import { chartTeaches, fewComparedWords, groupingWords, shownTimes } from "./words.ts";
import { WorkingWords } from "../work/Working.tsx";
import { WriteGroups } from "./WriteGroups.tsx";
import { repeatedUncertainty } from "../../addin/similarity/certainty/uncertainty.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
  result: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600 },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
});

const viewWords: Readonly<Record<GroupView, string>> = {
  cards: "As cards",
  tree: "As a tree",
  map: "As a map",
};

/** Question 1: the groups of figures that share a body, as cards, tree and map, and writing them. */
export function WhoShares(props: {
  readonly input: GroupsInput;
  readonly figures: FiguresToGroup;
  readonly settings: GroupSettings;
  readonly onSettings: (settings: GroupSettings) => void;
  /** Counts up when the user asks to write; 0 while they have not. */
  readonly writing: number;
}): ReactNode {
  const { input, figures, settings, onSettings, writing } = props;
  const { method, cut } = settings;
  const { part, columns, failure } = useCompared(figures, settings.part);
  const parts = partOptions(figures.garments);
  const change = (changed: Partial<GroupSettings>): void => {
    onSettings({ ...settings, ...changed });
  };
  return (
    <>
      <Disclosure
        title="What counts"
        says={`${partOf(parts, part)}; ${cut === 1 ? "your tolerances" : `${shownTimes(cut)} times your tolerances`}; ${methodWords[method].name.toLowerCase()}`}
      >
        <Choice
          label="What is shared"
          value={part}
          options={parts}
          onChoose={(next) => {
            change({ part: next });
          }}
        />
        <TimesField
          label="How far two figures may differ"
          hint={`1 = your tolerances${figures.tolerancesTable ? `, table ${figures.tolerancesTable.name}` : ", the usual ones of Measure Book"}`}
          value={cut}
          onChange={(next) => {
            change({ cut: next });
          }}
        />
        <Choice
          label="What makes a group"
          value={method}
          options={groupMethods.map((each) => [each, methodWords[each].name] as const)}
          hint={methodWords[method].says}
          onChoose={(next) => {
            change({ method: next });
          }}
        />
      </Disclosure>
      {failure !== undefined && <FailureBox what="Cannot be compared." why={failure} />}
      {columns && (
        <Groups
          input={input}
          figures={figures}
          columns={columns}
          settings={{ ...settings, part }}
          onChange={change}
          writing={writing}
        />
      )}
    </>
  );
}

function Groups(props: {
  readonly input: GroupsInput;
  readonly figures: FiguresToGroup;
  readonly columns: readonly ComparedColumn[];
  readonly settings: GroupSettings;
  readonly onChange: (changed: Partial<GroupSettings>) => void;
  readonly writing: number;
}): ReactNode {
  const styles = useStyles();
  const { input, figures, columns, settings, onChange, writing } = props;
  const { book } = useSession();
  const { chart, second } = figures;
  const { method, view } = settings;
  // The cut line follows the hand; the groups follow it as soon as they can.
  const cut = useDeferredValue(settings.cut);
  const linkage = method === "fewest" ? "complete" : method;
  const treeJob = useMemo(
    () => ({ kind: "tree" as const, chart, columns, method: linkage }),
    [chart, columns, linkage],
  );
  const treeWork = useJob(treeJob, treeIn);
  const tree = treeWork.answer;
  const task = useMemo(
    () =>
      method === "fewest"
        ? { kind: "groups" as const, figures: chart.figures, columns, reach: cut }
        : undefined,
    [method, chart, columns, cut],
  );
  const solving = useSolve(task);
  const groupOf = method === "fewest" ? solving.answer?.groupOf : tree && book.once(groupingAt, tree, cut);
  const scaled = book.once(scaledColumns, columns, cut);
  const cardsJob = useMemo(
    () => groupOf && { kind: "cards" as const, chart, columns: scaled, groupOf },
    [chart, scaled, groupOf],
  );
  const cardsWork = useJob(cardsJob, cardsIn);
  const cards = cardsWork.answer;
  const { errors } = second;
  const uncertainty = book.once(repeatedUncertainty, errors);
  const sharingJob = useMemo(
    () => ({ kind: "sharing" as const, chart, columns, errors }),
    [chart, columns, errors],
  );
  const sharing = useJob(sharingJob, sharingIn).answer;
  const doubtful = useDoubts(figures.table, chart);
  const mended = useMended(task, solving, chart, doubtful);
  const after = mended?.ended === undefined ? undefined : mended.answer?.groupOf;
  const marksJob = useMemo(() => {
    const by = method === "fewest" ? undefined : method;
    return (
      groupOf &&
      doubtful && { kind: "marks" as const, chart, columns, groupOf, doubtful, method: by, cut, after }
    );
  }, [chart, columns, groupOf, doubtful, method, cut, after]);
  const marks = useJob(marksJob, marksIn).answer;
  const bases = useMemo(() => new Set((cards ?? []).map(baseOf)), [cards]);
  const many = count(chart.figures.length, "figure");
  const few =
    settings.part === "body" ? fewComparedWords(columns.map(({ column }) => column.heading)) : undefined;

  return (
    <>
      <WorkingWords working={treeWork} doing={`Comparing ${many} with each other`} />
      {task && <SolveWords solving={solving} what="group" many={many} />}
      {groupOf && (
        <>
          <h2 className={styles.result} aria-live="polite">
            {groupingWords(groupOf)}
          </h2>
          {few !== undefined && <p className={styles.text}>◆ {few}</p>}
          <MendedWords solving={mended} what="group" />
          {marks && (
            <MarkWords marks={marks} isToldWhatChanges={method !== "fewest" || after !== undefined} />
          )}
          <QuestionNav
            label="How to show the groups"
            questions={groupViews}
            words={viewWords}
            question={view}
            onAsk={(next) => {
              onChange({ view: next });
            }}
          />
        </>
      )}
      {groupOf && view === "cards" && (
        <>
          <WorkingWords working={cardsWork} doing="Looking for what binds each group" />
          {cards && <GroupCards {...{ chart, columns: scaled, uncertainty, sharing, cards, marks }} />}
        </>
      )}
      {groupOf && view === "tree" && method === "fewest" && (
        <p className={styles.text}>
          The fewest groups are found all at once, not by joining figures step by step, so there is no tree of
          them. Choose “{methodWords.complete.name}” to see one.
        </p>
      )}
      {groupOf && view === "tree" && method !== "fewest" && tree && (
        <TreeView
          key={chart.figures.length}
          chart={chart}
          tree={tree}
          groupOf={groupOf}
          bases={bases}
          cut={settings.cut}
          onCut={(next) => {
            onChange({ cut: next });
          }}
        />
      )}
      {groupOf && view === "map" && (
        <MapView chart={chart} columns={columns} groupOf={groupOf} bases={bases} />
      )}
      {groupOf && <HowTheySit chart={chart} columns={columns} groupOf={groupOf} />}
      <Details
        columns={columns}
        second={second}
        method={method}
        tree={method === "fewest" ? undefined : tree}
      />
      {groupOf && cards && (
        <WriteGroups
          input={input}
          figures={figures}
          columns={columns}
          settings={{ ...settings, cut }}
          groupOf={groupOf}
          cards={cards}
          marks={marks}
          asked={writing}
        />
      )}
    </>
  );
}

/** How many figures are where they are by doubtful readings. */
function MarkWords(props: {
  readonly marks: readonly string[];
  readonly isToldWhatChanges: boolean;
}): ReactNode {
  const styles = useStyles();
  const marked = props.marks.filter((mark) => mark !== "").length;
  if (marked === 0) return null;
  return (
    <p className={styles.text}>
      {doubtSign} For {count(marked, "figure")} the group rests on doubtful readings: marked on the cards
      {props.isToldWhatChanges ? ", with what becomes of it if they are mended." : "."}
    </p>
  );
}

/** What was compared, the technical names, and how far the tree can be trusted. */
function Details(props: {
  readonly columns: readonly ComparedColumn[];
  readonly second: SecondReadings;
  readonly method: GroupMethod;
  readonly tree: GroupTree | undefined;
}): ReactNode {
  const styles = useStyles();
  const { columns, second, method, tree } = props;
  const needed = columns
    .filter(({ required }) => required)
    .map(({ column }) => column.heading)
    .join(", ");
  return (
    <Disclosure title="What was compared" says={count(columns.length, "measure")}>
      <p className={styles.text}>{columns.map(({ column }) => column.heading).join(", ")}.</p>
      <p className={styles.text}>
        Two figures are as far apart as their worst measure, counted in its tolerance: 1 uses all of it. A
        measure that one of them lacks is left out. {needed === "" ? "With" : `Without ${needed}, or with`}{" "}
        less than half of the measures, nobody can say.
      </p>
      <p className={styles.text}>
        How sure: {readingErrorWords(second, columns)} {chartTeaches}
      </p>
      <p className={styles.quiet}>
        Technical name: {methodWords[method].technical}, by the greatest difference in tolerances.
      </p>
      {tree && !Number.isNaN(tree.faithfulness) && (
        <p className={styles.quiet}>
          How faithfully the tree shows the differences: {shownTimes(tree.faithfulness)}, where 1 is perfectly
          (cophenetic correlation).
        </p>
      )}
    </Disclosure>
  );
}

/** Where the base figure of a group stands in the chart. */
function baseOf({ base, figures, places }: GroupCard): number {
  return places[figures.indexOf(base)] ?? -1;
}

function sharingIn(answer: JobAnswer): Sharing | undefined {
  return answer.kind === "sharing" ? answer.sharing : undefined;
}

function marksIn(answer: JobAnswer): readonly string[] | undefined {
  return answer.kind === "marks" ? answer.marks : undefined;
}

function treeIn(answer: JobAnswer): GroupTree | undefined {
  return answer.kind === "tree" ? answer.tree : undefined;
}

function cardsIn(answer: JobAnswer): readonly GroupCard[] | undefined {
  return answer.kind === "cards" ? answer.cards : undefined;
}
