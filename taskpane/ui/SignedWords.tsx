import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { meaning } from "./theme.ts";

/** leaf: in order; brass: look here; thread: stops a garment; quiet: nobody can say yet. */
export type Tone = "leaf" | "brass" | "thread" | "quiet";

const useStyles = makeStyles({
  words: { display: "inline-flex", gap: "4px", alignItems: "baseline", fontWeight: 600 },
  sign: { flexShrink: 0, width: "1em", textAlign: "center" },
  leaf: { color: meaning.leaf },
  brass: { color: meaning.brass },
  thread: { color: meaning.thread },
  quiet: { color: tokens.colorNeutralForeground3 },
});

/** Words with a shape before them, in the colour of what they mean. */
export function SignedWords(props: {
  readonly sign: string;
  readonly tone: Tone;
  readonly children: ReactNode;
}): ReactNode {
  const styles = useStyles();
  const { sign, tone, children } = props;
  return (
    <span className={mergeClasses(styles.words, styles[tone])}>
      <span className={styles.sign} aria-hidden="true">
        {sign}
      </span>
      <span>{children}</span>
    </span>
  );
}
