import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import type { BasesAnswer, ExactAnswer, GroupsAnswer } from "../../addin/similarity/fewest/fewestShared.ts";

/** What is to be worked out: plain data, so that it can be passed to a worker. */
export interface ExactTask {
  readonly kind: "groups" | "bases";
  /** The names of the figures, in the order of the chart. */
  readonly figures: readonly string[];
  /** See `comparedColumns`; readings in the order of the chart. */
  readonly columns: readonly ComparedColumn[];
  /** How far two figures may be apart, in tolerances; 1 when omitted. Above 0. */
  readonly reach?: number;
  /** Stop and keep the best answer after so long; 30,000 when omitted. */
  readonly timeLimitMs?: number;
}

export type AnswerTo<T extends ExactTask> = T["kind"] extends "groups"
  ? GroupsAnswer
  : T["kind"] extends "bases"
    ? BasesAnswer
    : ExactAnswer;

/** What came out, and why the search ended. */
export interface Solved<A extends ExactAnswer = ExactAnswer> {
  readonly answer: A;
  readonly ended: "proved" | "limit" | "cancelled";
}
