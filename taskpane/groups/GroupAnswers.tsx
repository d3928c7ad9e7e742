import { Switch } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import { Disclosure } from "../ui/Disclosure.tsx";
import { QuestionNav } from "../ui/QuestionNav.tsx";
import { AllPairs, usualPairs } from "./AllPairs.tsx";
import type { ModelSettings } from "./HouseModels.tsx";
import { HouseModels } from "./HouseModels.tsx";
import type { PairInSight } from "./LooseClothes.tsx";
import { LooseClothes } from "./LooseClothes.tsx";
import { MeasureNext } from "./MeasureNext.tsx";
import type { GroupQuestion } from "./questions.ts";
import { groupQuestions, groupQuestionWords } from "./questions.ts";
import type { FiguresToGroup, GroupsInput } from "./readGroups.ts";
import { WhoShares } from "./WhoShares.tsx";
import type { GroupSettings } from "./grouping.ts";
import { estimateWords } from "./readGroups.ts";

const usual: GroupSettings = { part: "body", method: "complete", cut: 1, view: "cards" };

/** The questions about shared bodies, each answered on one screen. What is set stays while another is asked. */
export function GroupAnswers(props: {
  readonly input: GroupsInput;
  readonly figures: FiguresToGroup;
  readonly question: GroupQuestion;
  readonly onAsk: (question: GroupQuestion) => void;
  /** Counts up when the user asks to write; 0 while they have not. */
  readonly writing: number;
  readonly onEstimates: (count: boolean) => void;
}): ReactNode {
  const { input, figures, question, onAsk, writing, onEstimates } = props;
  const { estimates } = figures;
  const [settings, setSettings] = useState(usual);
  const [pair, setPair] = useState<PairInSight>({});
  const [models, setModels] = useState<ModelSettings>({ part: "body", reach: 1 });
  const [pairs, setPairs] = useState(usualPairs);
  const [nextPart, setNextPart] = useState("body");
  return (
    <>
      <QuestionNav
        label="Questions about groups"
        questions={groupQuestions}
        words={groupQuestionWords}
        question={question}
        onAsk={onAsk}
      />
      {estimates.count > 0 && (
        <Disclosure title="Estimates" says={estimateWords(estimates)}>
          <Switch
            label="Count estimates too"
            checked={estimates.areCounted}
            onChange={(_, data) => {
              onEstimates(data.checked);
            }}
          />
        </Disclosure>
      )}
      {question === "shares" && (
        <WhoShares
          input={input}
          figures={figures}
          settings={settings}
          onSettings={setSettings}
          writing={writing}
        />
      )}
      {question === "loose" && (
        <LooseClothes input={input} figures={figures} pair={pair} onPair={setPair} writing={writing} />
      )}
      {question === "pairs" && (
        <AllPairs
          input={input}
          figures={figures}
          settings={pairs}
          onSettings={setPairs}
          onOpen={(place, other) => {
            const chosen = (at: number) => ({ place: at, name: figures.chart.figures[at] ?? "" });
            setPair({ figure: chosen(place), other: chosen(other) });
            onAsk("loose");
          }}
          writing={writing}
        />
      )}
      {question === "models" && (
        <HouseModels
          input={input}
          figures={figures}
          settings={models}
          onSettings={setModels}
          writing={writing}
        />
      )}
      {question === "next" && (
        <MeasureNext input={input} figures={figures} part={nextPart} onPart={setNextPart} writing={writing} />
      )}
    </>
  );
}
