import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo } from "react";
import type { Fitting } from "../../addin/fit/match.ts";
import type { Verdict } from "../../addin/fit/verdict.ts";
import { rank, verdicts } from "../../addin/fit/verdict.ts";
import type { GroupedFigure } from "../../addin/similarity/groups.ts";
import { bodiesIn } from "../groups/bodies.ts";
import type { FiguresToGroup, GroupsInput } from "../groups/readGroups.ts";
import { readGroups } from "../groups/readGroups.ts";
import { namesWords } from "../groups/words.ts";
import { useSession } from "../shell/session.ts";
import { useRead } from "../shell/useRead.ts";
import { FailureBox } from "../ui/FailureBox.tsx";
import { OpenList } from "../ui/OpenList.tsx";
import { count } from "../ui/words.ts";
import type { Pair, RankedPair } from "./ranking.ts";
import { countVerdicts } from "./ranking.ts";
import { VerdictWords } from "./VerdictWords.tsx";

const useStyles = makeStyles({ text: { margin: 0 } });

/** Every table as it is found; kept, since another object would be read anew. */
const usual = {};
const mostNames = 4;

/** A body with the figures that have it, and what one pattern is on them. */
export interface BodyWearing {
  /** The figure to draft for. */
  readonly base: RankedPair;
  readonly figures: readonly RankedPair[];
  /** The worst of its figures. */
  readonly verdict: Verdict;
}

/** Figures with verdicts → bodies, in the order of their first figure; a body is as good as the worst of its figures. */
export function bodiesOf(
  pairs: readonly RankedPair[],
  grouped: readonly GroupedFigure[],
): readonly BodyWearing[] {
  const bodies = new Map<number, RankedPair[]>();
  for (const pair of pairs) {
    const group = grouped[pair.figure]?.group ?? -1 - pair.figure;
    bodies.set(group, [...(bodies.get(group) ?? []), pair]);
  }
  return [...bodies.values()]
    .map((figures): BodyWearing => {
      const [first] = figures;
      const base = figures.find(({ figure, explanation }) => grouped[figure]?.base === explanation.figure);
      const worst = Math.max(...figures.map(({ explanation }) => rank[explanation.verdict]));
      return { base: base ?? first!, figures, verdict: verdicts[worst] ?? "not known" };
    })
    .sort((a, b) => rank[a.verdict] - rank[b.verdict]);
}

/** Bodies in the place of figures, best first; each opens the reasons of the figure to draft for. */
export function BodyList(props: {
  readonly fitting: Fitting;
  readonly pairs: readonly RankedPair[];
  /** What a pair rests on, where readings are doubtful. */
  readonly doubtOf: (pair: RankedPair) => string | undefined;
  readonly onOpen: (pair: Pair) => void;
}): ReactNode {
  const styles = useStyles();
  const { fitting, pairs, doubtOf, onOpen } = props;
  const { book } = useSession();
  const groups = useRead(readGroups, usual);
  const grouped = groups && groupedFor(groups, fitting, (figures) => book.once(bodiesIn, figures));
  const bodies = useMemo(
    () => (typeof grouped === "object" ? bodiesOf(pairs, grouped) : []),
    [pairs, grouped],
  );
  if (grouped === undefined) return <p className={styles.text}>Looking for shared bodies …</p>;
  if (typeof grouped === "string") return <FailureBox what="Bodies are not known." why={grouped} />;
  const says = countVerdicts(bodies.map(({ verdict }) => verdict))
    .map((each) => `${each.count.toLocaleString("en-GB")} ${each.verdict}`)
    .join(", ");
  return (
    <>
      <p className={styles.text} aria-live="polite">
        {count(bodies.length, "body", "bodies")}: {says}.
      </p>
      <OpenList
        label="Bodies, best first"
        items={bodies}
        keyOf={({ base }) => String(base.figure)}
        rowOf={({ base, figures, verdict }) => ({
          name: namesWords(
            figures.map(({ explanation }) => explanation.figure),
            mostNames,
          ),
          says: <VerdictWords verdict={verdict} />,
          words: wordsOf(base, figures),
          doubt: bodyDoubt(figures, doubtOf),
        })}
        onOpen={({ base }) => {
          onOpen(base);
        }}
      />
    </>
  );
}

/** What the figures have in common, or where they differ: “fits: Orla, Orsin; snug: Orwen”. */
function wordsOf(base: RankedPair, figures: readonly RankedPair[]): string | undefined {
  const counts = countVerdicts(figures.map(({ explanation }) => explanation.verdict));
  if (counts.length === 1) return base.explanation.verdict === "fits" ? undefined : base.explanation.words;
  return counts
    .map(({ verdict }) => {
      const names = figures
        .filter(({ explanation }) => explanation.verdict === verdict)
        .map(({ explanation }) => explanation.figure);
      return `${verdict}: ${namesWords(names, mostNames)}`;
    })
    .join("; ");
}

/** Which of the figures rest on doubtful readings. */
function bodyDoubt(
  figures: readonly RankedPair[],
  doubtOf: (pair: RankedPair) => string | undefined,
): string | undefined {
  const doubted = figures.filter((pair) => doubtOf(pair) !== undefined);
  if (doubted.length === 0) return undefined;
  const [only] = figures.length === 1 ? figures : [];
  const names = doubted.map(({ explanation }) => explanation.figure);
  return only ? doubtOf(only) : `Rests on doubtful readings of ${namesWords(names, mostNames)}.`;
}

function groupedFor(
  { figures, failure }: GroupsInput,
  { view }: Fitting,
  group: (figures: FiguresToGroup) => readonly GroupedFigure[] | string,
): readonly GroupedFigure[] | string {
  if (!figures) return failure ?? "There is no chart.";
  if (figures.chart !== view.chart)
    return "Groups goes by another table of figures than Fit. Choose the same one.";
  return group(figures);
}
