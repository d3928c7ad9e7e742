import { zones } from "../addin/measures/measure.ts";
import { choice } from "./arguments.ts";

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
    ["complete", "average", "single", "ward"],
    "complete",
  );
