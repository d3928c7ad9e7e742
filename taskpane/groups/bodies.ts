import { columnsOfPart } from "../../addin/similarity/columns.ts";
import type { GroupedFigure } from "../../addin/similarity/groups.ts";
import { sharedBodyGroups } from "../../addin/similarity/groups.ts";
import { failureText } from "../shell/notice.ts";
import type { FiguresToGroup } from "./readGroups.ts";

/** The body of each figure, in the order of the chart; or why it cannot be told, in words. */
export function bodiesIn({ chart, tolerances, garments }: FiguresToGroup): readonly GroupedFigure[] | string {
  try {
    return sharedBodyGroups(chart, columnsOfPart(chart, "body", { tolerances, garments }));
  } catch (error) {
    return failureText(error);
  }
}
