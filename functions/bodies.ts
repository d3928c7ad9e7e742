import type { LinkageMethod } from "../addin/similarity/linkage.ts";
import type { Parameter } from "./arguments.ts";
import { choice, word } from "./arguments.ts";
import { estimateChoices, groupMethodChoices, methodChoices, zoneChoices } from "./choices.ts";
import type { Failure } from "./descriptor.ts";

export const unknownWord: Failure = {
  when: "The zone is neither a part of the body nor a class of garments in the tolerances, or the method is not known.",
  shows: "#VALUE!",
};

/** The arguments that say what is compared, and how a group is built. */
export function zone(): Parameter<string> {
  return word(
    "What to compare: body, torso, arms, legs, head, hands, feet, all, or a class of garments that heads a column of the tolerances.",
    zoneChoices,
    "body",
  );
}

/** Whether estimates take part. */
export function estimates(): Parameter<"leave out" | "count"> {
  return choice(
    "What estimates (~ 152) are worth: leave out (they are no readings), or count (as if they were).",
    estimateChoices,
    "leave out",
  );
}

export function method(): Parameter<LinkageMethod> {
  return choice(
    "How groups are built: complete (every pair in a group is within tolerance), average, single or ward.",
    methodChoices,
    "complete",
  );
}

/** The same, and the exact answer. */
export function groupMethod(): Parameter<LinkageMethod | "fewest"> {
  return choice(
    "How groups are built: complete (every pair is within tolerance), fewest (that in as few as can be), average, single or ward.",
    groupMethodChoices,
    "complete",
  );
}
