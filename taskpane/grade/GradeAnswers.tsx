import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo, useState } from "react";
import { printScale } from "../../addin/grading/printScale.ts";
import { Choice } from "../ui/Choice.tsx";
import type { Chosen } from "../ui/chosenPlace.ts";
import { FailureBox } from "../ui/FailureBox.tsx";
import type { FiguresToGroup } from "../groups/readGroups.ts";
import { ProblemList } from "../ui/ProblemList.tsx";
import { count } from "../ui/words.ts";
import { placeOfFigure } from "./chosenFigure.ts";
import type { MeasuresFor } from "./countedMeasures.ts";
import { countedMeasures } from "./countedMeasures.ts";
import { FigureChoice } from "./FigureChoice.tsx";
import type { PieceChoice } from "./garments.ts";
import { pieceChoices } from "./garments.ts";
import { MoreTargets } from "./MoreTargets.tsx";
import { PairAnswers } from "./PairAnswers.tsx";
import type { GradingInput } from "./readGrading.ts";
import { mismatchProblems } from "./ruleProblems.ts";
import { usualTarget } from "./usualTarget.ts";
import { WhatCounts } from "./WhatCounts.tsx";

const useStyles = makeStyles({ text: { margin: 0 } });

const nothing: ReadonlySet<string> = new Set();

/** The choices of base, targets, pieces and measures, and what comes of them. */
export function GradeAnswers(props: {
  readonly input: GradingInput;
  readonly figures: FiguresToGroup;
  /** Counts up when the user asks to write. */
  readonly asked: number;
}): ReactNode {
  const styles = useStyles();
  const { input, figures, asked } = props;
  const { chart, tolerances } = figures;
  const { ruleSet } = input;
  const [chosenBase, setBase] = useState<Chosen>();
  const [chosenTarget, setTarget] = useState<Chosen>();
  const [chosenMore, setMore] = useState<readonly Chosen[]>([]);
  const [pieceKey, setPieceKey] = useState<string>();
  const [which, setWhich] = useState<MeasuresFor>("pieces");
  const [chosenMeasures, setMeasures] = useState(nothing);

  const names = chart.figures;
  const base = placeOfFigure(names, chosenBase, 0);
  const usual = useMemo(() => usualTarget(chart, base ?? 0, tolerances), [chart, base, tolerances]);
  const target = placeOfFigure(names, chosenTarget, usual);
  const more = chosenMore
    .map((each) => placeOfFigure(names, each, 0))
    .filter((place) => place !== undefined)
    .filter((place) => place !== base && place !== target);

  const choices = useMemo(() => pieceChoices(ruleSet.pieces), [ruleSet]);
  const pieces: PieceChoice | undefined = choices.find(({ key }) => key === pieceKey) ?? choices[0];
  const columns = useMemo(
    () =>
      countedMeasures(chart, which, {
        rules: ruleSet.rules,
        pieces: pieces?.pieces ?? [],
        tolerances,
        chosen: chosenMeasures,
      }),
    [chart, which, ruleSet, pieces, tolerances, chosenMeasures],
  );
  const scale = useMemo(
    () =>
      base === undefined || target === undefined ? undefined : printScale(base, target, columns, tolerances),
    [base, target, columns, tolerances],
  );
  const targets = target === undefined ? [] : [target, ...more];
  const mismatches = base === undefined ? [] : mismatchProblems(ruleSet.mismatches, chart, base, targets);

  return (
    <>
      <FigureChoice
        label="Drafted for (base figure)"
        names={names}
        place={base}
        chosen={chosenBase}
        onChoose={setBase}
      />
      <FigureChoice
        label="To be worn by (target figure)"
        names={names}
        place={target}
        chosen={chosenTarget}
        onChoose={setTarget}
      />
      {base !== undefined && target !== undefined && (
        <MoreTargets names={names} taken={[base, target]} more={more} onChange={setMore} />
      )}
      <Choice
        label="Garment or piece"
        value={pieces?.key ?? ""}
        options={choices.map(({ key, words }) => [key, words] as const)}
        onChoose={setPieceKey}
      />
      <WhatCounts
        chart={chart}
        which={which}
        counted={new Set(columns.map(({ key }) => key))}
        onWhich={(next) => {
          setMeasures(new Set(columns.map(({ key }) => key)));
          setWhich(next);
        }}
        onChosen={(keys) => {
          setMeasures(keys);
          setWhich("chosen");
        }}
      />
      {ruleSet.failure !== undefined && (
        <FailureBox what="The grade rules of Measure Book are used." why={ruleSet.failure} />
      )}
      {ruleSet.table && (
        <>
          <ProblemList
            title={`${count(ruleSet.problems.length, "row of the grade rules", "rows of the grade rules")} to mend`}
            problems={ruleSet.problems.map(({ row, column, message }) => ({ rows: [row], column, message }))}
            table={ruleSet.table}
            open={ruleSet.problems.length < 4}
          />
          {ruleSet.waiting.length > 0 && (
            <p className={styles.text}>Not graded until then: {ruleSet.waiting.join(", ")}.</p>
          )}
          <ProblemList
            title={`${count(mismatches.length, "girth does", "girths do")} not add up`}
            problems={mismatches}
            table={ruleSet.table}
            open={mismatches.length < 4}
          />
        </>
      )}
      {base === undefined && <Gone chosen={chosenBase} />}
      {target === undefined && <Gone chosen={chosenTarget} />}
      {base !== undefined && base === target && (
        <p className={styles.text} role="status">
          Base and target are the same figure, so nothing changes. Choose another target.
        </p>
      )}
      {scale && pieces && base !== undefined && target !== undefined && base !== target && (
        <PairAnswers
          input={input}
          figures={figures}
          pair={{ base, target, more }}
          pieces={pieces}
          measures={{ which, columns }}
          scale={scale}
          asked={asked}
        />
      )}
    </>
  );
}

function Gone({ chosen }: { readonly chosen: Chosen | undefined }): ReactNode {
  return (
    <FailureBox
      what={`“${chosen?.name ?? ""}” is not in the chart any more.`}
      why="Choose the figure again, or write its name into the chart as it was."
    />
  );
}
