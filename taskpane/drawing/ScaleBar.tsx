import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { drawn } from "./looks.ts";
import { scaleBar } from "./scaleBar.ts";

const useStyles = makeStyles({
  line: drawn.axis,
  words: drawn.quietLetters,
});

/** A scale bar with its length above it; `x`, `y` is its left lower corner. It is 18 high. */
export function ScaleBar(props: {
  readonly x: number;
  readonly y: number;
  /** Units of the drawing to 1 mm. */
  readonly perMm: number;
  readonly unit: LengthUnit;
  /** The most room to the right, in units of the drawing. */
  readonly most: number;
}): ReactNode {
  const styles = useStyles();
  const { x, y, perMm, unit, most } = props;
  const { length, words } = scaleBar(perMm, unit, most);
  return (
    <g>
      <path
        className={styles.line}
        d={`M${String(x)} ${String(y - 4)}V${String(y)}H${String(x + length)}V${String(y - 4)}`}
      />
      <text className={styles.words} x={x} y={y - 7}>
        {words}
      </text>
    </g>
  );
}
