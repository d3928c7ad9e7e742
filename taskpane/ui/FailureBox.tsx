import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { meaning } from "./theme.ts";

const useStyles = makeStyles({
  box: {
    margin: 0,
    padding: "8px 12px",
    borderRadius: tokens.borderRadiusMedium,
    backgroundColor: meaning.threadGround,
    border: `1px solid ${meaning.thread}`,
    overflowWrap: "anywhere",
  },
  word: { fontWeight: 600, color: meaning.thread },
});

/** Why something cannot go on, and what to do, in the place where it stands in the way. */
export function FailureBox({ what, why }: { readonly what: string; readonly why: string }): ReactNode {
  const styles = useStyles();
  return (
    <p className={styles.box} role="alert">
      <span className={styles.word}>✕ {what}</span> {why}
    </p>
  );
}
