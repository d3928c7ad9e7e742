import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo, useState } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import { apart } from "../../addin/similarity/pair.ts";
import type { Sharing } from "../../addin/similarity/certainty/sharing.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { differenceWords, isBeyond, toleranceWords } from "../../addin/similarity/differenceWords.ts";
import type { GroupCard, PairDifference } from "../../addin/similarity/cards.ts";
import { card, plainList } from "../ui/boxes.ts";
import { DoubtList } from "../ui/DoubtWords.tsx";
import { Part } from "../ui/Part.tsx";
import { ShowMore } from "../ui/ShowMore.tsx";
import { count } from "../ui/words.ts";
import type { Sureness } from "./chances.ts";
import { sureness } from "./chances.ts";
import { chanceWords, differMostWords, namesWords } from "./words.ts";
import type { Uncertainty } from "../../addin/similarity/certainty/uncertainty.ts";

const useStyles = makeStyles({
  list: plainList,
  card,
  head: { display: "flex", flexWrap: "wrap", columnGap: "8px", justifyContent: "space-between" },
  name: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600 },
  members: { margin: 0, overflowWrap: "anywhere" },
  facts: { margin: 0, display: "flex", flexDirection: "column", gap: "4px", overflowWrap: "anywhere" },
  term: { display: "inline", color: tokens.colorNeutralForeground3 },
  fact: { display: "inline", margin: 0 },
  base: { fontWeight: 600 },
  text: { margin: 0, overflowWrap: "anywhere" },
});

/** Cards shown at first and added by “Show more”. */
const pageSize = 20;
/** Names written out of one group, or of the figures alone. */
const mostNames = 60;
/** In larger groups there are too many pairs to ask each time the cut moves. */
const mostForCertainty = 80;

/** A card for each group of two or more, then the figures alone. */
export function GroupCards(props: {
  readonly chart: Chart;
  /** With the tolerances that the groups are made by. */
  readonly columns: readonly ComparedColumn[];
  /** Of the readings. */
  readonly uncertainty: Uncertainty;
  /** How the pairs of the chart come about; not there while it is worked out. */
  readonly sharing: Sharing | undefined;
  readonly cards: readonly GroupCard[];
  /** What the group of each figure rests on, see `groupMarks`; not there while the chart is being checked. */
  readonly marks: readonly string[] | undefined;
}): ReactNode {
  const styles = useStyles();
  const { chart, columns, uncertainty, sharing, cards, marks } = props;
  const [shown, setShown] = useState(pageSize);
  const groups = cards.filter(({ figures }) => figures.length > 1);
  return (
    <>
      <ul className={styles.list} aria-label="Groups, largest first">
        {groups.slice(0, shown).map((group) => (
          <Group key={group.number} {...{ chart, columns, uncertainty, sharing, group, marks }} />
        ))}
      </ul>
      <ShowMore
        what="groups"
        left={groups.length - shown}
        onMore={() => {
          setShown(shown + pageSize);
        }}
      />
      <Alone {...{ chart, columns, marks }} cards={cards.filter(({ figures }) => figures.length === 1)} />
    </>
  );
}

function Group(props: {
  readonly chart: Chart;
  readonly columns: readonly ComparedColumn[];
  readonly uncertainty: Uncertainty;
  /** How the pairs of the chart come about; not there while it is worked out. */
  readonly sharing: Sharing | undefined;
  readonly group: GroupCard;
  readonly marks: readonly string[] | undefined;
}): ReactNode {
  const styles = useStyles();
  const { chart, columns, uncertainty, sharing, group, marks } = props;
  const { number, figures, places, base, binding, outsider, perhaps } = group;
  const sure = useMemo(
    () =>
      sharing && places.length <= mostForCertainty
        ? sureness(columns, places, uncertainty, sharing)
        : undefined,
    [columns, places, uncertainty, sharing],
  );
  return (
    <li className={styles.card} data-group={number}>
      <div className={styles.head}>
        <h3 className={styles.name}>Group {number}</h3>
        <span>{count(figures.length, "figure")}</span>
      </div>
      <p className={styles.members}>{namesWords(figures, mostNames)}</p>
      <DoubtList label={`Doubtful in group ${String(number)}`} doubts={doubtsAt(places, figures, marks)} />
      <dl className={styles.facts}>
        <div>
          <dt className={styles.term}>Draft for: </dt>
          <dd className={mergeClasses(styles.fact, styles.base)}>{base}</dd>
        </div>
        <div>
          <dt className={styles.term}>Differ most: </dt>
          <dd className={styles.fact}>{binding ? bindingWords(binding) : "Nothing differs."}</dd>
        </div>
        <div>
          <dt className={styles.term}>Nearest outside: </dt>
          <dd className={styles.fact}>
            {outsider ? (
              <>
                {outsider.figure}
                {outsider.keptOutBy
                  ? `: ${keptOutWords(outsider.keptOutBy)}`
                  : ": differs from none of them."}
              </>
            ) : (
              "No other figure can be compared with all of them."
            )}
          </dd>
        </div>
        {perhaps.length > 0 && (
          <div>
            <dt className={styles.term}>Perhaps: </dt>
            <dd className={styles.fact}>
              {namesWords(perhaps, mostNames)}: nothing known keeps {perhaps.length === 1 ? "it" : "them"}{" "}
              out, but readings are missing.
            </dd>
          </div>
        )}
        <div>
          <dt className={styles.term}>How sure: </dt>
          <dd className={styles.fact}>
            {sure
              ? sureWords(chart, sure)
              : !sharing && places.length <= mostForCertainty
                ? "Being worked out."
                : `Not worked out for more than ${String(mostForCertainty)} figures.`}
          </dd>
        </div>
      </dl>
    </li>
  );
}

/** The figures whose group rests on doubtful readings; those of which the same is to be said, together. */
function doubtsAt(
  places: readonly number[],
  names: readonly string[],
  marks: readonly string[] | undefined,
): readonly { readonly name: string; readonly says: string }[] {
  const ofMark = new Map<string, string[]>();
  places.forEach((place, i) => {
    const says = marks?.[place] ?? "";
    if (says !== "") ofMark.set(says, [...(ofMark.get(says) ?? []), names[i] ?? ""]);
  });
  return [...ofMark].map(([says, named]) => ({ name: namesWords(named, mostNames), says }));
}

function bindingWords(binding: PairDifference): string {
  const { figure, other } = binding;
  return `${other} beside ${figure}: ${differMostWords(binding)}, of ${toleranceWords(binding)} allowed.`;
}

function keptOutWords(difference: PairDifference): string {
  const { figure } = difference;
  const against = `than ${figure}`;
  return isBeyond(difference)
    ? `${differenceWords(difference)} ${against}, only ${toleranceWords(difference)} allowed.`
    : `at most ${differenceWords(difference)} ${against}, so it would fit here too; it sits better in its own group.`;
}

function sureWords(chart: Chart, { ofAll, least }: Sureness): string {
  const words = `${chanceWords(ofAll)} that every two share`;
  if (ofAll >= 0.995 || !least?.doubt) return `${words}.`;
  const names = least.pair.map((place) => chart.figures[place] ?? "");
  return `${words}; least sure are ${names.join(" and ")}, by their ${least.doubt.column.heading}.`;
}

/** Figures by themselves, those that cannot be compared yet apart. */
function Alone(props: {
  readonly chart: Chart;
  readonly columns: readonly ComparedColumn[];
  readonly cards: readonly GroupCard[];
  readonly marks: readonly string[] | undefined;
}): ReactNode {
  const styles = useStyles();
  const { columns, cards, marks } = props;
  const known = cards.map(({ figures, places }) => {
    const [place = 0] = places;
    return { place, name: figures[0] ?? "", itself: apart(columns, place, place) };
  });
  const alone = known.filter(({ itself }) => !Number.isNaN(itself.distance));
  const unknown = known.filter(({ itself }) => Number.isNaN(itself.distance));
  return (
    <>
      {alone.length > 0 && (
        <Part title={`Alone: ${count(alone.length, "figure")}`}>
          <p className={styles.text}>
            {namesWords(
              alone.map(({ name }) => name),
              mostNames,
            )}
          </p>
          <DoubtList
            label="Doubtful among those alone"
            doubts={doubtsAt(
              alone.map(({ place }) => place),
              alone.map(({ name }) => name),
              marks,
            )}
          />
        </Part>
      )}
      {unknown.length > 0 && (
        <Part title={`Cannot be compared yet: ${count(unknown.length, "figure")}`}>
          <ul className={styles.list}>
            {unknown.slice(0, mostNames).map(({ name, itself }, i) => (
              <li key={i} className={styles.text}>
                {name}: {itself.compared} of {itself.of} measures are known
                {itself.lacking.length > 0 &&
                  `; ${itself.lacking.map(({ column }) => column.heading).join(", ")} must be`}
                .
              </li>
            ))}
            {unknown.length > mostNames && <li>and {unknown.length - mostNames} more</li>}
          </ul>
        </Part>
      )}
    </>
  );
}
