import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Fitting } from "../../addin/fit/match.ts";
import { FailureBox } from "../ui/FailureBox.tsx";
import { OfferDemo } from "../shell/OfferDemo.tsx";
import { ProblemList } from "../ui/ProblemList.tsx";
import { SectionFrame } from "../shell/SectionFrame.tsx";
import { useSession } from "../shell/session.ts";
import { count } from "../ui/words.ts";
import { Answers } from "./Answers.tsx";
import type { ChosenTables } from "./fitTables.ts";
import { FitTablesPanel } from "./FitTablesPanel.tsx";
import { MissingPatterns } from "./MissingPatterns.tsx";
import type { Question } from "./questions.ts";
import type { Fit } from "./readFit.ts";
import { patternsStarter } from "./starterTables.ts";
import { useFit } from "./useFit.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
  caution: { margin: 0, color: tokens.colorNeutralForeground3 },
});

/** Which garment goes on which figure, why not, and what to change. */
export function FitSection(): ReactNode {
  const styles = useStyles();
  const { apply, goTo } = useSession();
  const [chosen, setChosen] = useState<ChosenTables>({});
  const [question, setQuestion] = useState<Question>("wearers");
  const [writing, setWriting] = useState(0);
  const fit = useFit(chosen);

  async function addPatterns({ chart, sheets, tables }: Fit): Promise<void> {
    if (!chart) return;
    const unit = chart.measures[0]?.unit ?? "mm";
    const taken = { sheets, tables: tables.map(({ name }) => name) };
    const { edits, sheet } = patternsStarter({ figures: chart.figures, unit }, taken);
    await apply("Add a table of patterns", edits, {
      kind: "done",
      text: `The table is on the sheet “${sheet}”, with one row as an example. Write your patterns over it and below.`,
    });
  }

  function primaryOf({ chart, fitting, used }: Fit) {
    if (fitting && hasPairs(fitting)) {
      return {
        label: "Write to a sheet",
        run: () => {
          setWriting((before) => before + 1);
        },
      };
    }
    if (chart && !used.patterns)
      return { label: "Add a Patterns table", run: () => fit && void addPatterns(fit) };
    return chart
      ? undefined
      : {
          label: "Import a chart",
          run: () => {
            goTo("import");
          },
        };
  }

  return (
    <SectionFrame title="Fit" primary={fit && primaryOf(fit)}>
      {!fit && <p className={styles.text}>Reading patterns and figures …</p>}
      {fit?.failure !== undefined && <FailureBox what="Cannot be judged." why={fit.failure} />}
      {fit && !fit.chart && fit.failure === undefined && (
        <>
          <p className={styles.text}>
            There is no chart in the workbook yet. Import one: patterns are judged on its figures.
          </p>
          <OfferDemo />
        </>
      )}
      {fit?.chart && !fit.used.patterns && <MissingPatterns />}
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
