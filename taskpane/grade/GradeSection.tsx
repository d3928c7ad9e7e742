import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import { FailureBox } from "../ui/FailureBox.tsx";
import { SectionFrame } from "../shell/SectionFrame.tsx";
import { useRead } from "../shell/useRead.ts";
import { GradeAnswers } from "./GradeAnswers.tsx";
import type { ChosenForGrading } from "./readGrading.ts";
import { readGrading } from "./readGrading.ts";
import { RulesPanel } from "./RulesPanel.tsx";

const useStyles = makeStyles({ text: { margin: 0 } });

/** From one figure to the next: what changes on the pieces, and whether a print scale will do. */
export function GradeSection(): ReactNode {
  const styles = useStyles();
  const [chosen, setChosen] = useState<ChosenForGrading>({});
  const [asked, setAsked] = useState(0);
  const input = useRead(readGrading, chosen);
  const figures = input?.figures;
  const canGrade = figures !== undefined && figures.chart.figures.length > 1;

  const write = {
    label: "Write to a sheet",
    run: () => {
      setAsked((before) => before + 1);
    },
  };
  return (
    <SectionFrame title="Grade" primary={canGrade ? write : undefined}>
      {!input && <p className={styles.text}>Reading the chart …</p>}
      {input?.failure !== undefined && <FailureBox what="Cannot be graded." why={input.failure} />}
      {figures && !canGrade && (
        <p className={styles.text}>
          The table {figures.table.name} has one figure. Add another, or choose another chart under Tables and
          rules: a pattern is graded from one figure to the other.
        </p>
      )}
      {input && figures && canGrade && (
        <GradeAnswers key={figures.table.name} input={input} figures={figures} asked={asked} />
      )}
      {input && (figures ?? input.failure !== undefined) && (
        <RulesPanel input={input} chosen={chosen} onChoose={setChosen} />
      )}
    </SectionFrame>
  );
}
