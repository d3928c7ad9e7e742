import type { LinkageMethod } from "../../addin/similarity/linkage.ts";

/** How groups are built: by joining figures step by step, or the fewest that there can be. */
export type GroupMethod = LinkageMethod | "fewest";

export const groupMethods = ["complete", "fewest", "average", "single", "ward"] as const;

export interface MethodWords {
  readonly name: string;
  /** What holds of a group. */
  readonly says: string;
  /** The name under which the literature knows it. */
  readonly technical: string;
}

export const methodWords: Readonly<Record<GroupMethod, MethodWords>> = {
  complete: {
    name: "Every two within tolerance",
    says: "Every two figures of a group are within tolerance, at every measure that both have.",
    technical: "complete linkage",
  },
  fewest: {
    name: "The same, in the fewest groups",
    says: "Every two figures of a group are within tolerance, and no other sorting needs fewer groups.",
    technical: "minimum clique cover, solved exactly",
  },
  average: {
    name: "Alike on the whole",
    says: "The figures of a group are within tolerance on average; single pairs may be beyond it.",
    technical: "average linkage (UPGMA)",
  },
  single: {
    name: "From neighbour to neighbour",
    says: "Each figure is within tolerance of at least one other; the ends of a chain may be far apart.",
    technical: "single linkage",
  },
  ward: {
    name: "Least spread",
    says: "Figures are joined so that groups spread as little as can be; single pairs may be beyond tolerance.",
    technical: "Ward’s method",
  },
};
