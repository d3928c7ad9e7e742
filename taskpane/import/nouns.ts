import type { ImportKind } from "../../addin/chart/import/columns.ts";

/** How what is imported is called: one, several, what they are in, and a cell that says something about one. */
export interface Nouns {
  readonly one: string;
  readonly many: string;
  readonly place: string;
  readonly entry: string;
}

export const nouns: Readonly<Record<ImportKind, Nouns>> = {
  figures: { one: "figure", many: "figures", place: "chart", entry: "reading" },
  patterns: { one: "pattern", many: "patterns", place: "table", entry: "entry" },
};
