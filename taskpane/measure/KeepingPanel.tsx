import { Field, Input, Switch, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { readingsTable } from "../readings/readings.ts";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import type { Remembered } from "./draft.ts";
import type { Before } from "./rounds.ts";

const useStyles = makeStyles({ text: { margin: 0 } });

/** How readings are kept: in which table, by whom, with what, and beside what was read before. */
export function KeepingPanel(props: {
  readonly remembered: Remembered;
  readonly onRemember: (changed: Partial<Remembered>) => void;
  readonly before: Before;
  readonly onBefore: (before: Before) => void;
}): ReactNode {
  const styles = useStyles();
  const { remembered, onRemember, before, onBefore } = props;
  const { by, tool, keeps } = remembered;
  const who = [by, tool].filter((text) => text.trim() !== "").join(", ");
  return (
    <Disclosure
      title="How readings are kept"
      says={
        keeps
          ? `each one in the table ${readingsTable}, with the day${who === "" ? "" : ` and “${who}”`}`
          : "in the chart alone"
      }
    >
      <Switch
        checked={keeps}
        label={`Keep every reading in the table ${readingsTable}`}
        onChange={(_, data) => {
          onRemember({ keeps: data.checked });
        }}
      />
      <p className={styles.text}>
        One row for every time that the tape is laid on. The chart takes the mean of two readings, and the
        middle one from three on. What differs between them shows how exact your readings are.
      </p>
      {keeps && (
        <>
          <Field label="Who measures">
            <Input
              value={by}
              onChange={(_, data) => {
                onRemember({ by: data.value });
              }}
            />
          </Field>
          <Field label="With what" hint="For example: paper tape 5 mm wide, or calliper.">
            <Input
              value={tool}
              onChange={(_, data) => {
                onRemember({ tool: data.value });
              }}
            />
          </Field>
          <Choice
            label="What was read before"
            value={before}
            options={[
              ["count", "Counts too"],
              ["replaced", "Counts no more: the tape is right now"],
            ]}
            onChoose={onBefore}
          />
        </>
      )}
    </Disclosure>
  );
}
