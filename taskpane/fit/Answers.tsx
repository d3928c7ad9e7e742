import { Button, makeStyles, Switch, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useMemo, useRef, useState } from "react";
import { explainPair } from "../../addin/fit/explainPair.ts";
import type { Fitting } from "../../addin/fit/match.ts";
import { useDoubts } from "../check/useCheck.ts";
import { useSession } from "../shell/session.ts";
import type { Chosen } from "../ui/chosenPlace.ts";
import { placeOfChosen } from "../ui/chosenPlace.ts";
import { PlaceChoice } from "../ui/PlaceChoice.tsx";
import { QuestionNav } from "../ui/QuestionNav.tsx";
import { count } from "../ui/words.ts";
import { BodyList } from "./BodyList.tsx";
import { classesOf } from "./classesOf.ts";
import { FilterChoices } from "./FilterChoices.tsx";
import type { MatrixFilter } from "./matrix.ts";
import type { MatrixState } from "./MatrixView.tsx";
import { MatrixView } from "./MatrixView.tsx";
import { PairList } from "./PairList.tsx";
import { patternName } from "./patternName.ts";
import type { Question } from "./questions.ts";
import { questions, questionWords } from "./questions.ts";
import type { Pair, RankedPair } from "./ranking.ts";
import { countVerdicts, doubtsOfPairs, wardrobeOf, wearersOf } from "./ranking.ts";
import type { Fit } from "./readFit.ts";
import { RestsOn } from "./RestsOn.tsx";
import { VerdictWords } from "./VerdictWords.tsx";
import { WhatToChange } from "./WhatToChange.tsx";
import { WhyNot } from "./WhyNot.tsx";
import { WriteAnswer } from "./WriteMatrix.tsx";

const useStyles = makeStyles({
  text: { margin: 0 },
  answer: { display: "flex", flexDirection: "column", gap: "4px", outlineStyle: "none" },
  verdict: { fontSize: tokens.fontSizeBase400 },
  back: { alignSelf: "flex-start" },
  ways: { display: "flex", flexWrap: "wrap", gap: "8px" },
});

const everything: MatrixFilter = { garmentClass: undefined, verdict: undefined };

/** The questions about fit and their answers, each in one screen. */
export function Answers(props: {
  readonly fit: Fit;
  readonly fitting: Fitting;
  readonly question: Question;
  readonly onAsk: (question: Question) => void;
  readonly writing: number;
}): ReactNode {
  const styles = useStyles();
  const { fit, fitting, question, onAsk, writing } = props;
  const [pattern, setPattern] = useState<Chosen>();
  const [figure, setFigure] = useState<Chosen>();
  const [filter, setFilter] = useState(everything);
  const [matrix, setMatrix] = useState<MatrixState>({ filter: everything, at: { row: 0, column: 0 } });
  /** The list or matrix from which a pair was opened. */
  const [from, setFrom] = useState<Question>();
  const [comesBack, setComesBack] = useState(false);

  const patternNames = useMemo(
    () => fitting.patterns.map(({ pattern: each }) => patternName(each)),
    [fitting],
  );
  const figureNames = fitting.view.chart.figures;
  const pair: Pair = {
    pattern: placeOfChosen(patternNames, pattern),
    figure: placeOfChosen(figureNames, figure),
  };

  function ask(next: Question): void {
    setFrom(undefined);
    setComesBack(false);
    onAsk(next);
  }

  function open(opened: Pair): void {
    setPattern({ place: opened.pattern, name: patternNames[opened.pattern] ?? "" });
    setFigure({ place: opened.figure, name: figureNames[opened.figure] ?? "" });
    setFrom(question);
    onAsk("why");
  }

  const patternChoice = (
    <PlaceChoice
      label="Pattern"
      names={patternNames}
      place={pair.pattern}
      onChoose={(place) => {
        setPattern({ place, name: patternNames[place] ?? "" });
      }}
    />
  );
  const figureChoice = (
    <PlaceChoice
      label="Figure"
      names={figureNames}
      place={pair.figure}
      onChoose={(place) => {
        setFigure({ place, name: figureNames[place] ?? "" });
      }}
    />
  );

  return (
    <>
      <QuestionNav
        label="Questions about fit"
        questions={questions}
        words={questionWords}
        question={question}
        onAsk={ask}
      />
      {question === "wearers" && (
        <>
          {patternChoice}
          <Ranked
            key="wearers"
            {...{ fit, writing }}
            fitting={fitting}
            pair={pair}
            by="pattern"
            filter={filter}
            onFilter={setFilter}
            onOpen={open}
          />
        </>
      )}
      {question === "wardrobe" && (
        <>
          {figureChoice}
          <ToFigure figure={figureNames[pair.figure] ?? ""} />
          <Ranked
            key="wardrobe"
            {...{ fit, writing }}
            fitting={fitting}
            pair={pair}
            by="figure"
            filter={filter}
            onFilter={setFilter}
            onOpen={open}
          />
        </>
      )}
      {(question === "why" || question === "change") && (
        <>
          {from !== undefined && (
            <Button
              className={styles.back}
              onClick={() => {
                setComesBack(true);
                setFrom(undefined);
                onAsk(from);
              }}
            >
              Back to “{questionWords[from]}”
            </Button>
          )}
          {patternChoice}
          {figureChoice}
          <ToFigure figure={figureNames[pair.figure] ?? ""} draftedFor={draftedFor(fitting, pair)} />
          <OfPair
            fit={fit}
            fitting={fitting}
            pair={pair}
            question={question}
            writing={writing}
            takesFocus={from !== undefined}
            onAsk={onAsk}
          />
        </>
      )}
      {question === "matrix" && (
        <MatrixView
          fit={fit}
          fitting={fitting}
          state={matrix}
          onState={setMatrix}
          comesBack={comesBack}
          writing={writing}
          onOpen={(p, f) => {
            open({ pattern: p, figure: f });
          }}
        />
      )}
    </>
  );
}

/** The name of the figure that a pattern was drafted for, where that is another one. */
function draftedFor({ patterns, view }: Fitting, { pattern, figure }: Pair): string | undefined {
  const at = patterns[pattern]?.pattern.draftedFor;
  return at === undefined || at === figure ? undefined : view.chart.figures[at];
}

/** Ways to the card of a figure, and to the figure that the pattern was drafted for beside it. */
function ToFigure(props: { readonly figure: string; readonly draftedFor?: string | undefined }): ReactNode {
  const styles = useStyles();
  const { ask } = useSession();
  const { figure, draftedFor: other } = props;
  return (
    <div className={styles.ways}>
      <Button
        size="small"
        onClick={() => {
          ask("figure", { figure });
        }}
      >
        Open its card
      </Button>
      {other !== undefined && (
        <Button
          size="small"
          onClick={() => {
            ask("figure", { figure: other, other: figure });
          }}
        >
          Compare it with {other}
        </Button>
      )}
    </div>
  );
}

/** One pattern on every figure, or every pattern on one figure, best first. */
function Ranked(props: {
  readonly fitting: Fitting;
  readonly pair: Pair;
  readonly by: "pattern" | "figure";
  readonly filter: MatrixFilter;
  readonly onFilter: (filter: MatrixFilter) => void;
  readonly onOpen: (pair: Pair) => void;
  readonly fit: Fit;
  readonly writing: number;
}): ReactNode {
  const styles = useStyles();
  const { fit, fitting, pair, by, filter, onFilter, onOpen, writing } = props;
  const { pattern, figure } = pair;
  const isOfPattern = by === "pattern";
  const [asBodies, setAsBodies] = useState(false);
  const pairs = useMemo(
    () => (isOfPattern ? wearersOf(fitting, pattern) : wardrobeOf(fitting, figure)),
    [fitting, isOfPattern, pattern, figure],
  );
  const { rules, used } = fit;
  const doubtful = useDoubts(used.figures, fitting.view.chart);
  const marks = useMemo(
    () => doubtful && doubtsOfPairs(fitting, pairs, doubtful, rules),
    [fitting, pairs, doubtful, rules],
  );
  const doubtOf = (each: RankedPair): string | undefined => marks?.get(each);
  const shown = pairs.filter(
    (each) =>
      (filter.verdict === undefined || each.explanation.verdict === filter.verdict) &&
      (isOfPattern || filter.garmentClass === undefined || classOf(fitting, each) === filter.garmentClass),
  );
  const says = countVerdicts(shown.map(({ explanation }) => explanation.verdict))
    .map((each) => `${each.count.toLocaleString("en-GB")} ${each.verdict}`)
    .join(", ");
  const size = isOfPattern ? count(shown.length, "figure") : count(shown.length, "pattern");
  return (
    <>
      <FilterChoices
        filter={filter}
        classes={isOfPattern ? undefined : classesOf(fitting)}
        onChange={onFilter}
      />
      {isOfPattern && (
        <Switch
          label="Bodies in place of figures"
          checked={asBodies}
          onChange={(_, data) => {
            setAsBodies(data.checked);
          }}
        />
      )}
      {isOfPattern && asBodies && (
        <BodyList fitting={fitting} pairs={shown} doubtOf={doubtOf} onOpen={onOpen} />
      )}
      {(!isOfPattern || !asBodies) && (
        <>
          <p className={styles.text} aria-live="polite">
            {shown.length === 0
              ? "None is like that. Choose other garments or verdicts."
              : `${size}: ${says}.`}
          </p>
          {shown.length > 0 && (
            <PairList
              key={`${String(pattern)} ${String(figure)}`}
              label={isOfPattern ? "Figures, best first" : "Patterns, best first"}
              pairs={shown}
              nameOf={(each) => (isOfPattern ? each.explanation.figure : nameOfPattern(fitting, each))}
              doubtOf={doubtOf}
              onOpen={onOpen}
            />
          )}
        </>
      )}
      {shown.length > 0 && (
        <WriteAnswer
          {...{ fit, fitting }}
          question={{ kind: isOfPattern ? "wearers" : "wardrobe", pair, shown }}
          asked={writing}
        />
      )}
    </>
  );
}

/** The verdict of one pair, and its reasons or what to change. */
function OfPair(props: {
  readonly fit: Fit;
  readonly fitting: Fitting;
  readonly pair: Pair;
  readonly question: "why" | "change";
  readonly writing: number;
  readonly takesFocus: boolean;
  readonly onAsk: (question: Question) => void;
}): ReactNode {
  const styles = useStyles();
  const { fit, fitting, pair, question, writing, takesFocus, onAsk } = props;
  const { pattern, figure } = pair;
  const explanation = useMemo(() => explainPair(fitting, pattern, figure), [fitting, pattern, figure]);
  const answer = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (takesFocus) answer.current?.focus();
  }, [takesFocus]);
  const other = question === "why" ? "change" : "why";
  return (
    <>
      <div
        ref={answer}
        className={styles.answer}
        tabIndex={-1}
        role="group"
        aria-label="Answer"
        aria-live="polite"
      >
        <span className={styles.verdict}>
          <VerdictWords verdict={explanation.verdict} />
        </span>
        {explanation.words !== "Fits." && <p className={styles.text}>{explanation.words}</p>}
        <RestsOn fit={fit} fitting={fitting} pair={pair} />
      </div>
      {question === "why" ? <WhyNot explanation={explanation} /> : <WhatToChange explanation={explanation} />}
      <Button
        className={styles.back}
        onClick={() => {
          onAsk(other);
        }}
      >
        {questionWords[other]}
      </Button>
      <WriteAnswer {...{ fit, fitting }} question={{ kind: "why", pair }} asked={writing} />
    </>
  );
}

function classOf(fitting: Fitting, { pattern }: Pair): string | undefined {
  return fitting.patterns[pattern]?.pattern.garmentClass.name;
}

function nameOfPattern(fitting: Fitting, { pattern }: RankedPair): string {
  const found = fitting.patterns[pattern];
  return found ? patternName(found.pattern) : "";
}
