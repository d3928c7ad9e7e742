import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { ScaleVerdict } from "../../addin/grading/printScale.ts";
import type { Tone } from "../ui/SignedWords.tsx";
import { SignedWords } from "../ui/SignedWords.tsx";
import type { PrintView } from "./printView.ts";

const useStyles = makeStyles({
  verdict: { display: "flex", flexDirection: "column", gap: "4px", overflowWrap: "anywhere" },
  headline: { fontSize: tokens.fontSizeBase400 },
  text: { margin: 0 },
});

const looks: Readonly<Record<ScaleVerdict, { readonly sign: string; readonly tone: Tone }>> = {
  "one scale": { sign: "●", tone: "leaf" },
  "two scales": { sign: "◐", tone: "leaf" },
  "print and alter": { sign: "◆", tone: "brass" },
  "draft anew": { sign: "✕", tone: "thread" },
  "not known": { sign: "?", tone: "quiet" },
};

/** Whether another print scale will do, in a sentence, and what stands behind it. */
export function Verdict({ view }: { readonly view: PrintView }): ReactNode {
  const styles = useStyles();
  return (
    <div className={styles.verdict} role="group" aria-label="Verdict" aria-live="polite">
      <span className={styles.headline}>
        <SignedWords {...looks[view.verdict]}>{view.headline}</SignedWords>
      </span>
      <p className={styles.text}>{view.detail}</p>
    </div>
  );
}

/** The same in two or three words, for a table. */
export function VerdictWords({ verdict }: { readonly verdict: ScaleVerdict }): ReactNode {
  return <SignedWords {...looks[verdict]}>{verdict}</SignedWords>;
}
