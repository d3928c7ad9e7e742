import type { Verdict } from "../../addin/fit/verdict.ts";
import type { Tone } from "../ui/SignedWords.tsx";

/** How a verdict is shown beside its word: a shape of its own, and what it means for the garment. */
export interface VerdictLooks {
  readonly sign: string;
  readonly tone: Tone;
}

export const verdictLooks: Readonly<Record<Verdict, VerdictLooks>> = {
  fits: { sign: "●", tone: "leaf" },
  snug: { sign: "◐", tone: "leaf" },
  loose: { sign: "○", tone: "leaf" },
  "too close to call": { sign: "≈", tone: "brass" },
  "not known": { sign: "?", tone: "quiet" },
  "too long": { sign: "▹", tone: "brass" },
  "too short": { sign: "◂", tone: "thread" },
  "too loose": { sign: "▽", tone: "brass" },
  "too tight": { sign: "▲", tone: "thread" },
  "will not go on": { sign: "✕", tone: "thread" },
};
