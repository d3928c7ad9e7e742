import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import { LengthField, typedLength } from "../ui/LengthField.tsx";
import type { CirclePart } from "./flareView.ts";
import { circlePartKeys, circleParts, flareWords } from "./flareView.ts";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
});

/** The radius of the waist of a flared skirt that is cut as a part of a circle. */
export function FlarePart(props: {
  readonly chart: Chart;
  readonly figures: readonly number[];
  readonly unit: LengthUnit;
  readonly allowance: string;
}): ReactNode {
  const styles = useStyles();
  const { chart, figures, unit, allowance } = props;
  const [part, setPart] = useState<CirclePart>("half");
  const [ease, setEase] = useState("");
  const easeMm = lengthOf(ease, unit);
  const allowanceMm = lengthOf(allowance, unit);
  return (
    <Disclosure title="Cut as a part of a circle" says={circleParts[part].words.toLowerCase()}>
      <Choice
        label="How much of a circle"
        value={part}
        options={circlePartKeys.map((key) => [key, circleParts[key].words] as const)}
        onChoose={setPart}
      />
      <LengthField
        label="Ease at the waist"
        hint="How much larger the waist of the skirt is than the body."
        unit={unit}
        text={ease}
        onChange={setEase}
      />
      {figures.map((figure) => (
        <p key={figure} className={styles.text}>
          {flareWords(chart, figure, { part, easeMm, allowanceMm })}
        </p>
      ))}
      <p className={styles.quiet}>
        {allowanceMm > 0
          ? "With the seam allowance that stands above."
          : "Without seam allowance; it is taken off the radius where you enter one above."}
      </p>
    </Disclosure>
  );
}

function lengthOf(text: string, unit: LengthUnit): number {
  const typed = typedLength(text, unit);
  return typeof typed === "number" ? typed : 0;
}
