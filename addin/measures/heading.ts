import { findMeasure, longestHeading, splitSide } from "./dictionary.ts";
import type { Measure } from "./measure.ts";
import type { LengthUnit } from "./units.ts";
import { findUnit } from "./units.ts";

/** A column heading, taken apart. */
export interface Heading {
  /** The heading as written, without the unit. */
  readonly name: string;
  /** The unit that the heading states, else the chart’s. */
  readonly unit: LengthUnit;
  readonly unitStated: boolean;
  /** A length unit in the heading that a column cannot be in, such as `ft`. */
  readonly foreignUnit?: string;
  readonly measure?: Measure;
  /** Set when the heading names one side of the body. */
  readonly side?: "left" | "right";
}

const foreignUnits = [
  "ft",
  "foot",
  "feet",
  "'",
  "m",
  "metre",
  "metres",
  "meter",
  "meters",
  "yd",
  "yds",
  "yard",
  "yards",
  "dm",
  "pt",
  "px",
];

/** `Bust (in)`, `Waist [mm]`. */
const bracketed = /^(.*?)[\s_,:;-]*[([{<]\s*([^()[\]{}<>]*?)\s*[)\]}>]\s*$/su;
/** `Hip, cm`, `Hip – cm`, `hip_cm`, `Hip in cm`, `Hip cm`. */
const trailing = /^(.*\S)(?:\s*[,;:/|–—]\s*|\s+-\s*|[\s_-]+)([^\s,;:/|_–—-]+)\s*$/su;
/** `Bust"`. */
const marked = /^(.*[^\s"″”])\s*("|″|”)$/su;

/**
 * A column heading → the name without the unit, the unit, and the measure that it names, if the dictionary knows it.
 *
 * @param chartUnit the unit of a column whose heading states none
 * @example readHeading("Bust (in)", "mm") // { name: "Bust", unit: "in", unitStated: true, measure: bust … }
 */
export function readHeading(text: string, chartUnit: LengthUnit): Heading {
  const { name, unit, foreignUnit } = splitUnit(text.replace(/\s+/gu, " ").trim());
  const measure = findMeasure(name);
  const { side } = splitSide(name);
  return {
    name,
    unit: unit ?? chartUnit,
    unitStated: unit !== undefined,
    ...(foreignUnit === undefined ? {} : { foreignUnit }),
    ...(measure ? { measure } : {}),
    ...(side ? { side } : {}),
  };
}

interface Split {
  readonly name: string;
  readonly unit?: LengthUnit;
  readonly foreignUnit?: string;
}

function splitUnit(text: string): Split {
  if (text.length > longestHeading) return { name: text };
  for (const pattern of [bracketed, marked, trailing]) {
    const [, name = "", unitText = ""] = pattern.exec(text) ?? [];
    const unit = findUnit(unitText);
    if (name !== "" && unit) return { name: name.replace(/([\s_]+in|[\s_,;:/|–—-]+)$/iu, ""), unit };
    if (
      name !== "" &&
      pattern !== trailing &&
      foreignUnits.includes(unitText.toLowerCase().replace(/\.$/, ""))
    ) {
      return { name, foreignUnit: unitText };
    }
  }
  return { name: text };
}
