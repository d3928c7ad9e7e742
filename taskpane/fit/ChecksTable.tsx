import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { Check } from "../../addin/fit/check.ts";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import { VerdictWords } from "./VerdictWords.tsx";

const useStyles = makeStyles({
  box: {
    overflowX: "auto",
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    borderRadius: tokens.borderRadiusMedium,
    backgroundColor: tokens.colorNeutralBackground1,
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
  },
  kept: { whiteSpace: "nowrap" },
});

/** The checks as a table, for those who would rather read numbers. */
export function ChecksTable(props: { readonly label: string; readonly checks: readonly Check[] }): ReactNode {
  const styles = useStyles();
  return (
    <div className={styles.box} role="group" aria-label={props.label} tabIndex={0}>
      <table className={styles.table}>
        <thead>
          <tr>
            {["Check", "Verdict", "Needs", "Most", "Has", "Difference"].map((heading) => (
              <th key={heading} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {props.checks.map((check, i) => (
            <tr key={`${String(i)} ${check.place}`}>
              <th scope="row">{check.place}</th>
              <td className={styles.kept}>
                <VerdictWords verdict={check.verdict} />
              </td>
              {[check.needsMm, check.mostMm, check.hasMm, check.differenceMm].map((mm, column) => (
                <td key={column} className={styles.kept}>
                  {mm === undefined ? "no limit" : lengthWords(mm, check.unit)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
