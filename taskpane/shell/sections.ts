/** The sections of the pane, in the order of the work. */
export const sectionKeys = ["import", "check", "groups", "fit", "grade", "functions"] as const;
export type SectionKey = (typeof sectionKeys)[number];

export const sectionTitles: Readonly<Record<SectionKey, string>> = {
  import: "Import",
  check: "Check",
  groups: "Groups",
  fit: "Fit",
  grade: "Grade",
  functions: "Functions",
};
