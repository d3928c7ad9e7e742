import { Field, Input, Slider, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useEffect, useState } from "react";
import { shownTimes } from "./words.ts";

const useStyles = makeStyles({
  row: { display: "flex", alignItems: "center", gap: "8px" },
  slider: { flexGrow: 1, minWidth: 0 },
  rail: { "&::before": { backgroundImage: "none" } },
  number: { width: "72px", minWidth: 0, "> input": { minWidth: 0 } },
});

const sliderEnds = { least: 0.5, most: 3, step: 0.05 } as const;
/** The largest number that can be typed. */
const most = 100;

/** A multiple of the tolerances: slid between 0.5 and 3, or typed. */
export function TimesField(props: {
  readonly label: string;
  readonly hint: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
}): ReactNode {
  const styles = useStyles();
  const { label, hint, value, onChange } = props;
  const [text, setText] = useState(shownTimes(value));
  useEffect(() => {
    // What is being typed stays as it is, while it means the same.
    setText((typed) => (timesOf(typed) === value ? typed : shownTimes(value)));
  }, [value]);
  const refusal =
    timesOf(text) === undefined
      ? `“${text}” is not a number above 0 and up to ${String(most)}. Write one, such as 1.5.`
      : undefined;
  return (
    <Field
      label={label}
      hint={hint}
      {...(refusal === undefined ? {} : { validationMessage: refusal, validationState: "error" as const })}
    >
      {({ id, "aria-describedby": describedBy, "aria-labelledby": labelledBy }) => (
        <div className={styles.row}>
          <Slider
            // The label belongs to the box; without an id of its own the slider would take that of the box too.
            id={`${id ?? ""}-slider`}
            className={styles.slider}
            rail={{ className: styles.rail }}
            min={sliderEnds.least}
            max={sliderEnds.most}
            step={sliderEnds.step}
            value={Math.min(sliderEnds.most, Math.max(sliderEnds.least, value))}
            aria-labelledby={labelledBy}
            aria-valuetext={`${shownTimes(value)} times your tolerances`}
            onChange={(_, data) => {
              onChange(Math.round(data.value * 100) / 100);
            }}
          />
          <Input
            id={id}
            className={styles.number}
            inputMode="decimal"
            value={text}
            aria-describedby={describedBy}
            contentBefore="×"
            onChange={(_, data) => {
              setText(data.value);
              const times = timesOf(data.value);
              if (times !== undefined) onChange(times);
            }}
          />
        </div>
      )}
    </Field>
  );
}

/** The number that is meant, with a point or a comma; `undefined` when it is none that can be used. */
function timesOf(text: string): number | undefined {
  if (!/^\s*(\d+([.,]\d*)?|[.,]\d+)\s*$/u.test(text)) return undefined;
  const times = Number(text.trim().replace(",", "."));
  return times > 0 && times <= most ? times : undefined;
}
