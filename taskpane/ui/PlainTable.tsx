import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { meaning } from "./theme.ts";

const useStyles = makeStyles({
  box: {
    overflowX: "auto",
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    borderRadius: tokens.borderRadiusMedium,
    backgroundColor: tokens.colorNeutralBackground1,
    "&:focus-visible": { outline: `2px solid ${meaning.chalk}`, outlineOffset: "1px" },
  },
  table: {
    borderCollapse: "collapse",
    width: "100%",
    "& th, & td": {
      padding: "4px 8px",
      textAlign: "left",
      verticalAlign: "top",
      borderBottom: `1px solid ${tokens.colorNeutralStroke1}`,
    },
    "& tbody tr:last-child > *": { borderBottom: "none" },
  },
  kept: { whiteSpace: "nowrap" },
});

/** A table of words: a heading for each column, and each row under the name in its first cell. */
export function PlainTable(props: {
  readonly label: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly ReactNode[])[];
  /** Columns whose words may be broken into lines, from 0; no other is but the first. */
  readonly wordy?: readonly number[];
}): ReactNode {
  const styles = useStyles();
  const { label, headings, rows, wordy = [] } = props;
  return (
    <div className={styles.box} role="group" aria-label={label} tabIndex={0}>
      <table className={styles.table}>
        <thead>
          <tr>
            {headings.map((heading) => (
              <th key={heading} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, ...cells], i) => (
            <tr key={i}>
              <th scope="row">{name}</th>
              {cells.map((cell, c) => (
                <td key={c} className={mergeClasses(!wordy.includes(c + 1) && styles.kept)}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
