import type { Fitting } from "../../addin/fit/match.ts";

/** The names of the garment classes that the patterns belong to, in the order of their first pattern. */
export function classesOf({ patterns }: Fitting): readonly string[] {
  return [...new Set(patterns.map(({ pattern }) => pattern.garmentClass.name))];
}
