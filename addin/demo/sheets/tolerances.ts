import type { SheetContent } from "../../workbook/content.ts";
import { heading, plain, quiet, title } from "./parts.ts";

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

const headings = [
  "Measure",
  "Tolerance (mm)",
  "Fitted clothes (mm)",
  "Loose clothes (mm)",
  "Hats (mm)",
  "Shoes (mm)",
  "Note",
] as const;

/** How far two readings may differ and still count as the same, as the table Tolerances. */
export function tolerancesSheet(): SheetContent {
  return {
    name: "Tolerances",
    cells: [
      [title("Tolerances")],
      [
        quiet(
          "How far two readings may differ and still count as the same body, then for single classes of garments; empty where a measure does not matter to them. These are starting values: edit them.",
        ),
      ],
      headings.map(heading),
      ...tolerances.map(([measure, ...rest]) => [
        plain(measure),
        ...rest.map((cell) => (typeof cell === "number" ? { value: cell, format: "0.0" } : plain(cell))),
      ]),
    ],
    frozenRows: 3,
    columnWidths: [160, 130, 160, 160, 110, 110, 380],
    tables: [
      { name: "Tolerances", row: 2, column: 0, rows: tolerances.length + 1, columns: headings.length },
    ],
  };
}
