import { Field, Input, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo } from "react";
import { figureKey } from "../../addin/chart/find.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import type { Chart } from "../../addin/chart/chart.ts";
import type { GroupedFigure } from "../../addin/similarity/groups.ts";
import { useSession } from "../shell/session.ts";
import { WriteBox } from "../shell/WriteBox.tsx";
import { useDoubts } from "../check/useCheck.ts";
import { Choice } from "../ui/Choice.tsx";
import { doubtSign } from "../ui/DoubtWords.tsx";
import { FailureBox } from "../ui/FailureBox.tsx";
import { OpenList } from "../ui/OpenList.tsx";
import { SignedWords } from "../ui/SignedWords.tsx";
import type { Tone } from "../ui/SignedWords.tsx";
import { count } from "../ui/words.ts";
import type { JobAnswer } from "../work/job.ts";
import { useJob } from "../work/useJob.ts";
import { WorkingWords } from "../work/Working.tsx";
import type { DoubtfulPair, PairInAWord, PairWord } from "./allPairs.ts";
import { countPairs, pairsTable, pairWords } from "./allPairs.ts";
import { bodiesIn } from "./bodies.ts";
import type { FiguresToGroup, GroupsInput } from "./readGroups.ts";
import { figureAt } from "./sharing.ts";
import { useCompared } from "./useCompared.ts";
import { planValues } from "./writeSheet.ts";

const useStyles = makeStyles({ text: { margin: 0 } });

/** What is shown of all pairs. */
export interface PairSettings {
  readonly unit: "figures" | "bodies";
  /** The word of the pairs that are listed; the first that is said where nobody has chosen. */
  readonly word: PairWord | undefined;
  /** Part of the name of one of the two. */
  readonly name: string;
}

export const usualPairs: PairSettings = { unit: "figures", word: undefined, name: "" };

const looks: Readonly<Record<PairWord, readonly [sign: string, tone: Tone]>> = {
  "same body": ["●", "leaf"],
  "only some clothes": ["◐", "leaf"],
  "same shape": ["◇", "brass"],
  nothing: ["✕", "quiet"],
  "not known": ["?", "quiet"],
};

/** Every two figures, or bodies, with what they have in common in a word. */
export function AllPairs(props: {
  readonly input: GroupsInput;
  readonly figures: FiguresToGroup;
  readonly settings: PairSettings;
  readonly onSettings: (settings: PairSettings) => void;
  readonly onOpen: (place: number, other: number) => void;
  readonly writing: number;
}): ReactNode {
  const { columns, failure } = useCompared(props.figures, "body");
  if (failure !== undefined) return <FailureBox what="Cannot be compared." why={failure} />;
  return columns && <Pairs {...props} columns={columns} />;
}

function Pairs(
  props: Parameters<typeof AllPairs>[0] & { readonly columns: readonly ComparedColumn[] },
): ReactNode {
  const styles = useStyles();
  const { input, figures, settings, onSettings, onOpen, writing, columns } = props;
  const { unit, word, name } = settings;
  const { chart, garments, tolerances } = figures;
  const { book } = useSession();
  const grouped = book.once(bodiesIn, figures);
  const bodies = useMemo(() => placesOf(chart, typeof grouped === "string" ? [] : grouped), [chart, grouped]);
  const places = unit === "bodies" ? bodies.bases : bodies.all;
  const job = useMemo(
    () => ({ kind: "pairs" as const, chart, columns, garments, tolerances, places }),
    [chart, columns, garments, tolerances, places],
  );
  const working = useJob(job, pairsIn);
  const pairs = working.answer;
  const doubtful = useDoubts(figures.table, chart);
  const doubtJob = useMemo(
    () =>
      doubtful && { kind: "doubtfulPairs" as const, chart, columns, garments, tolerances, places, doubtful },
    [chart, columns, garments, tolerances, places, doubtful],
  );
  const inDoubt = useJob(doubtJob, doubtfulIn).answer;
  const doubtOf = useMemo(
    () => new Map((inDoubt ?? []).map((each) => [pairKey(each), each.says])),
    [inDoubt],
  );
  const counts = useMemo(() => countPairs(pairs ?? []), [pairs]);
  const shownWord = counts.find(([each]) => each === word)?.[0] ?? counts[0]?.[0];
  const key = figureKey(name);
  const isNamed = (place: number): boolean => figureKey(nameOf(place)).includes(key);
  const shown = (pairs ?? []).filter(
    (pair) => pair.word === shownWord && (isNamed(pair.place) || isNamed(pair.other)),
  );
  function nameOf(place: number): string {
    const others = unit === "bodies" ? (bodies.sizes.get(place) ?? 1) - 1 : 0;
    return others === 0 ? figureAt(chart, place) : `${figureAt(chart, place)} and ${String(others)} more`;
  }
  return (
    <>
      <Choice
        label="Pairs of"
        value={unit}
        options={[
          ["figures", `figures: ${String(bodies.all.length)}`],
          ["bodies", `bodies, with their figures: ${String(bodies.bases.length)}`],
        ]}
        onChoose={(next) => {
          onSettings({ ...settings, unit: next });
        }}
      />
      <WorkingWords working={working} doing={`Comparing ${count(places.length, "figure")} with each other`} />
      {pairs && shownWord && (
        <>
          <p className={styles.text} aria-live="polite">
            {count(pairs.length, "pair")}:{" "}
            {counts.map(([each, times]) => `${times.toLocaleString("en-GB")} ${each}`).join(", ")}.
            {doubtOf.size > 0 &&
              ` ${doubtSign} ${count(doubtOf.size, "pair rests", "pairs rest")} on doubtful readings.`}
          </p>
          <Choice
            label="Show those with"
            value={shownWord}
            options={counts.map(
              ([each, times]) => [each, `${each}: ${times.toLocaleString("en-GB")}`] as const,
            )}
            onChoose={(next) => {
              onSettings({ ...settings, word: next });
            }}
          />
          <Field label="Of whom" hint="Part of a name, or empty for all.">
            <Input
              type="search"
              value={name}
              onChange={(_, data) => {
                onSettings({ ...settings, name: data.value });
              }}
            />
          </Field>
          {shown.length === 0 && <p className={styles.text}>None of these pairs has such a name in it.</p>}
          {shown.length > 0 && (
            <OpenList
              key={`${shownWord} ${unit} ${key}`}
              label={`Pairs: ${shownWord}`}
              items={shown}
              keyOf={pairKey}
              rowOf={({ place, other, says }) => ({
                name: `${nameOf(place)} – ${nameOf(other)}`,
                says: (
                  <SignedWords sign={looks[shownWord][0]} tone={looks[shownWord][1]}>
                    {shownWord}
                  </SignedWords>
                ),
                words: says === "" ? undefined : says,
                doubt: doubtOf.get(pairKey({ place, other })),
              })}
              onOpen={({ place, other }) => {
                onOpen(place, other);
              }}
            />
          )}
          <WriteBox
            title="Write all pairs"
            forms={{ values: "To a new sheet: a row and a column for each, a word where they meet" }}
            plan={() => planValues(sheetOf(figures, places, pairs, unit, inDoubt), input)}
            asked={writing}
          />
        </>
      )}
    </>
  );
}

function pairKey({ place, other }: Pick<PairInAWord, "place" | "other">): string {
  return `${String(place)} ${String(other)}`;
}

function doubtfulIn(answer: JobAnswer): readonly DoubtfulPair[] | undefined {
  return answer.kind === "doubtfulPairs" ? answer.pairs : undefined;
}

function pairsIn(answer: JobAnswer): readonly PairInAWord[] | undefined {
  return answer.kind === "pairs" ? answer.pairs : undefined;
}

/** The figures of a chart, and one of each body: the one to draft for. */
function placesOf(chart: Chart, grouped: readonly GroupedFigure[]) {
  const all = chart.figures.map((_, place) => place);
  const seen = new Set<number>();
  const bases = all.filter((place) => {
    const { group, base } = grouped[place] ?? {};
    if (group === undefined || seen.has(group) || chart.figures[place] !== base) return false;
    seen.add(group);
    return true;
  });
  return { all, bases, sizes: new Map(all.map((place) => [place, grouped[place]?.size ?? 1])) };
}

function sheetOf(
  { chart }: FiguresToGroup,
  places: readonly number[],
  pairs: readonly PairInAWord[],
  unit: PairSettings["unit"],
  inDoubt: readonly DoubtfulPair[] | undefined,
) {
  return {
    name: unit === "bodies" ? "Pairs of bodies" : "All pairs",
    title: `What any two ${unit} have in common (${pairWords.slice(0, 3).join(", ")}, or nothing)`,
    what: `pairs of ${count(places.length, unit === "bodies" ? "body" : "figure", unit)}`,
    values: pairsTable(chart, places, pairs, inDoubt),
    widths: [128, ...places.map(() => 128)],
  };
}
