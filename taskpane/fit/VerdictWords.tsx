import type { ReactNode } from "react";
import type { Verdict } from "../../addin/fit/verdict.ts";
import { SignedWords } from "../ui/SignedWords.tsx";
import { verdictLooks } from "./verdictLooks.ts";

/** A verdict as word and shape, in the colour of its meaning. */
export function VerdictWords({ verdict }: { readonly verdict: Verdict }): ReactNode {
  const { sign, tone } = verdictLooks[verdict];
  return (
    <SignedWords sign={sign} tone={tone}>
      {verdict}
    </SignedWords>
  );
}
