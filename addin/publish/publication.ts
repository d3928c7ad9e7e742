import { z } from "zod";
import type { Chart } from "../chart/chart.ts";
import { usualUnit } from "../chart/usualUnit.ts";

/** Units of a published chart; inches as a tape shows them. */
export const publishedUnits = ["mm", "cm", "inches in eighths", "inches in sixteenths"] as const;
export type PublishedUnit = (typeof publishedUnits)[number];

/** How lengths in mm and cm are rounded; inches are rounded to the part that is shown. */
export const roundings = ["as measured", "to 1 mm", "to 5 mm"] as const;
export type Rounding = (typeof roundings)[number];

export const languages = ["English", "German"] as const;
/** What the buyers read; apart from the language of the maker. */
export type PublishedLanguage = (typeof languages)[number];

/** Figures with one of these words in a column of text, such as Line = Marsh. */
const whereSchema = z.object({ heading: z.string().min(1), value: z.string().min(1) });

/**
 * What a maker publishes of her workbook: one description for the page, the sheet and the words. Kept in the workbook as a
 * table, see `publicationTable.ts`.
 */
export const publicationSchema = z.object({
  title: z.string().max(200),
  /** The maker’s line under the title. */
  maker: z.string().max(200),
  /** As the maker writes it. */
  date: z.string().max(60),
  note: z.string().max(2000),
  language: z.enum(languages),
  /** One or two, side by side. */
  units: z.array(z.enum(publishedUnits)).min(1).max(2).readonly(),
  rounding: z.enum(roundings),
  /** Names of figures; none are all, unless bodies are named. */
  figures: z.array(z.string()).readonly(),
  /** Names of figures that are published with all who share their body, those that come later too. */
  bodies: z.array(z.string()).readonly().default([]),
  /** Only figures to which one of these applies, of every column that is named; none are all. */
  where: z.array(whereSchema).readonly(),
  /** Headings or names of measures; none are the usual ones of those that the chart has. */
  measures: z.array(z.string()).readonly(),
  /** Codes of patterns; undefined is all of them, an empty list none. */
  patterns: z.array(z.string()).readonly().optional(),
  /** True shows figures that share a body as one row with their names. */
  sharedRows: z.boolean(),
  /** True publishes readings that the check of the chart doubts, marked. */
  flagged: z.boolean(),
  /** True publishes readings that the chart calls estimated, marked. */
  estimated: z.boolean(),
  /** True lets the page answer for figures that are not in the chart; it then holds the measures of the garments. */
  fitPage: z.boolean(),
  /** False leaves the cautions out. */
  showCautions: z.boolean(),
  /** The maker’s own cautions; none are those that come with the project. */
  cautions: z.array(z.string()).readonly(),
  /** False leaves out the drawings of bodies and of where measures are taken, and how to take them. */
  drawings: z.boolean().default(true),
  paper: z.enum(["A4", "Letter"]),
});
export type Publication = Readonly<z.infer<typeof publicationSchema>>;

/** What is published when nothing was chosen yet. */
export const usualPublication: Publication = {
  title: "",
  maker: "",
  date: "",
  note: "",
  language: "English",
  units: ["mm", "inches in sixteenths"],
  rounding: "as measured",
  figures: [],
  bodies: [],
  where: [],
  measures: [],
  sharedRows: true,
  flagged: false,
  estimated: false,
  fitPage: true,
  showCautions: true,
  cautions: [],
  drawings: true,
  paper: "A4",
};

/** What is published of a chart when nothing was chosen yet: in the unit of most of its columns first, then in the other system. */
export function usualPublicationOf(chart: Chart): Publication {
  const unit = usualUnit(chart);
  const units =
    unit === "in" ? (["inches in sixteenths", "mm"] as const) : ([unit, "inches in sixteenths"] as const);
  return { ...usualPublication, units };
}
