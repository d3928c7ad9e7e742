import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import { DoubtWords } from "./DoubtWords.tsx";
import { ShowMore } from "./ShowMore.tsx";
import { meaning } from "./theme.ts";

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

/** One row of a list. */
export interface OpenRow {
  readonly name: string;
  /** What it comes to, beside the name. */
  readonly says: ReactNode;
  readonly words?: string | undefined;
  /** What the answer rests on, where it rests on doubtful readings: “Rests on …”. */
  readonly doubt?: string | undefined;
}

/** A list of which each row opens what stands behind it. */
export function OpenList<T>(props: {
  readonly label: string;
  readonly items: readonly T[];
  readonly keyOf: (item: T) => string;
  /** Asked only for the rows that are shown. */
  readonly rowOf: (item: T) => OpenRow;
  readonly onOpen: (item: T) => void;
}): ReactNode {
  const styles = useStyles();
  const { label, items, keyOf, rowOf, onOpen } = props;
  const [shown, setShown] = useState(pageSize);
  return (
    <>
      <ul className={styles.list} aria-label={label}>
        {items.slice(0, shown).map((item) => {
          const { name, says, words, doubt } = rowOf(item);
          return (
            <li key={keyOf(item)}>
              <button
                type="button"
                className={styles.row}
                onClick={() => {
                  onOpen(item);
                }}
              >
                <span className={styles.head}>
                  <span className={styles.name}>{name}</span>
                  {says}
                </span>
                {words !== undefined && <span className={styles.words}>{words}</span>}
                {doubt !== undefined && (
                  <span className={styles.words}>
                    <DoubtWords /> {doubt}
                  </span>
                )}
              </button>
            </li>
          );
        })}
      </ul>
      <ShowMore
        left={items.length - shown}
        onMore={() => {
          setShown(shown + pageSize);
        }}
      />
    </>
  );
}
