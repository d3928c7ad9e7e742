import { Button, Field, Input, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useMemo, useRef, useState } from "react";
import type { MeasureColumn } from "../../addin/chart/chart.ts";
import { parseReading } from "../../addin/measures/parseReading.ts";
import { card } from "../ui/boxes.ts";
import { meaning } from "../ui/theme.ts";
import { aboutLength, shownLength, unitWord } from "../ui/words.ts";
import type { ReadingDoubt, Taken } from "./measuring.ts";
import { doubtAbout, expectedHere } from "./measuring.ts";
import type { MeasuringContext } from "./rounds.ts";
import { repeatOf } from "./rounds.ts";
import { HowToTake } from "./TapeDrawing.tsx";

const useStyles = makeStyles({
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
  // The title of the section stays above what is scrolled to, and the name of the field with it.
  card: { ...card, gap: "8px", scrollMarginTop: "56px" },
  step: { margin: 0, fontSize: "1.25rem", lineHeight: "1.625rem", fontWeight: 600 },
  field: { "& label": { fontSize: "1rem" } },
  input: {
    minHeight: "44px",
    minWidth: 0,
    "> input": { fontSize: "1.25rem", minWidth: 0, scrollMarginBlock: "96px 40px" },
  },
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

/** One measure: where the tape goes, what may be expected, and the reading. */
export function Step(props: {
  readonly context: MeasuringContext;
  /** What was read last of each measure. */
  readonly latest: Taken;
  readonly column: MeasureColumn;
  /** What was read of it in this round. */
  readonly reading: number | undefined;
  /** What was read of it before; told once the new reading is typed, so that nobody reads what they expect. */
  readonly before: readonly number[];
  readonly number: string;
  /** True once a reading was taken or left out. */
  readonly goesOn: boolean;
  readonly onTake: (mm: number) => void;
  readonly onSkip: () => void;
  readonly onBack: (() => void) | undefined;
}): ReactNode {
  const styles = useStyles();
  const { context, latest, column, reading: taken, before, number } = props;
  const { figure, errors } = context;
  const { chart } = context.present;
  const [text, setText] = useState(taken === undefined ? "" : shownLength(taken, column.unit));
  const [said, setSaid] = useState<
    { readonly refusal: string } | { readonly doubt: ReadingDoubt; readonly mm: number }
  >();
  const input = useRef<HTMLInputElement>(null);
  // From one measure to the next with the hand that types; the first is not to take the keyboard from the name.
  const goesOn = useRef(props.goesOn);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (!goesOn.current) return;
    // All of it where there is room, else the field and its name.
    form.current?.scrollIntoView({ block: "nearest" });
    input.current?.focus();
  }, []);
  const expected = useMemo(
    () => expectedHere(chart, figure, latest, column),
    [chart, figure, latest, column],
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
    const doubt = isMeant ? undefined : doubtOf(mm);
    if (doubt) setSaid({ doubt, mm });
    else props.onTake(mm);
  };

  const doubtOf = (mm: number): ReadingDoubt | undefined => {
    const repeat = repeatOf(before, mm, column, errors);
    const doubt = doubtAbout(chart, figure, { ...latest, [column.key]: mm }, column);
    if (doubt || !repeat || repeat.isUsual) return doubt;
    return { kind: "differs from the first reading", why: repeat.says };
  };

  return (
    <form
      ref={form}
      className={styles.card}
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <span className={styles.quiet}>{number}</span>
      <h2 className={styles.step}>{column.heading}</h2>
      {measure && <HowToTake measure={measure} heading={column.heading} />}
      <Field
        className={styles.field}
        label={`${before.length === 0 ? "The tape says" : "The tape says now"} (${column.heading})`}
        hint={
          expected
            ? `Likely from ${aboutLength(expected.lowMm, unit)} to ${aboutLength(expected.highMm, unit)}, by the other readings.`
            : `A number in ${unitWord(unit)}, or with its unit: 13.5 cm, 5 3/8 in.`
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
