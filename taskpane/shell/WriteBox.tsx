import { Button, Field, Radio, RadioGroup, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useId, useRef, useState } from "react";
import { FailureBox } from "../ui/FailureBox.tsx";
import { failureText, notShown } from "./notice.ts";
import { useSession } from "./session.ts";
import type { Writing, WritingForm } from "./writing.ts";

const useStyles = makeStyles({
  box: {
    padding: "12px",
    borderRadius: tokens.borderRadiusMedium,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    backgroundColor: tokens.colorNeutralBackground1,
    display: "flex",
    flexDirection: "column",
    alignItems: "flex-start",
    gap: "8px",
    outlineStyle: "none",
  },
  heading: { margin: 0, fontSize: tokens.fontSizeBase400, fontWeight: 600 },
  text: { margin: 0, overflowWrap: "anywhere" },
});

/** Writes results to the workbook, after saying what will stand where. */
export function WriteBox<F extends string = WritingForm>(props: {
  readonly title?: string;
  /** What each form gives, in words; the first is chosen to begin with. */
  readonly forms: Readonly<Record<F, string>>;
  /** @throws {InputError} when it cannot be written in a form, saying why and what to do */
  readonly plan: (form: F) => Writing;
  /** What else has to be said about a form, such as a heading. */
  readonly more?: (form: F) => ReactNode;
  /** Counts up when the user asks to write from elsewhere: the box comes into view. */
  readonly asked: number;
}): ReactNode {
  const styles = useStyles();
  const id = useId();
  const { apply, working, workbook, say } = useSession();
  const { title = "Write to a sheet", forms, plan, more, asked } = props;
  const isForm = (key: string): key is F => Object.hasOwn(forms, key);
  const keys = Object.keys(forms).filter(isForm);
  const [chosen, setChosen] = useState<F>();
  const form = chosen ?? keys[0];
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    if (asked > 0) box.current?.focus();
  }, [asked]);

  async function write(planned: Writing): Promise<void> {
    const { label, done, at } = planned;
    if (!(await apply(label, planned.edits(), { kind: "done", text: done }))) return;
    try {
      await workbook.select({ ...at, rows: 1, columns: 1 });
    } catch (error) {
      // It stands there all the same.
      say(notShown(done, error));
    }
  }

  if (form === undefined) return null;
  const planned = writingOf(() => plan(form));
  return (
    <section ref={box} className={styles.box} tabIndex={-1} aria-labelledby={id}>
      <h2 id={id} className={styles.heading}>
        {title}
      </h2>
      <Field label="How">
        <RadioGroup
          value={form}
          onChange={(_, data) => {
            if (isForm(data.value)) setChosen(data.value);
          }}
        >
          {keys.map((each) => (
            <Radio key={each} value={each} label={forms[each]} />
          ))}
        </RadioGroup>
      </Field>
      {more?.(form)}
      {typeof planned === "string" ? (
        <FailureBox what="Cannot be written like this." why={planned} />
      ) : (
        <>
          <p className={styles.text}>{planned.preview}</p>
          <Button
            disabledFocusable={working !== undefined || planned.isDone === true}
            onClick={() => void write(planned)}
          >
            Write it
          </Button>
        </>
      )}
    </section>
  );
}

/** The plan, or why it cannot be. */
function writingOf(plan: () => Writing): Writing | string {
  try {
    return plan();
  } catch (error) {
    return failureText(error);
  }
}
