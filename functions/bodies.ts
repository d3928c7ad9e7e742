import { zones } from "../addin/measures/measure.ts";
import { linkageMethods } from "../addin/similarity/linkage.ts";
import { choice } from "./arguments.ts";
import type { Failure } from "./descriptor.ts";

export const unknownWord: Failure = {
  when: "The zone or the method is not one of the words listed.",
  shows: "#VALUE!",
};

/** The arguments that say which part of the body is compared, and how a group is built. */
export const zone = () =>
  choice(
    "The part of the figure to compare: body, torso, arms, legs, head, hands, feet or all.",
    ["body", ...zones, "all"] as const,
    "body",
  );

export const method = () =>
  choice(
    "How groups are built: complete (every pair in a group is within tolerance), average, single or ward.",
    linkageMethods,
    "complete",
  );
