import { Button, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { lazy, Suspense, useEffect, useMemo, useRef } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import type { Flag } from "../../addin/checking/checkChart.ts";
import type { Fitting } from "../../addin/fit/match.ts";
import { isWearable } from "../../addin/fit/verdict.ts";
import type { GroupedFigure } from "../../addin/similarity/groups.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { patternName } from "../fit/patternName.ts";
import { countVerdicts, wardrobeOf } from "../fit/ranking.ts";
import { VerdictWords } from "../fit/VerdictWords.tsx";
import type { FiguresToGroup } from "../groups/readGroups.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { card, plainList } from "../ui/boxes.ts";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import { PlainTable } from "../ui/PlainTable.tsx";
import { count, shownLength } from "../ui/words.ts";

const useStyles = makeStyles({
  card: { ...card, gap: "8px", outlineStyle: "none" },
  name: { margin: 0, fontSize: "inherit", fontWeight: 600, overflowWrap: "anywhere" },
  text: { margin: 0, overflowWrap: "anywhere" },
  list: { ...plainList, gap: "4px" },
  verdicts: {
    margin: 0,
    padding: 0,
    listStyleType: "none",
    display: "flex",
    flexWrap: "wrap",
    columnGap: "16px",
  },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
});

// Drawings and comparisons are asked for seldom, and bring much with them.
const TwoFigures = lazy(async () => ({ default: (await import("../groups/TwoFigures.tsx")).TwoFigures }));
const OutlineDrawing = lazy(async () => ({
  default: (await import("../groups/OutlineDrawing.tsx")).OutlineDrawing,
}));

/** What is known of the figures of a chart; what is not there yet is being worked out, or cannot be. */
export interface FigureKnown {
  readonly chart: Chart;
  readonly table: TableInfo;
  readonly flags?: readonly Flag[] | undefined;
  readonly grouped?: readonly GroupedFigure[] | undefined;
  readonly fitting?: Fitting | undefined;
  readonly toGroup?: FiguresToGroup | undefined;
}

/** One figure: its readings, who shares its body, what it wears, how it looks, and any other beside it. */
export function FigureCard(
  props: FigureKnown & {
    readonly place: number;
    /** The name of the figure that it is compared with. */
    readonly beside: string | undefined;
    readonly onBeside: (name: string | undefined) => void;
    /** What asked for the card from another section: another one each time; then it takes the keyboard. */
    readonly asked: object | undefined;
  },
): ReactNode {
  const styles = useStyles();
  const { workbook, say, goTo } = useSession();
  const { chart, table, flags, grouped, fitting, toGroup, place, beside, onBeside, asked } = props;
  const name = chart.figures[place] ?? "";
  const row = chart.rows[place] ?? 0;
  const taken = chart.measures.filter(({ mm }) => !Number.isNaN(mm[place])).length;
  const doubtful = flags?.filter((flag) => flag.row === row) ?? [];
  const group = grouped?.[place];
  const others = grouped?.filter((each, i) => i !== place && each.group === group?.group) ?? [];
  const wardrobe = useMemo(
    () => (fitting && fitting.patterns.length > 0 ? wardrobeOf(fitting, place) : undefined),
    [fitting, place],
  );
  const other = beside === undefined ? -1 : chart.figures.indexOf(beside);
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    if (asked) box.current?.focus();
  }, [asked]);

  const show = (): void => {
    const { sheet, row: top, column } = table.area;
    workbook.select({ sheet, row: top + row, column, rows: 1, columns: 1 }).catch((error: unknown) => {
      say({ kind: "failed", text: failureText(error) });
    });
  };
  return (
    <section ref={box} tabIndex={-1} className={styles.card} aria-label={name}>
      <h2 className={styles.name}>{name}</h2>
      <p className={styles.text}>
        {taken} of {count(chart.measures.length, "measure")} taken
        {doubtful.length > 0 ? `, ${String(doubtful.length)} to look at again` : ""}.
      </p>
      {group && (
        <p className={styles.text}>
          {others.length === 0
            ? "Alone: it shares its body with no other figure of the chart."
            : `Shares its body with ${others.map(({ figure }) => figure).join(", ")}.`}
        </p>
      )}
      {wardrobe && (
        <>
          <p className={styles.text}>Of your patterns:</p>
          <ul className={styles.verdicts}>
            {countVerdicts(wardrobe.map(({ explanation }) => explanation.verdict)).map(
              ({ verdict, count: times }) => (
                <li key={verdict}>
                  {times} <VerdictWords verdict={verdict} />
                </li>
              ),
            )}
          </ul>
        </>
      )}
      <div className={styles.actions}>
        <Button onClick={show}>Show it in the chart</Button>
        {doubtful.length > 0 && (
          <Button
            onClick={() => {
              goTo("check");
            }}
          >
            Look at its readings
          </Button>
        )}
      </div>
      <Disclosure title="Readings" says={`${String(taken)} taken`}>
        <PlainTable
          label={`Readings of ${name}`}
          headings={["Measure", "Reading", "Look again"]}
          rows={chart.measures.map((column) => [
            column.heading,
            readingWords(column, place),
            doubtful.find((flag) => flag.column === column.position)?.kind ?? "",
          ])}
        />
      </Disclosure>
      {wardrobe && fitting && (
        <Disclosure
          title="What it can wear"
          says={count(
            wardrobe.filter(({ explanation }) => isWearable(explanation.verdict)).length,
            "pattern",
          )}
        >
          <ul className={styles.list} aria-label={`What ${name} can wear`}>
            {wardrobe
              .filter(({ explanation }) => isWearable(explanation.verdict))
              .map(({ pattern, explanation }) => (
                <li key={pattern}>
                  {patternName(fitting.patterns[pattern]?.pattern ?? { code: "", title: "" })}{" "}
                  <VerdictWords verdict={explanation.verdict} />
                </li>
              ))}
          </ul>
        </Disclosure>
      )}
      {chart.figures.length > 1 && (
        <Choice
          label={`Compare ${name} with`}
          value={other < 0 ? "" : (chart.figures[other] ?? "")}
          options={[
            ["", "nobody: draw it alone"],
            ...[...new Set(chart.figures)]
              .filter((each) => each !== name)
              .map((each) => [each, each] as const),
          ]}
          onChoose={(chosen) => {
            onBeside(chosen === "" ? undefined : chosen);
          }}
        />
      )}
      <Suspense fallback={<p className={styles.text}>Drawing …</p>}>
        {other >= 0 && toGroup ? (
          <TwoFigures figures={toGroup} place={place} other={other} />
        ) : (
          <OutlineDrawing chart={chart} other={place} />
        )}
      </Suspense>
    </section>
  );
}

function readingWords({ mm, unit, origins }: Chart["measures"][number], place: number): string {
  const reading = mm[place] ?? Number.NaN;
  if (Number.isNaN(reading)) return "";
  const origin = origins?.get(place);
  return `${shownLength(reading, unit)}${origin === undefined ? "" : `, ${origin}`}`;
}
