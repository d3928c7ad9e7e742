import type { ExactAnswer } from "./answers.ts";

/**
 * What an answer is worth, in words.
 *
 * @example proofWords(answer) // "4 base figures reach every figure, and no fewer can. No other 4 need less alteration in all."
 */
export function proofWords(answer: ExactAnswer): string {
  const { count, atLeast, isProved } = answer;
  const open = `At least ${String(atLeast)} ${atLeast === 1 ? "is" : "are"} needed; whether fewer than ${String(count)} can do is not settled.`;
  if (answer.kind === "groups") {
    const found = `${String(count)} ${count === 1 ? "group holds" : "groups hold"} every figure`;
    return isProved ? `${found}, and no fewer can.` : `${found}. ${open}`;
  }
  const found = `${String(count)} base ${count === 1 ? "figure reaches" : "figures reach"} every figure`;
  if (!isProved) return `${found}. ${open}`;
  const least = answer.isLeastAlteration
    ? `No other ${String(count)} ${count === 1 ? "needs" : "need"} less alteration in all.`
    : `Another ${String(count)} may need less alteration in all.`;
  return `${found}, and no fewer can. ${least}`;
}
