import { columnNamed, tableColumns } from "../../addin/chart/tableRows.ts";
import { readHeading } from "../../addin/measures/heading.ts";
import { sameName } from "../../addin/workbook/names.ts";
import type { TableInfo } from "../../addin/workbook/port.ts";

/** What a table of the workbook can be for the fit of garments. */
export type FitRole = "figures" | "patterns" | "easeRules" | "garmentClasses";

/** The names that are taken first where several tables could serve. */
export const usualNames: Readonly<Record<FitRole, string>> = {
  figures: "Figures",
  patterns: "Patterns",
  easeRules: "EaseRules",
  garmentClasses: "GarmentClasses",
};

/** A table that the user has chosen for a role; `""` stands for the project’s own rules or classes. */
export type ChosenTables = Readonly<Partial<Record<FitRole, string>>>;

/** The tables that could serve in each role, in the order of the workbook. */
export type FitTables = Readonly<Record<FitRole, readonly TableInfo[]>>;

/**
 * Tells tables apart by their headings: patterns, ease rules and garment classes; every other one may be a chart unless it
 * has a row for each measure, as tolerances have.
 */
export function findFitTables(tables: readonly TableInfo[]): FitTables {
  const of = (role: FitRole): readonly TableInfo[] => tables.filter((table) => roleOf(table) === role);
  return {
    figures: of("figures").filter(mayBeChart),
    patterns: of("patterns"),
    easeRules: of("easeRules"),
    garmentClasses: of("garmentClasses"),
  };
}

/**
 * The table that is used in a role: the chosen one, else that of the usual name, else the first; for figures the first with a
 * measure that is known, where there is one. `undefined` for none.
 */
export function tableFor(role: FitRole, found: FitTables, chosen: ChosenTables): TableInfo | undefined {
  if (chosen[role] === "") return undefined;
  const named = (name: string | undefined): TableInfo | undefined =>
    name === undefined ? undefined : found[role].find((table) => sameName(table.name, name));
  const first = role === "figures" ? found.figures.find(hasMeasures) : undefined;
  return named(chosen[role]) ?? named(usualNames[role]) ?? first ?? found[role][0];
}

/** True where the first column holds names, and one of the others is headed by a measure that is known. */
export function hasMeasures({ headings: [names = "", ...others] }: TableInfo): boolean {
  return !isMeasure(names) && others.some(isMeasure);
}

function isMeasure(heading: string): boolean {
  return readHeading(heading, "mm").measure !== undefined;
}

function mayBeChart({ headings }: TableInfo): boolean {
  return columnNamed(tableColumns([headings]), ["Measure"]) === undefined;
}

function roleOf({ headings }: TableInfo): FitRole {
  const columns = tableColumns([headings]);
  const has = (...names: readonly string[]): boolean => columnNamed(columns, names) !== undefined;
  const namesGarments = has("Garment class", "garment");
  if (!namesGarments && !has("class")) return "figures";
  if (has("Measure") && has("Least", "Most")) return "easeRules";
  if (has("Worn on")) return "garmentClasses";
  // A chart may have a code and a class of its own; together they do not make patterns.
  if (has("Pattern", "pattern code")) return "patterns";
  return namesGarments && has("code") ? "patterns" : "figures";
}
