import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { Explanation } from "../../addin/fit/explainPair.ts";
import { isWearable } from "../../addin/fit/verdict.ts";
import { changesOf } from "./changes.ts";
import { VerdictWords } from "./VerdictWords.tsx";

const useStyles = makeStyles({
  list: {
    listStyleType: "none",
    margin: 0,
    padding: 0,
    display: "flex",
    flexDirection: "column",
    gap: "8px",
  },
  card: {
    padding: "8px 12px",
    borderRadius: tokens.borderRadiusMedium,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    backgroundColor: tokens.colorNeutralBackground1,
    display: "flex",
    flexDirection: "column",
    gap: "4px",
  },
  head: { display: "flex", flexWrap: "wrap", columnGap: "8px", justifyContent: "space-between" },
  heading: { margin: 0, fontSize: tokens.fontSizeBase400, fontWeight: 600 },
  place: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600 },
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
  plain: { margin: 0, paddingLeft: "20px" },
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
        <ul className={styles.list}>
          {changes.map(({ check, words, total, perEdge, edges }) => (
            <li key={`${check.route ?? ""} ${check.place}`} className={styles.card}>
              <div className={styles.head}>
                <h2 className={styles.place}>{check.place}</h2>
                <VerdictWords verdict={check.verdict} />
              </div>
              {total !== undefined && (
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
              )}
              <p className={styles.text}>{words}</p>
            </li>
          ))}
        </ul>
      )}
      {way !== undefined && routes.length > 1 && (
        <p className={styles.text}>
          One way of putting it on is enough; these changes are for “{way}”, which comes nearest.
        </p>
      )}
      {take.length > 0 && (
        <>
          <h2 className={styles.heading}>Measure first</h2>
          <ul className={styles.plain}>
            {take.map((what) => (
              <li key={what}>{what}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
