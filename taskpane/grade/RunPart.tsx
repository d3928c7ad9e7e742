import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { Part } from "../ui/Part.tsx";
import { PlainTable } from "../ui/PlainTable.tsx";
import { SignedWords } from "../ui/SignedWords.tsx";
import type { RunView } from "./runView.ts";
import { VerdictWords } from "./Verdict.tsx";

const useStyles = makeStyles({ text: { margin: 0 } });

/** A run of figures: what a print from the base can do, and the steps from the smallest to the largest. */
export function RunPart({ view }: { readonly view: RunView }): ReactNode {
  const styles = useStyles();
  const { fromBase, steps, rows } = view;
  const uneven = rows.filter(({ isUneven }) => isUneven).length;
  return (
    <Part title="All targets">
      <PlainTable
        label="From the base to each target"
        headings={["Way", "Verdict", "Why"]}
        rows={fromBase.map(({ way, verdict, says }) => [
          way,
          <VerdictWords key="verdict" verdict={verdict} />,
          says,
        ])}
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
          ["Verdict", ...steps.map((step) => <VerdictWords key={step.way} verdict={step.verdict} />), ""],
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
