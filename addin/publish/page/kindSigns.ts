import type { FitKind } from "../words/words.ts";

/** The shape that stands beside each word, so that nothing is said by colour alone. */
export const kindSigns: Readonly<Record<FitKind, string>> = { fits: "●", change: "◆", unsure: "?", not: "✕" };
