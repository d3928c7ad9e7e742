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

/** Takes back the last action of the pane as a whole; always there, so that the focus has a place to stay. */
export function UndoBar(): ReactNode {
  const styles = useStyles();
  const { lastAction, working, undo } = useSession();
  return (
    <div className={styles.bar} data-keeps-focus>
      <Button
        appearance="subtle"
        icon={<ArrowUndoRegular />}
        className={styles.button}
        disabledFocusable={working !== undefined || lastAction === undefined}
        onClick={() => void undo()}
      >
        {lastAction === undefined ? "Nothing to undo" : `Undo: ${lastAction}`}
      </Button>
    </div>
  );
}
