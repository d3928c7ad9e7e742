import type { ChangingPair } from "../../addin/similarity/certainty/changingGroups.ts";
import { namesWords } from "./words.ts";

/** Names written out of one part of a group. */
const mostNames = 6;

/** What the readings say of a pair in doubt, and what would become of the groups if it were the other way round. */
export function changeWords({ areWithin, groups, change }: ChangingPair): string {
  const now = areWithin ? "As read, they are within tolerance." : "As read, they are not.";
  switch (change.kind) {
    case "split": {
      const [some, others] = change.parts.map((names) => namesWords(names, mostNames));
      return `${now} If not, group ${String(change.group)} falls in two: ${some ?? ""}; and ${others ?? ""}.`;
    }
    case "join":
      return `${now} If they are, groups ${change.groups.map(String).join(" and ")} could become one.`;
    case "move":
      return `${now} If they are, ${change.moves
        .map(({ figure, from, to }) => `${figure} could go from group ${String(from)} to group ${String(to)}`)
        .join(", or ")}.`;
    case "none":
      return groups[0] === groups[1]
        ? `${now} Either way they stay in group ${String(groups[0])}.`
        : `${now} Either way other figures keep groups ${groups.map(String).join(" and ")} apart.`;
  }
}
