import type { Flag } from "../../addin/checking/checkChart.ts";

/** The flags of one figure, worst first. */
export interface FlagGroup {
  /** Empty for flags about whole columns. */
  readonly figure: string;
  readonly row: number;
  readonly flags: readonly Flag[];
}

/** Flags, worst first → groups by figure, the figure with the worst flag first. */
export function groupFlags(flags: readonly Flag[]): readonly FlagGroup[] {
  const groups = new Map<string, Flag[]>();
  for (const flag of flags) {
    // Two rows of one name are two groups.
    const key = flag.figure === "" ? "" : `${String(flag.row)} ${flag.figure}`;
    const group = groups.get(key);
    if (group) group.push(flag);
    else groups.set(key, [flag]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    return first ? [{ figure: first.figure, row: first.row, flags: group }] : [];
  });
}
