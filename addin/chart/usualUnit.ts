import type { LengthUnit } from "../measures/units.ts";
import { lengthUnits } from "../measures/units.ts";
import type { Chart } from "./chart.ts";

/** The unit of most columns of a chart. */
export function usualUnit({ measures }: Chart): LengthUnit {
  const count = (unit: LengthUnit): number => measures.filter((column) => column.unit === unit).length;
  return lengthUnits.reduce((most, unit) => (count(unit) > count(most) ? unit : most));
}
