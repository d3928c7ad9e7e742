import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { Explanation } from "../../addin/fit/explainPair.ts";
import { isWearable } from "../../addin/fit/verdict.ts";
import { CardOfCheck, Cards } from "./Cards.tsx";
import type { Change } from "./changes.ts";
import { changesOf } from "./changes.ts";
import { MeasureFirst, Part } from "../ui/Part.tsx";

const useStyles = makeStyles({
  text: { margin: 0 },
  amounts: {
    margin: 0,
    display: "flex",
    flexWrap: "wrap",
    columnGap: "24px",
    "> div": { display: "flex", gap: "8px" },
  },
  term: { color: tokens.colorNeutralForeground3 },
  amount: { margin: 0, fontWeight: 600 },
});

/** What to alter on the pattern so that it goes on the figure, and what to measure before. */
export function WhatToChange({ explanation }: { readonly explanation: Explanation }): ReactNode {
  const styles = useStyles();
  const { verdict, take, routes } = explanation;
  const changes = changesOf(explanation);
  const way = changes.some(({ check }) => check.route !== undefined)
    ? routes.find(({ isBest }) => isBest)?.name
    : undefined;
  return (
    <>
      {isWearable(verdict) && <p className={styles.text}>Nothing has to change: it can be worn as it is.</p>}
      {changes.length > 0 && (
        <Part title="On the pattern">
          <Cards>
            {changes.map((change) => (
              <CardOfCheck key={`${change.check.route ?? ""} ${change.check.place}`} check={change.check}>
                <Amounts change={change} />
                <p className={styles.text}>{change.words}</p>
              </CardOfCheck>
            ))}
          </Cards>
        </Part>
      )}
      {way !== undefined && routes.length > 1 && (
        <p className={styles.text}>
          One way of putting it on is enough; these changes are for “{way}”, which comes nearest.
        </p>
      )}
      <MeasureFirst take={take} />
    </>
  );
}

function Amounts({ change }: { readonly change: Change }): ReactNode {
  const styles = useStyles();
  const { total, perEdge, edges } = change;
  if (total === undefined) return null;
  return (
    <dl className={styles.amounts}>
      <div>
        <dt className={styles.term}>In all</dt>
        <dd className={styles.amount}>{total}</dd>
      </div>
      {perEdge !== undefined && (
        <div>
          <dt className={styles.term}>Each of {edges} seam edges</dt>
          <dd className={styles.amount}>{perEdge}</dd>
        </div>
      )}
    </dl>
  );
}
