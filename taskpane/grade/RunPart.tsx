import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { GradeAdvice } from "../../addin/grading/gradeAdvice.ts";
import { Part } from "../ui/Part.tsx";
import { PlainTable } from "../ui/PlainTable.tsx";
import type { Tone } from "../ui/SignedWords.tsx";
import { SignedWords } from "../ui/SignedWords.tsx";
import type { RunView } from "./runView.ts";

const useStyles = makeStyles({ text: { margin: 0 } });

const looks: Readonly<Record<GradeAdvice, { readonly sign: string; readonly tone: Tone }>> = {
  grade: { sign: "●", tone: "leaf" },
  "draft anew": { sign: "✕", tone: "thread" },
  "not known": { sign: "?", tone: "quiet" },
};

/** A run of figures: what can be reached by a grade from the base, and the steps from the smallest to the largest. */
export function RunPart({ view }: { readonly view: RunView }): ReactNode {
  const styles = useStyles();
  const { fromBase, steps, rows } = view;
  const uneven = rows.filter(({ isUneven }) => isUneven).length;
  return (
    <Part title="All targets">
      <PlainTable
        label="From the base to each target"
        headings={["Way", "Verdict", "Why"]}
        rows={fromBase.map(({ way, advice, says }) => [way, <Advice key="advice" advice={advice} />, says])}
        wordy={[2]}
      />
      <p className={styles.text}>
        Step by step, from the smallest to the largest.{" "}
        {uneven === 0
          ? "Every measure has even steps."
          : `${String(uneven)} of ${String(rows.length)} measures have uneven steps.`}
      </p>
      <PlainTable
        label="Step by step"
        headings={["Measure", ...steps.map(({ way }) => way), "Steps"]}
        rows={[
          ["Verdict", ...steps.map((step) => <Advice key={step.way} advice={step.advice} />), ""],
          ...rows.map((row) => [
            row.measure,
            ...row.steps,
            row.isUneven ? (
              <SignedWords key="steps" sign="◆" tone="brass">
                uneven
              </SignedWords>
            ) : (
              "even"
            ),
          ]),
        ]}
      />
    </Part>
  );
}

function Advice({ advice }: { readonly advice: GradeAdvice }): ReactNode {
  return <SignedWords {...looks[advice]}>{advice}</SignedWords>;
}
