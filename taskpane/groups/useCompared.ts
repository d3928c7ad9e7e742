import { columnsOfPart } from "../../addin/similarity/columns.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { partOptions } from "./parts.ts";
import type { FiguresToGroup } from "./readGroups.ts";

/** By what figures are compared, or why they cannot be. */
export interface Compared {
  /** The part of the body or class of garments; the body where the chosen one is there no more. */
  readonly part: string;
  readonly columns: readonly ComparedColumn[] | undefined;
  readonly failure: string | undefined;
}

/** The measures of a part. */
export function useCompared(figures: FiguresToGroup, wanted: string): Compared {
  return useSession().book.once(comparedBy, figures, wanted);
}

function comparedBy({ chart, tolerances, garments }: FiguresToGroup, wanted: string): Compared {
  const part = partOptions(garments).some(([each]) => each === wanted) ? wanted : "body";
  try {
    return { part, columns: columnsOfPart(chart, part, { tolerances, garments }), failure: undefined };
  } catch (error) {
    return { part, columns: undefined, failure: failureText(error) };
  }
}
