import type { WorkbookContent } from "../workbook/content.ts";
import { compareSheet } from "./sheets/compare.ts";
import { figuresSheet } from "./sheets/figures.ts";
import { flagsSheet } from "./sheets/flags.ts";
import { groupsSheet } from "./sheets/groups.ts";
import { smallSumsSheet } from "./sheets/smallSums.ts";
import { startSheet } from "./sheets/start.ts";
import { tolerancesSheet } from "./sheets/tolerances.ts";

/** The workbook of an invented maker: a chart with mistakes to find, and sheets that use every function. */
export function demoWorkbook(): WorkbookContent {
  return {
    sheets: [
      startSheet(),
      figuresSheet(),
      tolerancesSheet(),
      compareSheet(),
      groupsSheet(),
      flagsSheet(),
      smallSumsSheet(),
    ],
  };
}
