import type { LengthUnit } from "../measures/units.ts";
import type { CellContent } from "../workbook/content.ts";
import { patterns, type DemoPattern } from "./patterns.ts";

interface Column {
  readonly heading: string;
  readonly isLength?: true;
  readonly of: (pattern: DemoPattern) => string | number | undefined;
  readonly format?: string;
}

const text = (heading: string, of: Column["of"]): Column => ({ heading, of });
const inMm = (heading: string, of: Column["of"], format = "0.0"): Column => ({
  heading,
  isLength: true,
  of,
  format,
});

const columns: readonly Column[] = [
  text("Pattern", (pattern) => pattern.code),
  text("Title", (pattern) => pattern.title),
  text("Garment class", (pattern) => pattern.garmentClass),
  text("Drafted for", (pattern) => pattern.draftedFor),
  { heading: "Stretch", of: (pattern) => pattern.stretch, format: "0%" },
  inMm("Thickness", (pattern) => pattern.thickness, "0.00"),
  text("Worn over", (pattern) => pattern.wornOver),
  text("Opens", (pattern) => pattern.opens),
  inMm("Opening length", (pattern) => pattern.openingLength),
  inMm("Neck opening", (pattern) => pattern.neck),
  inMm("Cuff opening", (pattern) => pattern.cuff),
  inMm("Hem opening", (pattern) => pattern.hem),
  inMm("Waist opening", (pattern) => pattern.waistOpening),
  inMm("Finished bust", (pattern) => pattern.bust),
  inMm("Finished waist", (pattern) => pattern.waist),
  inMm("Finished hip", (pattern) => pattern.hip),
  inMm("Finished arm length", (pattern) => pattern.armLength),
  inMm("Finished head", (pattern) => pattern.head),
  text("Sleeves", (pattern) => pattern.sleeves),
  text("Ends at", (pattern) => pattern.endsAt),
  inMm("Length", (pattern) => pattern.length),
  inMm("Finished inside leg", (pattern) => pattern.insideLeg),
];

/** The headings of the Patterns table, with the unit of lengths. */
export function patternHeadings(unit: LengthUnit): readonly string[] {
  return columns.map(({ heading, isLength }) => (isLength ? `${heading} (${unit})` : heading));
}

/** One row a pattern, in mm, in the order of `patternHeadings`. */
export function patternRows(): CellContent[][] {
  return patterns.map((pattern) =>
    columns.map(({ of, format }) => {
      const value = of(pattern);
      return format === undefined ? { value } : { value, format };
    }),
  );
}
