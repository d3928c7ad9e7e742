import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { Check } from "../../addin/fit/check.ts";
import { CardOfCheck } from "./Cards.tsx";
import { CheckBars } from "./CheckBars.tsx";
import { drawCheck } from "./checkDrawing.ts";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3, fontSize: tokens.fontSizeBase200 },
});

/** One check: what it says, drawn, and what would change it. */
export function CheckCard(props: { readonly check: Check }): ReactNode {
  const styles = useStyles();
  const { check } = props;
  const drawing = drawCheck(check);
  return (
    <CardOfCheck check={check}>
      <p className={styles.text}>{capitalised(check.says)}.</p>
      {drawing && <CheckBars title={check.place} drawing={drawing} />}
      {check.alteration && <p className={styles.text}>{check.alteration.words}</p>}
      {check.source !== undefined && <p className={styles.quiet}>Rule: {check.source}.</p>}
    </CardOfCheck>
  );
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
