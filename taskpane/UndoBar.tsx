import { Button, makeStyles, tokens } from "@fluentui/react-components";
import { ArrowUndoRegular } from "@fluentui/react-icons";
import type { ReactNode } from "react";
import { useSession } from "./session.ts";

const useStyles = makeStyles({
  bar: {
    flexShrink: 0,
    padding: "4px 8px",
    borderTop: `1px solid ${tokens.colorNeutralStroke1}`,
    backgroundColor: tokens.colorNeutralBackground1,
  },
  button: { maxWidth: "100%", justifyContent: "flex-start", textAlign: "left", fontWeight: "normal" },
});

/** Takes back the last action of the pane as a whole; always at the bottom. */
export function UndoBar(): ReactNode {
  const styles = useStyles();
  const { lastAction, working, undo } = useSession();
  if (lastAction === undefined) return null;
  return (
    <div className={styles.bar}>
      <Button
        appearance="subtle"
        icon={<ArrowUndoRegular />}
        className={styles.button}
        disabled={working !== undefined}
        onClick={() => void undo()}
      >
        Undo: {lastAction}
      </Button>
    </div>
  );
}
