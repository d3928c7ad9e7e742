import type { CellContent } from "../workbook/content.ts";

/**
 * The mistakes that stand in the demo’s chart on purpose, one of every kind that checking a chart of one side of
 * the body can find.
 * `kind` is the flag it must raise, word for word. `cells` are what stands in place of the true readings.
 */
export interface PlantedError {
  readonly kind: string;
  /** The figure that the flag names; empty for a whole column. */
  readonly figure: string;
  /** The heading of the measure that the flag names, without unit; empty for a whole row. */
  readonly measure: string;
  /** What happened. */
  readonly story: string;
  readonly cells?: readonly { readonly measure: string; readonly cell: CellContent }[];
  /** All readings in mm of this figure, or of this measure, stand divided by ten. */
  readonly dividedByTen?: true;
  /** The true reading, in the column’s unit, where the flag must offer it (to within reading error). */
  readonly suggested?: number;
}

const written = (measure: string, value: number | string): NonNullable<PlantedError["cells"]> => [
  { measure, cell: { value } },
];

export const plantedErrors: readonly PlantedError[] = [
  {
    kind: "date instead of a reading",
    figure: "Velloway",
    measure: "Foot width",
    story: "5/8 was typed, and the spreadsheet made 8 May of it",
    cells: [{ measure: "Foot width", cell: { value: 46150, format: "d-mmm" } }],
  },
  {
    kind: "error in the cell",
    figure: "Dunmarra",
    measure: "Calf",
    story: "a lookup that found nothing",
    cells: [{ measure: "Calf", cell: { formula: "=NA()", value: { error: "#N/A" } } }],
  },
  {
    kind: "not a length",
    figure: "Lowick",
    measure: "Upper arm",
    story: "two numbers in one cell",
    cells: written("Upper arm", "60-64"),
  },
  {
    kind: "whole row in a wrong unit",
    figure: "Esterby",
    measure: "",
    story: "taken with a tape marked in centimetres",
    dividedByTen: true,
  },
  {
    kind: "whole column in a wrong unit",
    figure: "",
    measure: "Foot length",
    story: "copied from a list in centimetres",
    dividedByTen: true,
  },
  {
    kind: "wrong unit",
    figure: "Belsory",
    measure: "Waist",
    story: "5 1/4 in read, written into a column in mm",
    cells: written("Waist", 5.25),
    suggested: 133.5,
  },
  {
    kind: "wrong unit",
    figure: "Jorvie",
    measure: "Wrist",
    story: "the decimal point of 37.0 was lost",
    cells: written("Wrist", 370),
    suggested: 37,
  },
  {
    kind: "half of the girth",
    figure: "Cattrin",
    measure: "Hip",
    story: "measured flat, from side to side",
    cells: written("Hip", 97),
    suggested: 194,
  },
  {
    kind: "twice the girth",
    figure: "Quenby",
    measure: "Neck",
    story: "doubled by mistake",
    cells: written("Neck", 164),
    suggested: 82,
  },
  {
    kind: "two readings swapped",
    figure: "Hessamy",
    measure: "Thigh",
    story: "thigh and knee in each other’s cells",
    cells: [...written("Thigh", 68), ...written("Knee", 102)],
    suggested: 102,
  },
  {
    kind: "digits swapped",
    figure: "Kestrin",
    measure: "Arm length",
    story: "124 became 214",
    cells: written("Arm length", 214),
    suggested: 124,
  },
  {
    kind: "digit doubled",
    figure: "Umbrie",
    measure: "Bust",
    story: "118 became 1118",
    cells: written("Bust", 1118),
    suggested: 118,
  },
  {
    kind: "digit missing",
    figure: "Farrowin",
    measure: "Bust",
    story: "252 became 52",
    cells: written("Bust", 52),
    suggested: 252,
  },
  {
    kind: "out of proportion",
    figure: "Sorbin",
    measure: "Shoulder width",
    story: "measured on the wrong line; nothing says which reading would be right",
    cells: written("Shoulder width", 68),
  },
  {
    kind: "smaller than it can be",
    figure: "Mirrowen",
    measure: "Hip",
    story: "the tape had slipped up to the waist",
    cells: written("Hip", 172),
  },
  {
    kind: "larger than it can be",
    figure: "Norrim",
    measure: "Under-bust",
    story: "the tape lay over the clothes",
    cells: written("Under-bust", 188.5),
  },
  {
    kind: "one name, two rows",
    figure: "Wickory",
    measure: "",
    story: "measured a second time after restringing, and entered under the same name",
  },
  {
    kind: "unlike the other figures",
    figure: "Pommel",
    measure: "",
    story: "no mistake: stylised on purpose",
  },
  {
    kind: "same readings, two names",
    figure: "Lumarel",
    measure: "",
    story: "no mistake: the same mould in another paint",
  },
];
