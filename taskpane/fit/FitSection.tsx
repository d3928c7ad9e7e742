import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { lazy, Suspense, useEffect, useState } from "react";
import type { Fitting } from "../../addin/fit/match.ts";
import { FailureBox } from "../ui/FailureBox.tsx";
import { ProblemList } from "../ui/ProblemList.tsx";
import type { PrimaryAction } from "../shell/SectionFrame.tsx";
import { SectionFrame } from "../shell/SectionFrame.tsx";
import { useSession } from "../shell/session.ts";
import { count } from "../ui/words.ts";
import { Answers } from "./Answers.tsx";
import type { ChosenTables } from "./fitTables.ts";
import { FitTablesPanel } from "./FitTablesPanel.tsx";
import type { Question } from "./questions.ts";
import type { Fit } from "./readFit.ts";
import { useFit } from "./useFit.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
  add: { alignSelf: "flex-start" },
  caution: { margin: 0, color: tokens.colorNeutralForeground3 },
});

// A form that is opened seldom, with all that makes a new table.
const AddPattern = lazy(async () => ({ default: (await import("./newPattern/AddPattern.tsx")).AddPattern }));

/** Which garment goes on which figure, why not, and what to change; and one garment more. */
export function FitSection(): ReactNode {
  const styles = useStyles();
  const { errand } = useSession();
  const [isAdding, setAdding] = useState(false);
  useEffect(() => {
    if (errand?.kind === "newPattern") setAdding(true);
  }, [errand]);
  const [chosen, setChosen] = useState<ChosenTables>({});
  const [question, setQuestion] = useState<Question>("wearers");
  const [writing, setWriting] = useState(0);
  const fit = useFit(chosen);

  const add = (): void => {
    setAdding(true);
  };

  function primaryOf({ chart, fitting }: Fit): PrimaryAction | undefined {
    if (fitting && hasPairs(fitting)) {
      return {
        label: "Write to a sheet",
        run: () => {
          setWriting((before) => before + 1);
        },
      };
    }
    return chart && { label: "Add a pattern", run: add };
  }

  if (isAdding)
    return (
      <Suspense fallback={<p className={styles.text}>Opening the form …</p>}>
        <AddPattern
          chosen={chosen}
          onClose={() => {
            setAdding(false);
          }}
        />
      </Suspense>
    );

  return (
    <SectionFrame title="Fit" primary={fit && primaryOf(fit)}>
      {!fit && <p className={styles.text}>Reading patterns and figures …</p>}
      {fit?.failure !== undefined && <FailureBox what="Cannot be judged." why={fit.failure} />}
      {fit?.chart && hasNone(fit) && (
        <p className={styles.text}>
          No patterns are written down yet. Add the first: you are asked what decides for its kind, and see at
          once who can wear it.
        </p>
      )}
      {fit?.used.patterns && (
        <ProblemList
          title={`${count(fit.problems.length, "row is", "rows are")} left out until mended`}
          problems={fit.problems.map(({ row, message }) => ({ rows: [row], message }))}
          table={fit.used.patterns}
          open={fit.fitting?.patterns.length === 0}
        />
      )}
      {fit?.fitting && hasPairs(fit.fitting) && (
        <Answers
          fit={fit}
          fitting={fit.fitting}
          question={question}
          onAsk={(next) => {
            setWriting(0);
            setQuestion(next);
          }}
          writing={writing}
        />
      )}
      {fit?.used.figures && primaryOf(fit)?.run !== add && (
        <Button className={styles.add} onClick={add}>
          Add a pattern
        </Button>
      )}
      {fit && (fit.chart ?? fit.used.patterns) && (
        <FitTablesPanel fit={fit} chosen={chosen} onChoose={setChosen} />
      )}
      {fit?.chart && (
        <p className={styles.caution}>
          A garment that fits may still not be safe. For figures that children play with, leave out cords,
          ties round the neck and small parts that come off, and keep to the rules for toys where you sell.
        </p>
      )}
    </SectionFrame>
  );
}

function hasPairs({ patterns, view }: Fitting): boolean {
  return patterns.length > 0 && view.size > 0;
}

/** No patterns yet, and no row that could be one. */
function hasNone({ used, fitting, problems }: Fit): boolean {
  return !used.patterns || (fitting?.patterns.length === 0 && problems.length === 0);
}
