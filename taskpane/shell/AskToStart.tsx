import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useState } from "react";
import { useSession } from "./session.ts";
import { meaning } from "../ui/theme.ts";
import { useStartup } from "./useStartup.ts";

const useStyles = makeStyles({
  box: {
    margin: "8px",
    padding: "8px 12px",
    flexShrink: 0,
    display: "flex",
    flexDirection: "column",
    gap: "8px",
    borderRadius: tokens.borderRadiusMedium,
    border: `1px solid ${meaning.chalk}`,
    backgroundColor: meaning.chalkGround,
  },
  text: { margin: 0 },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
});

/** Kept with the workbook once the question has been answered, whatever the answer. */
const askedKey = "startAsked";

/** Asked once in a workbook, where functions are known to wait for the pane otherwise. */
export function AskToStart(): ReactNode {
  const styles = useStyles();
  const { workbook, services } = useSession();
  const startup = useStartup();
  const [asked, setAsked] = useState(true);
  const isNeeded = services.startup?.isNeeded === true;
  useEffect(() => {
    let current = true;
    if (isNeeded)
      workbook.preference(askedKey).then(
        (answered) => {
          if (current) setAsked(answered === true);
        },
        () => undefined,
      );
    return () => {
      current = false;
    };
  }, [workbook, isNeeded]);
  if (!startup || asked || startup.isOn !== false) return null;

  const answer = async (on: boolean): Promise<void> => {
    setAsked(true);
    if (on) await startup.set(true);
    // Without it the question comes again, no more.
    await workbook.setPreference(askedKey, true).catch(() => undefined);
  };
  return (
    <div className={styles.box} role="region" aria-label="Start with this workbook">
      <p className={styles.text}>
        Shall Measure Book start whenever this workbook is opened? Otherwise its functions can show #BUSY!
        until you open this pane. You can change it under Functions.
      </p>
      <div className={styles.actions}>
        <Button size="small" appearance="primary" onClick={() => void answer(true)}>
          Start with this workbook
        </Button>
        <Button size="small" onClick={() => void answer(false)}>
          Not now
        </Button>
      </div>
    </div>
  );
}
