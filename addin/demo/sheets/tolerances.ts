import type { SheetContent } from "../../workbook/content.ts";
import { heading, plain, quiet, title } from "./parts.ts";

/** Starting values of this project for figures of this size: no published table was found. */
const tolerances: readonly (readonly [measure: string, mm: number, note: string])[] = [
  ["Neck", 2, "Starting value; change it to what your collars allow"],
  ["Shoulder width", 2, "Starting value"],
  ["Bust", 3, "Starting value; close-fitting clothes need less"],
  ["Waist", 2.5, "Starting value"],
  ["Hip", 3, "Starting value"],
  ["Back waist length", 2, "Starting value"],
  ["Arm length", 2.5, "Starting value; short sleeves do not need it"],
  ["Upper arm", 2, "Starting value"],
  ["Inside leg", 3, "Starting value; skirts do not need it"],
  ["Thigh", 2.5, "Starting value"],
  ["Calf", 2, "Starting value"],
  ["Head", 3, "Starting value; for hats and wigs"],
  ["Hand girth", 1.5, "Starting value; for gloves"],
  ["Heel girth", 1.5, "Starting value; for stockings"],
  ["Foot length", 1.5, "Starting value; for shoes"],
  ["Foot width", 1, "Starting value; for shoes"],
];

/** How far two readings may differ and still count as the same, as the table Tolerances. */
export function tolerancesSheet(): SheetContent {
  return {
    name: "Tolerances",
    cells: [
      [title("Tolerances")],
      [
        quiet(
          "How far two readings may differ and still count as the same body. These are starting values: edit them.",
        ),
      ],
      ["Measure", "Tolerance (mm)", "Note"].map(heading),
      ...tolerances.map(([measure, mm, note]) => [plain(measure), { value: mm, format: "0.0" }, plain(note)]),
    ],
    frozenRows: 3,
    columnWidths: [160, 130, 380],
    tables: [{ name: "Tolerances", row: 2, column: 0, rows: tolerances.length + 1, columns: 3 }],
  };
}
