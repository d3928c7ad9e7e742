import type { Apart } from "../addin/similarity/pair.ts";

/** Where two figures differ most, or which readings are missing that would tell. Blank when they are the same. */
export function worstMeasure({ distance, worst, lacking }: Apart): string {
  if (!Number.isNaN(distance)) return worst?.column.heading ?? "";
  return lacking.map(({ column }) => `${column.heading} missing`).join(", ");
}
