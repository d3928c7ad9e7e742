import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { Check } from "../../addin/fit/check.ts";
import { CheckBars } from "./CheckBars.tsx";
import { drawCheck } from "./checkDrawing.ts";
import { VerdictWords } from "./VerdictWords.tsx";

const useStyles = makeStyles({
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
  place: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600 },
  text: { margin: 0, overflowWrap: "anywhere" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3, fontSize: tokens.fontSizeBase200 },
});

/** One check: what it says, drawn, and what would change it. */
export function CheckCard(props: { readonly check: Check; readonly comfort: number }): ReactNode {
  const styles = useStyles();
  const { check, comfort } = props;
  const drawing = drawCheck(check, comfort);
  return (
    <li className={styles.card}>
      <div className={styles.head}>
        <h3 className={styles.place}>{check.place}</h3>
        <VerdictWords verdict={check.verdict} />
      </div>
      <p className={styles.text}>{capitalised(check.says)}.</p>
      {drawing && <CheckBars title={check.place} drawing={drawing} />}
      {check.alteration && <p className={styles.text}>{check.alteration.words}</p>}
      {check.source !== undefined && <p className={styles.quiet}>Rule: {check.source}.</p>}
    </li>
  );
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
