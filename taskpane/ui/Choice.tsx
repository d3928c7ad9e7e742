import { Field, Select, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";

const useStyles = makeStyles({
  // A list is as wide as its longest choice unless it is told otherwise.
  list: {
    minWidth: 0,
    "> select": { minWidth: 0, height: "auto", minHeight: "32px", textOverflow: "ellipsis" },
  },
});

/** A labelled list of few choices, as the system draws it: works with any input and never leaves the pane. */
export function Choice<T extends string>(props: {
  readonly label: string;
  readonly value: T;
  readonly options: readonly (readonly [value: T, name: string])[];
  readonly hint?: string;
  readonly onChoose: (value: T) => void;
}): ReactNode {
  const { label, value, options, hint, onChoose } = props;
  const styles = useStyles();
  return (
    <Field label={label} className={styles.list} {...(hint === undefined ? {} : { hint })}>
      <Select
        className={styles.list}
        value={value}
        onChange={(_, data) => {
          const chosen = options.find(([v]) => v === data.value);
          if (chosen) onChoose(chosen[0]);
        }}
      >
        {options.map(([v, name]) => (
          <option key={v} value={v}>
            {name}
          </option>
        ))}
      </Select>
    </Field>
  );
}
