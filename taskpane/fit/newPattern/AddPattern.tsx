import { Button, Field, Input, Select, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useDeferredValue, useEffect, useId, useMemo, useRef, useState } from "react";
import { explainPair } from "../../../addin/fit/explainPair.ts";
import { judgePair } from "../../../addin/fit/judgePair.ts";
import { prepareFitting } from "../../../addin/fit/match.ts";
import type { Verdict } from "../../../addin/fit/verdict.ts";
import { isWearable, verdictOf } from "../../../addin/fit/verdict.ts";
import { SectionFrame } from "../../shell/SectionFrame.tsx";
import { useSession } from "../../shell/session.ts";
import { useRead } from "../../shell/useRead.ts";
import { card } from "../../ui/boxes.ts";
import { FailureBox } from "../../ui/FailureBox.tsx";
import { typedLength } from "../../ui/LengthField.tsx";
import { MeasureFirst } from "../../ui/Part.tsx";
import { count } from "../../ui/words.ts";
import type { ChosenTables } from "../fitTables.ts";
import { countVerdicts } from "../ranking.ts";
import { VerdictWords } from "../VerdictWords.tsx";
import { GarmentDrawing } from "./GarmentDrawing.tsx";
import type { Answers, Draft, FieldKey, PatternField, Wardrobe } from "./newPattern.ts";
import { classOf, nextCode, readDraft, textOf } from "./newPattern.ts";
import type { WardrobeFound } from "./readWardrobe.ts";
import { planAdding, readWardrobe } from "./readWardrobe.ts";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
  back: { alignSelf: "flex-start" },
  form: { display: "grid", gridTemplateColumns: "minmax(0, 1fr) minmax(72px, 132px)", gap: "12px" },
  fields: { display: "flex", flexDirection: "column", gap: "12px", minWidth: 0 },
  // What has the keyboard is not to lie under the verdict, nor under the title.
  field: { minWidth: 0, "& input, & select": { minWidth: 0, scrollMarginBlock: "72px" } },
  drawing: { position: "sticky", top: "56px", alignSelf: "start" },
  // One line, so that it leaves room for what is typed.
  verdict: {
    ...card,
    padding: "6px 12px",
    position: "sticky",
    bottom: "0px",
    zIndex: 1,
    boxShadow: tokens.shadow4,
  },
  line: { margin: 0, overflowWrap: "anywhere" },
  others: { display: "flex", flexDirection: "column", gap: "4px" },
  counts: {
    margin: 0,
    padding: 0,
    listStyleType: "none",
    display: "flex",
    flexWrap: "wrap",
    columnGap: "12px",
  },
  card: { ...card, gap: "8px" },
  heading: { margin: 0, fontSize: tokens.fontSizeBase400, fontWeight: 600 },
  written: {
    margin: 0,
    display: "grid",
    gridTemplateColumns: "auto minmax(0, 1fr)",
    columnGap: "12px",
    rowGap: "2px",
  },
  term: { color: tokens.colorNeutralForeground2 },
  value: { margin: 0, overflowWrap: "anywhere" },
});

/** Writes down one garment: asks what its class needs, says meanwhile who could wear it, and adds one row. */
export function AddPattern(props: {
  readonly chosen: ChosenTables;
  readonly onClose: () => void;
}): ReactNode {
  const styles = useStyles();
  const { chosen, onClose } = props;
  const found = useRead(readWardrobe, chosen);
  const { wardrobe } = found ?? {};
  if (found && wardrobe) return <Form found={{ ...found, wardrobe }} onClose={onClose} />;
  return (
    <SectionFrame title="Add a pattern">
      {!found && <p className={styles.text}>Reading the workbook …</p>}
      {found?.failure !== undefined && <FailureBox what="No pattern can be added yet." why={found.failure} />}
      <Button className={styles.back} onClick={onClose}>
        Back to Fit
      </Button>
    </SectionFrame>
  );
}

function Form(props: {
  readonly found: WardrobeFound & { readonly wardrobe: Wardrobe };
  readonly onClose: () => void;
}): ReactNode {
  const styles = useStyles();
  const { apply, say } = useSession();
  const { found, onClose } = props;
  const { wardrobe } = found;
  const [typed, setTyped] = useState<Answers>({});
  const [left, setLeft] = useState<ReadonlySet<FieldKey>>(new Set());
  const [isAsked, setAsked] = useState(false);
  const [at, setAt] = useState<FieldKey>();
  const form = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // What was said before is read, and would take the room.
    say(undefined);
    form.current?.querySelector("select")?.focus();
  }, [say]);

  const answers = useMemo((): Answers => {
    const { patterns, problems: refused } = wardrobe.known;
    return { code: nextCode([...refused, ...patterns].map(({ code }) => code)), ...typed };
  }, [wardrobe, typed]);
  const draft = useMemo(() => readDraft(wardrobe, answers), [wardrobe, answers]);
  const garmentClass = classOf(wardrobe, answers);
  const problems = draft.fields.map((field) => ({ field, says: problemOf(field, answers, draft) }));
  const shown = problems.filter(
    ({ field, says }) =>
      says !== undefined && (isAsked || left.has(field.key) || (answers[field.key] ?? "") !== ""),
  );

  const answer = (field: FieldKey, text: string): void => {
    if (field !== "garmentClass") {
      setTyped({ ...typed, [field]: text });
      return;
    }
    // What was chosen for another kind of garment is not meant for this one.
    const ofKind = ["sleeve", "endsAt", "opens"];
    const kept = Object.fromEntries(Object.entries(typed).filter(([name]) => !ofKind.includes(name)));
    setTyped({ ...kept, garmentClass: text });
  };

  const write = async (): Promise<void> => {
    setAsked(true);
    const [first] = problems.filter(({ says }) => says !== undefined);
    if (!draft.pattern || first) {
      const name = first?.field.key ?? draft.problem?.key ?? "garmentClass";
      form.current?.querySelector<HTMLElement>(`[data-field="${name}"]`)?.focus();
      return;
    }
    const { code } = draft.pattern;
    const { edits, where } = planAdding(found, draft.row);
    const isWritten = await apply(`Add the pattern ${code}`, edits, {
      kind: "done",
      text: `${code} stands in ${where} now.`,
    });
    if (!isWritten) return;
    setTyped({});
    setLeft(new Set());
    setAsked(false);
    form.current?.querySelector("select")?.focus();
  };

  const shows = draft.fields.find((field) => field.key === at)?.shows;
  const part = (name: FieldKey): string => {
    const field = draft.fields.find((each) => each.key === name);
    return field ? textOf(answers, field) : "";
  };
  return (
    <SectionFrame
      title="Add a pattern"
      primary={{ label: "Write it", run: () => void write(), disabled: !garmentClass }}
    >
      <p className={styles.text}>
        One garment at a time. You are asked what decides for its kind; leave empty what you do not know.
        Nothing is written until you say so.
      </p>
      <div className={styles.form} ref={form}>
        <div className={styles.fields}>
          {draft.fields.map((field) => (
            <Question
              key={field.key}
              field={field}
              text={textOf(answers, field)}
              says={shown.find((each) => each.field === field)?.says}
              figures={wardrobe.chart.figures}
              onFocus={() => {
                setAt(field.key);
              }}
              onLeave={() => {
                setLeft((before) => new Set(before).add(field.key));
              }}
              onAnswer={(text) => {
                answer(field.key, text);
              }}
            />
          ))}
        </div>
        <div className={styles.drawing}>
          <GarmentDrawing
            garmentClass={garmentClass}
            sleeves={part("sleeve") === "" ? (garmentClass?.sleeve ?? "none") : part("sleeve")}
            endsAt={part("endsAt") === "" ? (garmentClass?.endsAt ?? "") : part("endsAt")}
            shows={shows}
          />
        </div>
      </div>
      {garmentClass && (
        <>
          <p className={styles.quiet}>{garmentClass.note}</p>
          {draft.problem && draft.problem.key === undefined && (
            <FailureBox what="It cannot be written like this." why={draft.problem.says} />
          )}
          <WhoWears wardrobe={wardrobe} draft={draft} />
          {draft.pattern && <Preview found={found} draft={draft} onWrite={() => void write()} />}
        </>
      )}
      <Button className={styles.back} onClick={onClose}>
        Back to Fit
      </Button>
    </SectionFrame>
  );
}

/** What is wrong with an answer by itself, or with the row because of it. */
function problemOf(field: PatternField, answers: Answers, { problem }: Draft): string | undefined {
  if (field.kind === "length" && field.unit) {
    const read = typedLength(answers[field.key] ?? "", field.unit);
    if (typeof read === "object") return read.refusal;
  }
  return problem?.key === field.key ? problem.says : undefined;
}

function Question(props: {
  readonly field: PatternField;
  readonly text: string;
  readonly says: string | undefined;
  readonly figures: readonly string[];
  readonly onFocus: () => void;
  readonly onLeave: () => void;
  readonly onAnswer: (text: string) => void;
}): ReactNode {
  const styles = useStyles();
  const list = useId();
  const { field, text, says, figures, onFocus, onLeave, onAnswer } = props;
  const { key, label, kind, hint, choices = [], unit } = field;
  const offered =
    kind === "figure"
      ? [...new Set(figures)].map((name) => [name, ""] as const)
      : kind === "codes"
        ? choices
        : [];
  return (
    <Field
      className={styles.field}
      label={label}
      {...(hint !== undefined && { hint })}
      {...(says !== undefined && { validationState: "error" as const, validationMessage: says })}
    >
      {kind === "choice" ? (
        <Select
          className={styles.field}
          select={{ "data-field": key } as object}
          value={text}
          onFocus={onFocus}
          onBlur={onLeave}
          onChange={(_, data) => {
            onAnswer(data.value);
          }}
        >
          {choices.map(([value, name]) => (
            <option key={value} value={value}>
              {name}
            </option>
          ))}
        </Select>
      ) : (
        <Input
          className={styles.field}
          input={{ "data-field": key, list: offered.length > 0 ? list : undefined } as object}
          value={text}
          autoComplete="off"
          {...(unit !== undefined && { contentAfter: unit })}
          onFocus={onFocus}
          onBlur={onLeave}
          onChange={(_, data) => {
            onAnswer(data.value);
          }}
        />
      )}
      {offered.length > 0 && (
        <datalist id={list}>
          {offered.map(([value, name]) => (
            <option key={value} value={value}>
              {name}
            </option>
          ))}
        </datalist>
      )}
    </Field>
  );
}

/** The verdict on the figure that it was drafted for, and how many others wear it. */
function WhoWears(props: { readonly wardrobe: Wardrobe; readonly draft: Draft }): ReactNode {
  const styles = useStyles();
  const draft = useDeferredValue(props.draft);
  const { chart, rules } = props.wardrobe;
  const { pattern, layers } = draft;
  const answer = useMemo(() => {
    if (!pattern || chart.figures.length === 0) return undefined;
    const fitting = prepareFitting([...layers, pattern], chart, { rules });
    const at = layers.length;
    const compiled = fitting.patterns[at];
    const { draftedFor } = pattern;
    const others = chart.figures.flatMap((name, figure): { name: string; verdict: Verdict }[] =>
      compiled && figure !== draftedFor
        ? [{ name, verdict: verdictOf(judgePair(compiled, figure, fitting.readingError)) }]
        : [],
    );
    return {
      own: draftedFor === undefined ? undefined : explainPair(fitting, at, draftedFor),
      others,
    };
  }, [pattern, layers, chart, rules]);
  const own = answer?.own;
  const wear = answer?.others.filter(({ verdict }) => isWearable(verdict)) ?? [];
  return (
    <>
      <section className={styles.verdict} aria-label="How it would fit" aria-live="polite">
        {!pattern && <p className={styles.quiet}>The verdict follows once that is answered.</p>}
        {pattern && chart.figures.length === 0 && (
          <p className={styles.quiet}>No figure in your chart could wear it yet.</p>
        )}
        {answer && (
          <p className={styles.line}>
            {own && (
              <>
                On {own.figure}: <VerdictWords verdict={own.verdict} />
                {" · "}
              </>
            )}
            {wear.length} of {count(answer.others.length, own ? "other" : "figure")}
          </p>
        )}
      </section>
      {answer && (
        <section className={styles.others} aria-label="Who could wear it">
          {own && own.verdict !== "fits" && (
            <p className={styles.text}>
              On {own.figure}: {own.words}
            </p>
          )}
          <p className={styles.text}>
            {wear.length === 0 ? "None" : wear.length} of{" "}
            {count(answer.others.length, own ? "other figure" : "figure")} can wear it
            {wear.length > 0 ? `: ${someNames(wear.map(({ name }) => name))}.` : "."}
          </p>
          <ul className={styles.counts}>
            {countVerdicts(answer.others.map(({ verdict }) => verdict)).map(({ verdict, count: times }) => (
              <li key={verdict}>
                {times} <VerdictWords verdict={verdict} />
              </li>
            ))}
          </ul>
        </section>
      )}
      {own && <MeasureFirst take={own.take} />}
    </>
  );
}

const namesShown = 4;

function someNames(names: readonly string[]): string {
  const more = names.length - namesShown;
  return more <= 1 ? names.join(", ") : `${names.slice(0, namesShown).join(", ")} and ${String(more)} more`;
}

/** What will stand where. */
function Preview(props: {
  readonly found: WardrobeFound & { readonly wardrobe: Wardrobe };
  readonly draft: Draft;
  readonly onWrite: () => void;
}): ReactNode {
  const styles = useStyles();
  const id = useId();
  const { working } = useSession();
  const { found, draft, onWrite } = props;
  const { where, also } = planAdding(found, draft.row);
  return (
    <section className={styles.card} aria-labelledby={id}>
      <h2 id={id} className={styles.heading}>
        What will be written
      </h2>
      <p className={styles.text}>
        Into {where}. {also.join(" ")}
      </p>
      <dl className={styles.written}>
        {draft.row.says.map(([heading, text]) => (
          <Written key={heading} heading={heading} text={text} />
        ))}
      </dl>
      <Button className={styles.back} disabledFocusable={working !== undefined} onClick={onWrite}>
        Write this row
      </Button>
    </section>
  );
}

function Written({ heading, text }: { readonly heading: string; readonly text: string }): ReactNode {
  const styles = useStyles();
  return (
    <>
      <dt className={styles.term}>{heading}</dt>
      <dd className={styles.value}>{text}</dd>
    </>
  );
}
