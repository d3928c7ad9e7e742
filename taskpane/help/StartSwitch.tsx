import { Field, Switch } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useStartup } from "../shell/useStartup.ts";

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
