/** What can be asked about shared bodies, in the order in which it is asked. */
export const groupQuestions = ["shares", "loose", "pairs", "models", "next"] as const;
export type GroupQuestion = (typeof groupQuestions)[number];

export const groupQuestionWords: Readonly<Record<GroupQuestion, string>> = {
  shares: "Who shares a body?",
  loose: "Who only shares loose clothes?",
  pairs: "What do any two have in common?",
  models: "Which figures should I keep as house models?",
  next: "What should I measure next?",
};
