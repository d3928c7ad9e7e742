import { Field, Input, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { parseReading } from "../../addin/measures/parseReading.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";

const useStyles = makeStyles({ input: { minWidth: 0, "> input": { minWidth: 0 } } });

/** A length as it is typed: in mm, `undefined` where nothing is, or why it cannot be read. */
export function typedLength(
  text: string,
  unit: LengthUnit,
): number | undefined | { readonly refusal: string } {
  const reading = parseReading(text, { unit });
  if (reading.kind === "length") return reading.mm;
  return reading.kind === "missing" ? undefined : { refusal: reading.reason };
}

/** A field for a length, in the unit of the chart or with its own: `6`, `6 mm`, `1/4"`. */
export function LengthField(props: {
  readonly label: string;
  readonly hint: string;
  readonly unit: LengthUnit;
  readonly text: string;
  readonly onChange: (text: string) => void;
}): ReactNode {
  const styles = useStyles();
  const { label, hint, unit, text, onChange } = props;
  const read = typedLength(text, unit);
  return (
    <Field
      label={label}
      hint={hint}
      {...(typeof read === "object" && {
        validationState: "error" as const,
        validationMessage: read.refusal,
      })}
    >
      <Input
        className={styles.input}
        value={text}
        contentAfter={unit}
        onChange={(_, data) => {
          onChange(data.value);
        }}
      />
    </Field>
  );
}
