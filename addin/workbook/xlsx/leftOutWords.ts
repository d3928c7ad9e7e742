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
  return `Not taken over from “${name}”: ${listed(leftOut)}. The file itself is as it was.`;
}

/**
 * A sentence for the user about what was written otherwise than it stands in the workbook; `undefined` when nothing was.
 *
 * @param changed short phrases, as `writeXlsx` gives them
 */
export function changedWords(changed: readonly string[]): string | undefined {
  if (changed.length === 0) return undefined;
  return `Saved as text instead of a formula: ${listed(changed)}. Your workbook is as it was; mend it there and save again.`;
}

function listed(phrases: readonly string[]): string {
  const more = phrases.length - mostShown;
  return [...phrases.slice(0, mostShown), ...(more > 0 ? [`and ${String(more)} more`] : [])].join("; ");
}
