import { Button, Field, Switch, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useState } from "react";
import { failureText } from "./notice.ts";
import { useSession } from "./session.ts";
import { meaning } from "../ui/theme.ts";

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

interface Startup {
  readonly isOn: boolean | undefined;
  set(on: boolean): Promise<void>;
}

/** Whether Measure Book starts with this workbook, and a way to change it. Failures are said, never thrown. */
function useStartup(): Startup | undefined {
  const { services, say } = useSession();
  const { startup } = services;
  const [isOn, setOn] = useState<boolean>();
  useEffect(() => {
    if (!startup) return undefined;
    let current = true;
    // As Excel has it, not as it was asked to be.
    const read = (): void => {
      startup.isOn().then(
        (on) => {
          if (current) setOn(on);
        },
        () => undefined,
      );
    };
    read();
    const leave = startup.subscribe(read);
    return () => {
      current = false;
      leave();
    };
  }, [startup]);
  if (!startup) return undefined;
  return {
    isOn,
    set: async (on) => {
      try {
        await startup.set(on);
      } catch (error) {
        say({ kind: "failed", text: failureText(error) });
      }
    },
  };
}

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

/** The switch that stays, where the program around the pane has one. */
export function StartSwitch(): ReactNode {
  const startup = useStartup();
  if (startup?.isOn === undefined) return null;
  return (
    <Field hint="Its functions then answer as soon as the workbook is opened, without this pane. Kept with this workbook; it works from the next time that you open it.">
      <Switch
        label="Start Measure Book with this workbook"
        checked={startup.isOn}
        onChange={(_, { checked }) => void startup.set(checked)}
      />
    </Field>
  );
}
