/** The sections of the pane, in the order of the work. */
export const sectionKeys = [
  "home",
  "import",
  "measure",
  "check",
  "groups",
  "fit",
  "grade",
  "publish",
  "functions",
] as const;
export type SectionKey = (typeof sectionKeys)[number];

export const sectionTitles: Readonly<Record<SectionKey, string>> = {
  home: "Home",
  import: "Import",
  measure: "Measure",
  check: "Check",
  groups: "Groups",
  fit: "Fit",
  grade: "Grade",
  publish: "Publish",
  functions: "Functions",
};
