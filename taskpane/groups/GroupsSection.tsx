import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { lazy, Suspense, useState } from "react";
import { FailureBox } from "../ui/FailureBox.tsx";
import { SectionFrame } from "../shell/SectionFrame.tsx";
import { useRead } from "../shell/useRead.ts";
import { GroupTablesPanel } from "./GroupTablesPanel.tsx";
import type { GroupQuestion } from "./questions.ts";
import type { ChosenForGroups } from "./readGroups.ts";
import { readGroups } from "./readGroups.ts";

const useStyles = makeStyles({ text: { margin: 0 } });

// Answers and drawings come with the first question, so that the pane opens as fast without them.
const GroupAnswers = lazy(async () => ({ default: (await import("./GroupAnswers.tsx")).GroupAnswers }));

/** Which figures share a body, how surely, and which to keep as house models. */
export function GroupsSection(): ReactNode {
  const styles = useStyles();
  const [chosen, setChosen] = useState<ChosenForGroups>({});
  const [question, setQuestion] = useState<GroupQuestion>("shares");
  const [writing, setWriting] = useState(0);
  const input = useRead(readGroups, chosen);
  const figures = input?.figures;
  const canCompare = figures !== undefined && figures.chart.figures.length > 1;
  const toWrite = {
    label: question === "shares" ? "Write the groups" : "Write to a sheet",
    run: () => {
      setWriting(writing + 1);
    },
  };
  return (
    <SectionFrame title="Groups" primary={canCompare ? toWrite : undefined}>
      {!input && <p className={styles.text}>Reading the figures …</p>}
      {input?.failure !== undefined && <FailureBox what="Cannot be grouped." why={input.failure} />}
      {figures && !canCompare && (
        <p className={styles.text}>
          The table {figures.table.name} has one figure. Add a second one, or choose another chart under
          Tables: then you see who shares a body.
        </p>
      )}
      {input && canCompare && (
        <Suspense fallback={<p className={styles.text}>Opening the answers …</p>}>
          <GroupAnswers
            input={input}
            figures={figures}
            question={question}
            onAsk={(next) => {
              setWriting(0);
              setQuestion(next);
            }}
            writing={writing}
            onEstimates={(estimates) => {
              setChosen({ ...chosen, estimates });
            }}
          />
        </Suspense>
      )}
      {input && input.charts.length > 0 && (
        <GroupTablesPanel input={input} chosen={chosen} onChoose={setChosen} />
      )}
    </SectionFrame>
  );
}
