import type { Chart, MeasureColumn } from "../chart.ts";
import { readHeading } from "../../measures/heading.ts";
import { headingKey } from "../../measures/headingKey.ts";
import type { Measure } from "../../measures/measure.ts";

/**
 * The column of a chart that holds the same measure, on the same side of the body. A measure that the dictionary does
 * not know is found by its heading.
 *
 * @param wanted its dictionary entry, if it has one, and its heading without the unit
 */
export function findColumn(
  chart: Chart,
  wanted: { readonly measure?: Measure; readonly name: string },
): MeasureColumn | undefined {
  const { measure, name } = wanted;
  const { side } = readHeading(name, "mm");
  return chart.measures.find((column) => {
    if (!measure) return headingKey(column.heading) === headingKey(name);
    const heading = readHeading(column.heading, "mm");
    return heading.measure?.id === measure.id && heading.side === side;
  });
}
