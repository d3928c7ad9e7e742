import { Button, Field, Radio, RadioGroup, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useId, useRef, useState } from "react";
import { FailureBox } from "./FailureBox.tsx";
import { failureText } from "./notice.ts";
import { useSession } from "./session.ts";
import type { Writing, WritingForm } from "./writing.ts";
import { writingForms } from "./writing.ts";

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

/** Writes results to a new sheet, after saying what will stand where. */
export function WriteBox(props: {
  /** What each form gives, in words. */
  readonly forms: Readonly<Record<WritingForm, string>>;
  /** @throws {InputError} when it cannot be written in a form, saying why and what to do */
  readonly plan: (form: WritingForm) => Writing;
  /** Counts up when the user asks to write from elsewhere: the box comes into view. */
  readonly asked: number;
}): ReactNode {
  const styles = useStyles();
  const id = useId();
  const { apply, working } = useSession();
  const { forms, plan, asked } = props;
  const [form, setForm] = useState<WritingForm>("formulas");
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    if (asked > 0) box.current?.focus();
  }, [asked]);

  const planned = writingOf(plan, form);
  return (
    <section ref={box} className={styles.box} tabIndex={-1} aria-labelledby={id}>
      <h2 id={id} className={styles.heading}>
        Write to a sheet
      </h2>
      <Field label="How">
        <RadioGroup
          value={form}
          onChange={(_, data) => {
            const chosen = writingForms.find((each) => each === data.value);
            if (chosen) setForm(chosen);
          }}
        >
          {writingForms.map((each) => (
            <Radio key={each} value={each} label={forms[each]} />
          ))}
        </RadioGroup>
      </Field>
      {typeof planned === "string" ? (
        <FailureBox what="Cannot be written like this." why={planned} />
      ) : (
        <>
          <p className={styles.text}>{planned.preview}</p>
          <Button
            disabledFocusable={working !== undefined}
            onClick={() => void apply(planned.label, planned.edits(), { kind: "done", text: planned.done })}
          >
            Write it
          </Button>
        </>
      )}
    </section>
  );
}

/** The plan, or why it cannot be. */
function writingOf(plan: (form: WritingForm) => Writing, form: WritingForm): Writing | string {
  try {
    return plan(form);
  } catch (error) {
    return failureText(error);
  }
}
