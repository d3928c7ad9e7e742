import { formatFraction } from "../../measures/formatFraction.ts";
import type { LengthUnit } from "../../measures/units.ts";
import { fromMm } from "../../measures/units.ts";
import type { CellContent, SheetContent } from "../../workbook/content.ts";
import { plain } from "./parts.ts";
import { tableSheet } from "./tableSheet.ts";

const nothing = undefined;
type Row = readonly [
  measure: string,
  body: number,
  fitted: number | undefined,
  loose: number | undefined,
  hats: number | undefined,
  shoes: number | undefined,
  note: string,
];

/** Starting values of this project for figures of this size, in mm: no published table was found. */
// prettier-ignore
const tolerances: readonly Row[] = [
  ["Neck", 2, 2, 6, nothing, nothing, "Starting value; change it to what your collars allow"],
  ["Shoulder width", 2, 2, 6, nothing, nothing, "Starting value"],
  ["Bust", 3, 2.5, 12, nothing, nothing, "Starting value; close-fitting clothes need less"],
  ["Waist", 2.5, 2, nothing, nothing, nothing, "Starting value; loose clothes hang past it"],
  ["Hip", 3, 2.5, 12, nothing, nothing, "Starting value"],
  ["Back waist length", 2, 2, 6, nothing, nothing, "Starting value"],
  ["Arm length", 2.5, 2.5, 6, nothing, nothing, "Starting value; short sleeves do not need it"],
  ["Upper arm", 2, 2, 8, nothing, nothing, "Starting value"],
  ["Inside leg", 3, nothing, nothing, nothing, nothing, "Starting value; skirts do not need it"],
  ["Thigh", 2.5, nothing, nothing, nothing, nothing, "Starting value"],
  ["Calf", 2, nothing, nothing, nothing, nothing, "Starting value"],
  ["Head", 3, nothing, nothing, 3, nothing, "Starting value; for hats and wigs"],
  ["Hand girth", 1.5, nothing, nothing, nothing, nothing, "Starting value; for gloves"],
  ["Heel girth", 1.5, nothing, nothing, nothing, 2, "Starting value; for stockings and boots"],
  ["Foot length", 1.5, nothing, nothing, nothing, 1.5, "Starting value; for shoes"],
  ["Foot width", 1, nothing, nothing, nothing, 1, "Starting value; for shoes"],
];

const lengths = ["Tolerance", "Fitted clothes", "Loose clothes", "Hats", "Shoes"] as const;

/** Divisions of an inch to which the starting values are rounded. */
const inchParts = 32;

/**
 * How far two readings may differ and still count as the same, as the table Tolerances.
 *
 * @param unit of the tolerances; in inches they are rounded to 1/32 in, as the tape shows them
 */
export function tolerancesSheet(unit: LengthUnit = "mm"): SheetContent {
  return tableSheet({
    name: "Tolerances",
    says: "How far two readings may differ and still count as the same body, then for single classes of garments; empty where a measure does not matter to them. These are starting values: edit them.",
    table: "Tolerances",
    columns: [
      { heading: "Measure", note: "A measure of the chart, named as in the headings of Figures." },
      ...lengths.map((heading, i) => ({
        heading: `${heading} (${unit})`,
        note:
          i === 0
            ? "For the body. A length, a percentage of the reading such as 2%, or both: 3 mm or 2%."
            : "For this class of garments alone. Empty where the measure does not matter to it.",
      })),
      { heading: "Note" },
    ],
    rows: tolerances.map(([measure, ...rest]) => [
      plain(measure),
      ...rest.map((cell) => (typeof cell === "number" ? lengthCell(cell, unit) : plain(cell))),
    ]),
  });
}

/** Inches are text, so that no spreadsheet makes a date of a fraction. */
function lengthCell(mm: number, unit: LengthUnit): CellContent {
  const length = fromMm(mm, unit);
  if (unit === "in") return { value: formatFraction(length, inchParts).replace('"', ""), format: "@" };
  return { value: length, format: unit === "mm" ? "0.0" : "0.00" };
}
