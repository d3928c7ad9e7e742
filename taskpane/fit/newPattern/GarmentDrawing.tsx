import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useId } from "react";
import type { GarmentClass } from "../../../addin/chart/garmentClass.ts";
import { FigureDrawing, TapeMark } from "../../measure/TapeDrawing.tsx";
import { figureLines, tapePlaces } from "../../measure/tapePlaces.ts";
import { meaning } from "../../ui/theme.ts";

const useStyles = makeStyles({
  cloth: {
    fill: meaning.chalkGround,
    stroke: meaning.chalk,
    strokeWidth: "1px",
    strokeLinejoin: "round",
    fillOpacity: 0.85,
  },
});

/** How far down the figure of `figureLines` each place is. */
const heights: Readonly<Record<string, number>> = {
  "under the bust": 65,
  waist: 80,
  hip: 100,
  thigh: 126,
  knee: 150,
  calf: 170,
  ankle: 192,
  floor: 208,
};
const sleeveEnds: Readonly<Record<string, number>> = { short: 62, elbow: 76, long: 105 };

const [headLine = "", trunkLine = "", ...armLines] = figureLines;
/** From the shoulders to the floor, hanging free below the hip. */
const gown =
  "M45 34 C40 37 36 38 33 38.5 L34 53 C33 58 36 70 38 80 C34 87 31 94 30.5 100 L25 208 L75 208 L69.5 100 C69 94 66 87 62 80 " +
  "C64 70 67 58 66 53 L67 38.5 C64 38 60 37 55 34 C53 38 47 38 45 34 Z";

/** A garment on the figure, as far as it is said, and the place that is asked about. */
export function GarmentDrawing(props: {
  readonly garmentClass: GarmentClass | undefined;
  readonly sleeves: string;
  readonly endsAt: string;
  /** A measure of the dictionary. */
  readonly shows: string | undefined;
}): ReactNode {
  const styles = useStyles();
  const id = useId();
  const { garmentClass, sleeves, endsAt, shows } = props;
  const place = shows === undefined ? undefined : tapePlaces[shows];
  const parts = garmentClass ? cloths(garmentClass, sleeves, endsAt) : [];
  const what = garmentClass ? `${garmentClass.name} on a figure` : "A figure";
  return (
    <FigureDrawing label={endsAt === "" ? `${what}.` : `${what}, to the ${endsAt}.`}>
      {parts.map(({ path, from, to }, i) => (
        <g key={path}>
          <clipPath id={`${id}-${String(i)}`}>
            <rect x="0" y={from} width="100" height={to - from} />
          </clipPath>
          <path className={styles.cloth} d={path} clipPath={`url(#${id}-${String(i)})`} />
        </g>
      ))}
      {place && <TapeMark place={place} />}
    </FigureDrawing>
  );
}

interface Cloth {
  readonly path: string;
  /** Between these heights it is seen. */
  readonly from: number;
  readonly to: number;
}

function cloths({ wornOn }: GarmentClass, sleeves: string, endsAt: string): readonly Cloth[] {
  const end = heights[endsAt];
  const arms = armLines.map((path) => ({ path, from: 36, to: sleeveEnds[sleeves] ?? 36 }));
  switch (wornOn) {
    case "upper body":
      return [...arms, { path: gown, from: 30, to: end ?? 96 }];
    case "whole body":
      return [...arms, { path: gown, from: 30, to: end ?? 140 }];
    case "hips":
      return [{ path: gown, from: 78, to: end ?? 140 }];
    case "hips and legs":
      return [{ path: trunkLine, from: 78, to: end ?? 192 }];
    case "body and legs":
      return [...arms, { path: trunkLine, from: 34, to: end ?? 192 }];
    case "arm":
      return arms;
    case "leg":
      return [{ path: trunkLine, from: end ?? 166, to: 208 }];
    case "foot":
      return [{ path: trunkLine, from: 196, to: 208 }];
    case "hand":
      return armLines.map((path) => ({ path, from: 104, to: 124 }));
    case "head":
      return [{ path: headLine, from: 0, to: 14 }];
  }
}
