/** What can be asked about the fit of garments, in the order in which it is asked. */
export const questions = ["wearers", "wardrobe", "why", "change", "matrix"] as const;
export type Question = (typeof questions)[number];

export const questionWords: Readonly<Record<Question, string>> = {
  wearers: "Which figures wear this?",
  wardrobe: "What can this figure wear?",
  why: "Why not?",
  change: "What do I change?",
  matrix: "All patterns on all figures",
};
