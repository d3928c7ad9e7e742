import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import { feedOf, repeatabilityByPerson } from "../../addin/checking/repeatability.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import type { SecondReadings } from "../groups/secondReadings.ts";
import { readSecond, secondWords, usualSecond } from "../groups/secondReadings.ts";
import type { Book } from "../shell/book.ts";
import { useSession } from "../shell/session.ts";
import { useRead } from "../shell/useRead.ts";
import { plainList } from "../ui/boxes.ts";
import { Disclosure } from "../ui/Disclosure.tsx";
import { PlainTable } from "../ui/PlainTable.tsx";
import { ShowMore } from "../ui/ShowMore.tsx";
import { count, shownLength } from "../ui/words.ts";
import { feedEdits, settledWords } from "./readings.ts";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
  list: { ...plainList, gap: "4px" },
  button: { alignSelf: "flex-start" },
});

interface Repeats {
  readonly second: SecondReadings | undefined;
}

/** Never rejects: `readSecond` says what fails. */
async function readRepeats(book: Book, chart: Chart): Promise<Repeats> {
  const tables = await book.tables().catch(() => []);
  const again = tables.find(({ name }) => sameName(name, usualSecond));
  return { second: await readSecond(book, chart, again) };
}

/** Changes shown at first and added by “Show more”. */
const pageSize = 12;

/** The table Readings beside the chart: what the chart would hold by it, and how closely readings repeat. */
export function ReadingsPart(props: { readonly chart: Chart; readonly table: TableInfo }): ReactNode {
  const styles = useStyles();
  const { chart, table } = props;
  const { book } = useSession();
  const second = useRead(readRepeats, chart)?.second;
  if (!second || (!second.known.table && second.repeated.errors.length === 0)) return null;
  const { known, errors } = second;
  const { readings } = known.taken;
  const feed = book.once(feedOf, chart, readings, errors);
  const { changes, unlike } = feed;
  const says = [
    known.table ? count(readings.length, "reading") : "read twice",
    changes.length > 0 ? `${String(changes.length)} not in the chart` : "",
    unlike.length > 0 ? `${String(unlike.length)} to take a third time` : "",
  ];
  return (
    <Disclosure
      title="Readings taken more than once"
      says={says.filter((each) => each !== "").join(", ")}
      {...(changes.length + unlike.length > 0 && { open: true })}
    >
      {secondWords(second).map((words) => (
        <p key={words} className={styles.text}>
          {words}
        </p>
      ))}
      {unlike.length > 0 && (
        <>
          <p className={styles.text}>
            ≈ Too far apart to be one measure read twice. A third reading says which is right; until then the
            chart stays as it is.
          </p>
          <ul className={styles.list} aria-label="To take a third time">
            {unlike.map(({ figure, column, taken }) => (
              <li key={`${String(figure)} ${column.key}`}>
                {chart.figures[figure]}, {column.heading}:{" "}
                {taken.map(({ mm }) => shownLength(mm, column.unit)).join(" and ")}
              </li>
            ))}
          </ul>
        </>
      )}
      {known.table && changes.length === 0 && readings.length > 0 && unlike.length === 0 && (
        <p className={styles.text}>✓ The chart holds what its readings come to.</p>
      )}
      {changes.length > 0 && <Changes key={changes.length} {...{ chart, table, changes }} />}
      <Errors chart={chart} second={second} />
    </Disclosure>
  );
}

function Changes(props: {
  readonly chart: Chart;
  readonly table: TableInfo;
  readonly changes: ReturnType<typeof feedOf>["changes"];
}): ReactNode {
  const styles = useStyles();
  const { apply, working } = useSession();
  const { chart, table, changes } = props;
  const [shown, setShown] = useState(pageSize);
  const cells = count(changes.length, "cell");
  return (
    <>
      <p className={styles.text}>By its readings the chart would hold:</p>
      <ul className={styles.list} aria-label="What would change in the chart">
        {changes.slice(0, shown).map(({ figure, column, beforeMm, mm, how, readings }) => (
          <li key={`${String(figure)} ${column.key}`}>
            {chart.figures[figure]}, {column.heading}:{" "}
            {Number.isNaN(beforeMm) ? "nothing yet" : shownLength(beforeMm, column.unit)} →{" "}
            <strong>{shownLength(mm, column.unit)}</strong>, {settledWords(how, readings)}
          </li>
        ))}
      </ul>
      <ShowMore
        left={changes.length - shown}
        onMore={() => {
          setShown(shown + pageSize);
        }}
      />
      <Button
        className={styles.button}
        disabledFocusable={working !== undefined}
        onClick={() =>
          void apply(`Use the readings in ${cells}`, feedEdits(changes, chart, table), {
            kind: "done",
            text: `${cells} of the chart ${changes.length === 1 ? "holds" : "hold"} now what the readings come to.`,
          })
        }
      >
        Use them in the chart: {cells}
      </Button>
    </>
  );
}

/** How closely readings repeat, measure by measure and person by person. */
function Errors(props: { readonly chart: Chart; readonly second: SecondReadings }): ReactNode {
  const styles = useStyles();
  const { book } = useSession();
  const { repeated, known, errors } = props.second;
  const people = book.once(repeatabilityByPerson, known.taken.readings, errors);
  if (repeated.errors.length + people.length === 0) return null;
  const offBy = (mm: number, percent: number): string => `${mm.toFixed(2)} mm (${percent.toFixed(2)} %)`;
  return (
    <>
      <p className={styles.text}>
        How far a reading is off as a rule: two of three by less (technical error of measurement).
      </p>
      {repeated.errors.length > 0 && (
        <PlainTable
          label="By measure"
          headings={["Measure", "Figures", "Off by", "Counts as"]}
          rows={repeated.errors.map(({ column, figures, technicalErrorMm, relativePercent, errorMm }) => [
            column.heading,
            String(figures),
            offBy(technicalErrorMm, relativePercent),
            `${errorMm.toFixed(2)} mm`,
          ])}
        />
      )}
      {people.length > 0 && (
        <PlainTable
          label="By person"
          headings={["Who", "Read twice", "Off by"]}
          rows={people.map(({ by, pairs, tem, relativePercent }) => [
            by === "" ? "not said" : by,
            String(pairs),
            offBy(tem, relativePercent),
          ])}
        />
      )}
      <p className={styles.quiet}>
        Groups, Fit and Publish go by what counts: your own error, drawn towards the usual 0.5 mm (or 0.25 %)
        while it comes from few figures – the usual one weighs as much as five figures. With fewer than five
        it counts alone.
      </p>
    </>
  );
}
