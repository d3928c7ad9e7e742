import { Button, Field, Input, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useId, useMemo, useRef, useState } from "react";
import type { MeasureColumn } from "../../addin/chart/chart.ts";
import type { PresentChart } from "../../addin/chart/import/importPlan.ts";
import { parseReading } from "../../addin/measures/parseReading.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";
import { useDestination } from "../import/useDestination.ts";
import { OfferDemo } from "../shell/OfferDemo.tsx";
import { SectionFrame } from "../shell/SectionFrame.tsx";
import { useSession } from "../shell/session.ts";
import { card } from "../ui/boxes.ts";
import { Choice } from "../ui/Choice.tsx";
import { FailureBox } from "../ui/FailureBox.tsx";
import { OpenList } from "../ui/OpenList.tsx";
import { meaning } from "../ui/theme.ts";
import { count, shownLength } from "../ui/words.ts";
import type { Measured, MeasureOrder, ReadingDoubt, Taken } from "./measuring.ts";
import { doubtAbout, expectedHere, inOrder, measuredFigure, measuringEdits, without } from "./measuring.ts";
import { TapeDrawing } from "./TapeDrawing.tsx";

const useStyles = makeStyles({
  text: { margin: 0 },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
  card: { ...card, gap: "8px" },
  step: { margin: 0, fontSize: "20px", lineHeight: "26px", fontWeight: 600 },
  // The reading stays in sight below, at 320 px too.
  how: { display: "grid", gridTemplateColumns: "104px 1fr", gap: "12px", alignItems: "start" },
  onFigures: { margin: "4px 0 0", color: tokens.colorNeutralForeground3, fontSize: tokens.fontSizeBase200 },
  field: { "& label": { fontSize: "16px" } },
  input: { minHeight: "44px", minWidth: 0, "> input": { fontSize: "20px", minWidth: 0 } },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
  doubt: {
    padding: "8px 12px",
    borderRadius: tokens.borderRadiusMedium,
    border: `1px solid ${meaning.brass}`,
    backgroundColor: meaning.brassGround,
    display: "flex",
    flexDirection: "column",
    gap: "4px",
  },
  doubtWord: { fontWeight: 600, color: meaning.brass },
});

/** Takes the measures of one figure with the tape in hand: one measure at a time, doubtful readings asked about at once. */
export function MeasureSection(): ReactNode {
  const styles = useStyles();
  const destination = useDestination(undefined);
  const { ask } = useSession();
  const { table, present, obstacle } = destination ?? {};
  if (table && present) return <Session table={table} present={present} />;
  return (
    <SectionFrame
      title="Measure"
      primary={
        destination && !table
          ? {
              label: "Begin a chart",
              run: () => {
                ask("newChart");
              },
            }
          : undefined
      }
    >
      {!destination && <p className={styles.text}>Reading the chart …</p>}
      {obstacle !== undefined && <FailureBox what="Nothing can be written yet." why={obstacle} />}
      {destination && !table && obstacle === undefined && (
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

interface SessionProps {
  readonly table: TableInfo;
  readonly present: PresentChart;
}

function Session({ table, present }: SessionProps): ReactNode {
  const styles = useStyles();
  const { apply, working } = useSession();
  const { chart } = present;
  const [name, setName] = useState("");
  const [order, setOrder] = useState<MeasureOrder>("body");
  const [at, setAt] = useState(0);
  const [taken, setTaken] = useState<Taken>({});
  const names = useId();
  const figure = useMemo(() => measuredFigure(chart, name), [chart, name]);
  const place = figure?.place;
  const steps = useMemo(() => inOrder(chart, place, order), [chart, place, order]);
  const column = steps[at];
  const done = steps.filter(({ key }) => taken[key] !== undefined);

  const write = async (measured: Measured): Promise<void> => {
    const label = `Write ${count(done.length, "reading")} of ${measured.name}`;
    const isWritten = await apply(label, measuringEdits(present, table, measured, taken), {
      kind: "done",
      text: `${count(done.length, "reading")} of ${measured.name} ${done.length === 1 ? "stands" : "stand"} in the chart now, on the sheet “${table.area.sheet}”.`,
    });
    if (!isWritten) return;
    setTaken({});
    setAt(0);
    setName("");
  };

  return (
    <SectionFrame
      title="Measure"
      primary={{
        label: done.length === 0 ? "Write the readings" : `Write ${count(done.length, "reading")}`,
        run: () => {
          if (figure) void write(figure);
        },
        disabled: !figure || done.length === 0,
      }}
    >
      <p className={styles.text}>
        One figure, the tape in your hand: type what it says and press Enter. Nothing is written into the
        chart until you say so.
      </p>
      <Field
        label="Which figure?"
        hint={
          !figure
            ? "One of your chart, or the name of a new one."
            : place === undefined
              ? "A new figure. It gets a row of its own."
              : `In the chart, with ${String(takenBefore(present, place))} of ${count(chart.measures.length, "measure")} taken.`
        }
      >
        <Input
          input={{ list: names }}
          value={name}
          disabled={working !== undefined || done.length > 0}
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
      {figure && column && (
        <Step
          key={column.key}
          {...{ present, figure, taken, column }}
          goesOn={at > 0 || done.length > 0}
          number={`${String(at + 1)} of ${String(steps.length)}`}
          onTake={(mm) => {
            setTaken({ ...taken, [column.key]: mm });
            setAt(at + 1);
          }}
          onSkip={() => {
            setTaken(without(taken, column));
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
      {figure && !column && (
        <p className={styles.text}>
          That was the last measure. {done.length === 0 ? "Nothing was taken." : "Write the readings, above."}
        </p>
      )}
      {figure && done.length > 0 && (
        <>
          <OpenList
            label="Taken so far"
            items={done}
            keyOf={({ key }) => key}
            rowOf={(each) => ({
              name: each.heading,
              says: shownLength(taken[each.key] ?? 0, each.unit),
              words: oldReading(each, place, taken[each.key]),
            })}
            onOpen={(each) => {
              setAt(steps.indexOf(each));
            }}
          />
          <div className={styles.actions}>
            <Button
              onClick={() => {
                setTaken({});
                setAt(0);
              }}
            >
              Begin again
            </Button>
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
          ]}
          onChoose={(next) => {
            setOrder(next);
            setAt(0);
          }}
        />
      )}
    </SectionFrame>
  );
}

function takenBefore({ chart }: PresentChart, place: number): number {
  return chart.measures.filter(({ mm }) => !Number.isNaN(mm[place] ?? Number.NaN)).length;
}

/** What stands in the chart already, where it is another reading. */
function oldReading(
  { mm, unit }: MeasureColumn,
  place: number | undefined,
  now: number | undefined,
): string | undefined {
  const before = place === undefined ? Number.NaN : (mm[place] ?? Number.NaN);
  if (Number.isNaN(before) || now === undefined || Math.abs(before - now) < 0.05) return undefined;
  return `In the chart: ${shownLength(before, unit)}. It will be replaced.`;
}

/** One measure: where the tape goes, what may be expected, and the reading. */
function Step(props: {
  readonly present: PresentChart;
  readonly figure: Measured;
  readonly taken: Taken;
  readonly column: MeasureColumn;
  readonly number: string;
  /** True once a reading was taken or left out. */
  readonly goesOn: boolean;
  readonly onTake: (mm: number) => void;
  readonly onSkip: () => void;
  readonly onBack: (() => void) | undefined;
}): ReactNode {
  const styles = useStyles();
  const { present, figure, taken, column, number } = props;
  const before = taken[column.key];
  const [text, setText] = useState(before === undefined ? "" : shownLength(before, column.unit));
  const [said, setSaid] = useState<
    { readonly refusal: string } | { readonly doubt: ReadingDoubt; readonly mm: number }
  >();
  const input = useRef<HTMLInputElement>(null);
  // From one measure to the next with the hand that types; the first is not to take the keyboard from the name.
  const goesOn = useRef(props.goesOn);
  useEffect(() => {
    if (goesOn.current) input.current?.focus();
  }, []);
  const expected = useMemo(
    () => expectedHere(present.chart, figure, taken, column),
    [present.chart, figure, taken, column],
  );
  const { measure, unit } = column;

  const submit = (): void => {
    const reading = parseReading(text, { unit });
    if (reading.kind === "missing") {
      props.onSkip();
      return;
    }
    if (reading.kind === "refused") {
      setSaid({ refusal: reading.reason });
      return;
    }
    const { mm } = reading;
    const isMeant = said !== undefined && "doubt" in said && said.mm === mm;
    const doubt = isMeant
      ? undefined
      : doubtAbout(present.chart, figure, { ...taken, [column.key]: mm }, column);
    if (doubt) setSaid({ doubt, mm });
    else props.onTake(mm);
  };

  return (
    <form
      className={styles.card}
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <span className={styles.quiet}>{number}</span>
      <h2 className={styles.step}>{column.heading}</h2>
      {measure && (
        <div className={styles.how}>
          <TapeDrawing measureId={measure.id} name={column.heading} />
          <div>
            <p className={styles.text}>{measure.definition}</p>
            <p className={styles.onFigures}>{measure.onFigures}</p>
          </div>
        </div>
      )}
      <Field
        className={styles.field}
        label="The tape says"
        hint={
          expected
            ? `Likely from ${aboutLength(expected.lowMm, unit)} to ${aboutLength(expected.highMm, unit)}, by the other readings.`
            : `A number in ${unit}, or with its unit: 13.5 cm, 5 3/8 in.`
        }
        {...(said !== undefined &&
          "refusal" in said && { validationState: "error" as const, validationMessage: said.refusal })}
      >
        <Input
          input={{ ref: input }}
          className={styles.input}
          value={text}
          contentAfter={unit}
          autoComplete="off"
          onChange={(_, data) => {
            setText(data.value);
            setSaid(undefined);
          }}
        />
      </Field>
      {said !== undefined && "doubt" in said && (
        <div className={styles.doubt} role="alert">
          <span className={styles.doubtWord}>≈ {said.doubt.kind}</span>
          <span>{said.doubt.why}</span>
          <span>Read the tape once more. If it says the same, press Enter again.</span>
        </div>
      )}
      <div className={styles.actions}>
        <Button appearance="primary" type="submit">
          {said !== undefined && "doubt" in said
            ? "It is right"
            : text.trim() === ""
              ? "Leave it out"
              : "Next"}
        </Button>
        {props.onBack && <Button onClick={props.onBack}>Back</Button>}
      </div>
    </form>
  );
}

/** An estimate says no more than what can be read off a tape. */
function aboutLength(mm: number, unit: LengthUnit): string {
  if (unit === "in") return shownLength(Math.round((mm / 25.4) * 16) * (25.4 / 16), unit);
  return shownLength(Math.round(mm), unit);
}
