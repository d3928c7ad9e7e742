/** Which figures share a group, in as few groups as possible, every two of a group within tolerance. */
export interface GroupsAnswer {
  readonly kind: "groups";
  /** The group of each figure, in the order of the chart. From 1: larger groups first, groups of one size by their first name. */
  readonly groupOf: Int32Array;
  readonly count: number;
  /** No answer has fewer groups than this. */
  readonly atLeast: number;
  /** True when `count` is proved to be the fewest. */
  readonly isProved: boolean;
}

/** As few base figures as possible, so that every figure is within reach of one. */
export interface BasesAnswer {
  readonly kind: "bases";
  /** The base figure of each figure, as places in the chart from 0. A base figure is its own. */
  readonly baseOf: Int32Array;
  readonly count: number;
  /** No answer has fewer base figures than this. */
  readonly atLeast: number;
  /** True when `count` is proved to be the fewest. */
  readonly isProved: boolean;
  /** The sum of the distances from each figure to its base figure, in tolerances. */
  readonly alteration: number;
  /** True when it is proved that no answer with as few base figures needs less alteration. */
  readonly isLeastAlteration: boolean;
}

export type ExactAnswer = GroupsAnswer | BasesAnswer;
