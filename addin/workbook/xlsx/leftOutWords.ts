/** Phrases that are shown; the others are counted. */
const mostShown = 8;

/**
 * A sentence for the user about what of a file was not kept; `undefined` when all was.
 *
 * @param leftOut short phrases, as `readXlsx` gives them
 * @example leftOutWords("chart.xlsx", ["the macros"]) // Not taken over from “chart.xlsx”: the macros. …
 */
export function leftOutWords(name: string, leftOut: readonly string[]): string | undefined {
  if (leftOut.length === 0) return undefined;
  const more = leftOut.length - mostShown;
  const listed = [...leftOut.slice(0, mostShown), ...(more > 0 ? [`and ${String(more)} more`] : [])];
  return `Not taken over from “${name}”: ${listed.join("; ")}. The file itself is as it was.`;
}
