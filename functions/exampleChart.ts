/** An invented chart that the examples of the reference use under the name Figures[#All]; lengths in mm. */
export const exampleChart = [
  ["Figure", "Height", "Bust", "Waist", "Hip"],
  ["Linnet", 280, 135, 100, 140],
  ["Dunnock", 280, 136, 101, 142],
  ["Teal", 410, 190, 155, 200],
  ["Siskin", 411, 192, 154, 201],
] as const;

/** Its tolerances, under the name Tolerances[#All]. */
export const exampleTolerances = [
  ["Measure", "Tolerance"],
  ["Height", 3],
  ["Bust", 3],
  ["Waist", 2],
  ["Hip", 3],
] as const;
