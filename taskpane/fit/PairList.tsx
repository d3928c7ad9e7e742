import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import { meaning } from "../theme.ts";
import type { RankedPair } from "./ranking.ts";
import { VerdictWords } from "./VerdictWords.tsx";

const useStyles = makeStyles({
  list: {
    listStyleType: "none",
    margin: 0,
    padding: 0,
    borderRadius: tokens.borderRadiusMedium,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    backgroundColor: tokens.colorNeutralBackground1,
    "> li + li": { borderTop: `1px solid ${tokens.colorNeutralStroke1}` },
  },
  row: {
    width: "100%",
    minHeight: "40px",
    padding: "6px 12px",
    font: "inherit",
    textAlign: "left",
    color: "inherit",
    backgroundColor: "transparent",
    border: "none",
    cursor: "pointer",
    display: "flex",
    flexDirection: "column",
    gap: "2px",
    "&:hover": { backgroundColor: meaning.chalkGround },
    "&:focus-visible": { outline: `2px solid ${meaning.chalk}`, outlineOffset: "-2px" },
  },
  head: { display: "flex", flexWrap: "wrap", columnGap: "8px", justifyContent: "space-between" },
  name: { fontWeight: 600, overflowWrap: "anywhere" },
  words: { color: tokens.colorNeutralForeground2, overflowWrap: "anywhere" },
});

/** Rows shown at first and added by “Show more”. */
const pageSize = 30;

/** Pairs with their verdicts, best first; each opens its reasons. */
export function PairList(props: {
  readonly label: string;
  readonly pairs: readonly RankedPair[];
  readonly nameOf: (pair: RankedPair) => string;
  readonly onOpen: (pair: RankedPair) => void;
}): ReactNode {
  const styles = useStyles();
  const { label, pairs, nameOf, onOpen } = props;
  const [shown, setShown] = useState(pageSize);
  return (
    <>
      <ul className={styles.list} aria-label={label}>
        {pairs.slice(0, shown).map((pair) => {
          const { verdict, words } = pair.explanation;
          return (
            <li key={`${String(pair.pattern)} ${String(pair.figure)}`}>
              <button
                type="button"
                className={styles.row}
                onClick={() => {
                  onOpen(pair);
                }}
              >
                <span className={styles.head}>
                  <span className={styles.name}>{nameOf(pair)}</span>
                  <VerdictWords verdict={verdict} />
                </span>
                {verdict !== "fits" && <span className={styles.words}>{words}</span>}
              </button>
            </li>
          );
        })}
      </ul>
      {pairs.length > shown && (
        <Button
          onClick={() => {
            setShown(shown + pageSize);
          }}
        >
          Show more ({pairs.length - shown} left)
        </Button>
      )}
    </>
  );
}
