import type { Changes, TurnedVerdict } from "../../addin/publish/changes.ts";
import { count, dayName } from "../ui/words.ts";

/** The preference in which a workbook remembers what was published. */
export const historyKey = "published";

/** What buyers do not know, of one publication. */
export interface Since {
  readonly day: string;
  readonly changes: Changes;
  /** What changed with that publication, where there was one before it. */
  readonly before: { readonly day: string; readonly changes: Changes } | undefined;
}

/** “2 figures added, 1 verdict turned”; "" where nothing changed. */
export function changeCounts(changes: Changes): string {
  const said = (n: number, one: string, what: string): string => (n === 0 ? "" : `${count(n, one)} ${what}`);
  return [
    said(changes.figuresAdded.length, "figure", "added"),
    said(changes.figuresGone.length, "figure", "gone"),
    said(changes.figuresRenamed.length, "figure", "renamed"),
    said(changes.measuresAdded.length, "measure", "added"),
    said(changes.measuresGone.length, "measure", "gone"),
    said(changes.patternsAdded.length, "pattern", "added"),
    said(changes.patternsGone.length, "pattern", "gone"),
    said(changes.readings.length, "reading", "changed"),
    said(changes.verdicts.length, "verdict", "turned"),
  ]
    .filter((text) => text !== "")
    .join(", ");
}

/** What changed, with the verdict that turned and whom to tell: “…, 1 verdict turned: D-1 on Ardwen fits → too tight. Tell …” */
export function changeWords(changes: Changes): string {
  const counts = changeCounts(changes);
  const [first, ...others] = changes.verdicts;
  if (!first) return `${counts}.`;
  if (others.length === 0) return `${counts}: ${turnedWords(first)}. Tell those who bought it.`;
  const codes = [...new Set(changes.verdicts.map(({ pattern }) => pattern))];
  return `${counts}, among them ${turnedWords(first)}. Tell those who bought ${codesWords(codes)}.`;
}

function turnedWords({ pattern, figure, from, to }: TurnedVerdict): string {
  return `${pattern} on ${figure} ${from} → ${to}`;
}

/** More would not be read in a sentence. */
const mostCodes = 3;

function codesWords(codes: readonly string[]): string {
  const [last = "", ...others] = codes.slice(0, mostCodes).reverse();
  const left = codes.length - mostCodes;
  if (left > 0) return `${codes.slice(0, mostCodes).join(", ")} and ${count(left, "other pattern")}`;
  return others.length === 0 ? last : `${others.reverse().join(", ")} or ${last}`;
}

/** What buyers of a pattern do not know; where they know all, what the last publication told them anew. */
function latest(since: Since): { readonly day: string; readonly changes: Changes } {
  const { day, changes, before } = since;
  return changes.verdicts.length === 0 && before ? before : { day, changes };
}

/** The patterns of which a verdict turned, so that the words under them are others. */
export function changedPatterns<T extends { readonly code: string }>(
  patterns: readonly T[],
  since: Since | undefined,
): readonly T[] {
  if (!since) return [];
  const codes = new Set(latest(since).changes.verdicts.map(({ pattern }) => pattern));
  return patterns.filter(({ code }) => codes.has(code));
}

/** “Since 12 November: Ardwen fits → too tight.” */
export function patternChanges(code: string, since: Since, today = new Date()): string {
  const { day, changes } = latest(since);
  const turned = changes.verdicts
    .filter(({ pattern }) => pattern === code)
    .map(({ figure, from, to }) => `${figure} ${from} → ${to}`);
  return turned.length === 0 ? "" : `Since ${dayName(day, today)}: ${turned.join("; ")}.`;
}
