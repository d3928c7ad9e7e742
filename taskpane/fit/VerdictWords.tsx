import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { Verdict } from "../../addin/fit/verdict.ts";
import { meaning } from "../theme.ts";
import { verdictLooks } from "./verdictLooks.ts";

const useStyles = makeStyles({
  words: { display: "inline-flex", gap: "4px", alignItems: "baseline", fontWeight: 600 },
  sign: { flexShrink: 0, width: "1em", textAlign: "center" },
  leaf: { color: meaning.leaf },
  brass: { color: meaning.brass },
  thread: { color: meaning.thread },
  quiet: { color: tokens.colorNeutralForeground3 },
});

/** A verdict as word and shape, in the colour of its meaning. */
export function VerdictWords({ verdict }: { readonly verdict: Verdict }): ReactNode {
  const styles = useStyles();
  const { sign, tone } = verdictLooks[verdict];
  return (
    <span className={mergeClasses(styles.words, styles[tone])}>
      <span className={styles.sign} aria-hidden="true">
        {sign}
      </span>
      <span>{verdict}</span>
    </span>
  );
}
