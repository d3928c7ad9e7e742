import type { ReactNode } from "react";
import { OpenList } from "../ui/OpenList.tsx";
import type { RankedPair } from "./ranking.ts";
import { VerdictWords } from "./VerdictWords.tsx";

/** Pairs with their verdicts, best first; each opens its reasons. */
export function PairList(props: {
  readonly label: string;
  readonly pairs: readonly RankedPair[];
  readonly nameOf: (pair: RankedPair) => string;
  /** What a pair rests on, where readings are doubtful. */
  readonly doubtOf: (pair: RankedPair) => string | undefined;
  readonly onOpen: (pair: RankedPair) => void;
}): ReactNode {
  const { label, pairs, nameOf, doubtOf, onOpen } = props;
  return (
    <OpenList
      label={label}
      items={pairs}
      keyOf={({ pattern, figure }) => `${String(pattern)} ${String(figure)}`}
      rowOf={(pair) => {
        const { verdict, words } = pair.explanation;
        return {
          name: nameOf(pair),
          says: <VerdictWords verdict={verdict} />,
          words: verdict === "fits" ? undefined : words,
          doubt: doubtOf(pair),
        };
      }}
      onOpen={onOpen}
    />
  );
}
