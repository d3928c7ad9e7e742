import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";

const useStyles = makeStyles({
  text: { margin: 0 },
  list: { margin: 0, display: "flex", flexDirection: "column", gap: "4px" },
  term: { fontWeight: 600 },
  says: { margin: 0, color: tokens.colorNeutralForeground2 },
});

const columns: readonly (readonly [heading: string, says: string])[] = [
  ["Pattern", "needed: a code of its own, such as P1"],
  ["Garment class", "needed: dress, fitted skirt, trousers, shoe …"],
  ["Title", "the name that you sell it under"],
  ["Drafted for", "a figure of your chart; used where no finished measure is given"],
  ["Stretch %, Thickness", "of the cloth"],
  ["Worn over", "codes of the patterns underneath"],
  ["Opens, Opening length", "back, front, side or full length, and how long"],
  ["Neck, Cuff, Hem, Waist opening", "around, not stretched"],
  ["Sleeves", "none, short, elbow or long"],
  ["Ends at, Length", "thigh, knee, calf … and how long it is down to there"],
  ["Finished bust, waist, hip …", "of the garment itself"],
];

/** What a table of patterns needs, for a workbook that has none. */
export function MissingPatterns(): ReactNode {
  const styles = useStyles();
  return (
    <>
      <p className={styles.text}>
        There is no table of patterns in the workbook yet. It has one row for each pattern, and these columns:
      </p>
      <dl className={styles.list}>
        {columns.map(([heading, says]) => (
          <div key={heading}>
            <dt className={styles.term}>{heading}</dt>
            <dd className={styles.says}>{says}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
