import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo } from "react";
import type { MeasureColumn } from "../../addin/chart/chart.ts";
import type { Doubt } from "../../addin/chart/doubt.ts";
import { compare } from "../../addin/fit/compare.ts";
import { printScale } from "../../addin/grading/printScale.ts";
import { printAdvice } from "../../addin/grading/printWords.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { shares } from "../../addin/similarity/shares.ts";
import { useDoubts } from "../check/useCheck.ts";
import { useSession } from "../shell/session.ts";
import { card, plainList } from "../ui/boxes.ts";
import { DoubtBox, DoubtWords } from "../ui/DoubtWords.tsx";
import { Part } from "../ui/Part.tsx";
import { PlainTable } from "../ui/PlainTable.tsx";
import { SignedWords } from "../ui/SignedWords.tsx";
import { shownLength } from "../ui/words.ts";
import { OutlineDrawing } from "./OutlineDrawing.tsx";
import type { FiguresToGroup } from "./readGroups.ts";
import { figureAt, shareDoubt } from "./sharing.ts";
import { useCompared } from "./useCompared.ts";
import { shownTimes } from "./words.ts";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  grade: { alignSelf: "flex-start" },
  list: plainList,
  card: { ...card, gap: "2px" },
  head: { display: "flex", flexWrap: "wrap", columnGap: "8px", justifyContent: "space-between" },
  what: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600 },
});

/** Two figures beside each other: drawn, what they share, measure by measure, and the way from one to the other. */
export function TwoFigures(props: {
  readonly figures: FiguresToGroup;
  readonly place: number;
  readonly other: number;
}): ReactNode {
  const styles = useStyles();
  const { figures, place, other } = props;
  const { chart, tolerances, garments } = figures;
  const found = useMemo(
    () => shares(chart, place, other, { tolerances, garments }),
    [chart, place, other, tolerances, garments],
  );
  const doubtful = useDoubts(figures.table, chart);
  const doubt = useMemo(
    () => doubtful && place !== other && shareDoubt(figures, place, other, doubtful),
    [figures, place, other, doubtful],
  );
  if (place === other) return <p className={styles.text}>Choose two different figures.</p>;
  const zones = found.slice(0, found.length - garments.length).filter(({ why }) => why !== noMeasure);
  return (
    <>
      <DoubtBox says={doubt ? [doubt] : []} />
      <Part title="Both over each other">
        <OutlineDrawing chart={chart} base={place} other={other} />
      </Part>
      {garments.length > 0 && (
        <Part title="Clothes">
          <ShareList found={found.slice(found.length - garments.length)} />
        </Part>
      )}
      <Part title="Parts of the body">
        <ShareList found={zones} />
      </Part>
      <Part title="Measure by measure">
        <Measures figures={figures} place={place} other={other} doubtful={doubtful} />
      </Part>
      <Part title={`From ${figureAt(chart, place)} to ${figureAt(chart, other)}`}>
        <Way figures={figures} place={place} other={other} />
      </Part>
    </>
  );
}

/** What `shares` says of a part that the chart knows nothing of: it is left out here. */
const noMeasure = "The chart has no measure for it.";

const looks = {
  yes: ["✓", "leaf"],
  no: ["✕", "thread"],
  "not known": ["?", "quiet"],
} as const;

interface Pair {
  readonly figures: FiguresToGroup;
  readonly place: number;
  readonly other: number;
}

/** Every measure of both, and the difference in the tolerance that counts for it. */
function Measures(props: Pair & { readonly doubtful: readonly Doubt[] | undefined }): ReactNode {
  const { figures, place, other, doubtful = [] } = props;
  const { chart, tolerances } = figures;
  const inDoubt = new Set(
    doubtful.flatMap(({ cells }) => cells.map(({ row, column }) => cellKey(row, column))),
  );
  const reading = (mm: number, at: number, { unit, position }: MeasureColumn): ReactNode => {
    const length = lengthOrBlank(mm, unit);
    if (length === "" || !inDoubt.has(cellKey(chart.rows[at] ?? -1, position))) return length;
    return (
      <>
        {length} <DoubtWords />
      </>
    );
  };
  const rows = compare(chart, place, other, tolerances).filter(
    ({ baseMm, targetMm }) => !(Number.isNaN(baseMm) && Number.isNaN(targetMm)),
  );
  return (
    <PlainTable
      label="Measure by measure"
      headings={[
        "Measure",
        figureAt(chart, place),
        `${figureAt(chart, other)} `,
        "Difference",
        "Of tolerance",
      ]}
      rows={rows.map(({ column, baseMm, targetMm, deltaMm, ofTolerance }) => [
        column.heading,
        reading(baseMm, place, column),
        reading(targetMm, other, column),
        Number.isNaN(deltaMm) ? "" : signedLength(deltaMm, column.unit),
        Number.isNaN(ofTolerance) ? (
          ""
        ) : (
          <SignedWords
            {...(ofTolerance <= 1 + 1e-9 ? { sign: "✓", tone: "leaf" } : { sign: "✕", tone: "thread" })}
          >
            {shownTimes(ofTolerance)}
          </SignedWords>
        ),
      ])}
    />
  );
}

function cellKey(row: number, column: number): string {
  return `${String(row)} ${String(column)}`;
}

function lengthOrBlank(mm: number, unit: LengthUnit): string {
  return Number.isNaN(mm) ? "" : shownLength(mm, unit);
}

function signedLength(mm: number, unit: LengthUnit): string {
  const sign = mm > 0 ? "+" : mm < 0 ? "−" : "";
  return `${sign}${shownLength(Math.abs(mm), unit)}`;
}

/** What a pattern of the one needs for the other. */
function Way({ figures, place, other }: Pair): ReactNode {
  const styles = useStyles();
  const { goTo } = useSession();
  const { columns } = useCompared(figures, "body");
  if (!columns) return null;
  const measures = columns.map(({ column }) => column);
  const { todo, why } = printAdvice(printScale(place, other, measures, figures.tolerances));
  return (
    <>
      <p className={styles.text}>
        {[todo, why]
          .filter((each) => each !== "")
          .map((each) => (each.endsWith(".") ? each : `${each}.`))
          .join(" ")}
      </p>
      <Button
        className={styles.grade}
        onClick={() => {
          goTo("grade");
        }}
      >
        Go to Grade
      </Button>
    </>
  );
}

function ShareList({ found }: { readonly found: ReturnType<typeof shares> }): ReactNode {
  const styles = useStyles();
  return (
    <ul className={styles.list}>
      {found.map(({ what, answer, why }) => {
        const [sign, tone] = looks[answer];
        return (
          <li key={what} className={styles.card}>
            <div className={styles.head}>
              <h3 className={styles.what}>{what}</h3>
              <SignedWords sign={sign} tone={tone}>
                {answer}
              </SignedWords>
            </div>
            <p className={styles.text}>{why}</p>
          </li>
        );
      })}
    </ul>
  );
}
