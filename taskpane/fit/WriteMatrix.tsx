import { Button, Radio, RadioGroup, Field, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useRef, useState } from "react";
import type { Match } from "../../addin/fit/match.ts";
import { FailureBox } from "../FailureBox.tsx";
import { failureText } from "../notice.ts";
import { useSession } from "../session.ts";
import type { MatrixPart } from "./matrix.ts";
import type { Fit } from "./readFit.ts";
import type { MatrixForm, MatrixWriting } from "./writeMatrix.ts";
import { matrixForms, planMatrix } from "./writeMatrix.ts";

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

const formWords: Readonly<Record<MatrixForm, string>> = {
  formulas: "As a formula that follows every change",
  values: "As words that stay as they are",
};

/** Writes the matrix to a new sheet, after saying what will stand where. */
export function WriteMatrix(props: {
  readonly fit: Fit;
  readonly match: Match;
  readonly part: MatrixPart;
  /** Counts up when the user asks to write from elsewhere: the box comes into view. */
  readonly asked: number;
}): ReactNode {
  const styles = useStyles();
  const { apply, working } = useSession();
  const { fit, match, part, asked } = props;
  const [form, setForm] = useState<MatrixForm>("formulas");
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    if (asked > 0) box.current?.focus();
  }, [asked]);

  const plan = planned(form, {
    match,
    part,
    used: fit.used,
    hasOwnClasses: fit.hasOwnClasses,
    problems: fit.problems.length,
    sheets: fit.sheets,
  });
  return (
    <section ref={box} className={styles.box} tabIndex={-1} aria-labelledby="fit-write">
      <h2 id="fit-write" className={styles.heading}>
        Write to a sheet
      </h2>
      <Field label="How">
        <RadioGroup
          value={form}
          onChange={(_, data) => {
            const chosen = matrixForms.find((each) => each === data.value);
            if (chosen) setForm(chosen);
          }}
        >
          {matrixForms.map((each) => (
            <Radio key={each} value={each} label={formWords[each]} />
          ))}
        </RadioGroup>
      </Field>
      {typeof plan === "string" ? (
        <FailureBox what="Cannot be written like this." why={plan} />
      ) : (
        <>
          <p className={styles.text}>{plan.preview}</p>
          <Button
            disabledFocusable={working !== undefined}
            onClick={() => void apply(plan.label, plan.edits(), { kind: "done", text: plan.done })}
          >
            Write it
          </Button>
        </>
      )}
    </section>
  );
}

/** The plan, or why it cannot be. */
function planned(...[form, matrix]: Parameters<typeof planMatrix>): MatrixWriting | string {
  try {
    return planMatrix(form, matrix);
  } catch (error) {
    return failureText(error);
  }
}
