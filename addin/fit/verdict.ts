/** What can be said of a garment on a figure, from the best to the worst. */
export const verdicts = [
  "fits",
  "snug",
  "loose",
  "too close to call",
  "not known",
  "too long",
  "too short",
  "too loose",
  "too tight",
  "will not go on",
] as const;

/** The verdict of a check, and the worst of all checks for a pattern on a figure. */
export type Verdict = (typeof verdicts)[number];

/** The place of each verdict in `verdicts`: how bad it is, small enough for a byte. */
export const rank: Readonly<Record<Verdict, number>> = {
  fits: 0,
  snug: 1,
  loose: 2,
  "too close to call": 3,
  "not known": 4,
  "too long": 5,
  "too short": 6,
  "too loose": 7,
  "too tight": 8,
  "will not go on": 9,
};

/** The verdict of a rank. */
export function verdictOf(rankOf: number): Verdict {
  return verdicts[rankOf] ?? "not known";
}

/** True for the verdicts with which the garment can be worn. */
export function isWearable(verdict: Verdict): boolean {
  return rank[verdict] <= rank.loose;
}
