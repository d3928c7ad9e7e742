import type { WorkbookContent } from "../workbook/content.ts";
import { demoBook } from "./sheets/book.ts";
import { closestSheet } from "./sheets/closest.ts";
import { compareSheet } from "./sheets/compare.ts";
import { easeRulesSheet } from "./sheets/easeRules.ts";
import { figuresSheet } from "./sheets/figures.ts";
import { flagsSheet } from "./sheets/flags.ts";
import { garmentClassesSheet } from "./sheets/garmentClasses.ts";
import { gradeSheet } from "./sheets/grade.ts";
import { gradeRulesSheet } from "./sheets/gradeRules.ts";
import { groupsSheet, looseClothesSheet } from "./sheets/groups.ts";
import { houseModelsSheet } from "./sheets/houseModels.ts";
import { listingSheet } from "./sheets/listing.ts";
import { matchSheet } from "./sheets/match.ts";
import { expectedSheet, measureNextSheet } from "./sheets/measureNext.ts";
import { patternsSheet } from "./sheets/patterns.ts";
import { demoReadingsSheet } from "./sheets/readings.ts";
import { resizeSheet } from "./sheets/resize.ts";
import { sharingSheet } from "./sheets/sharing.ts";
import { sizesSheet } from "./sheets/sizes.ts";
import { skirtsAndDartsSheet } from "./sheets/skirtsAndDarts.ts";
import { smallSumsSheet } from "./sheets/smallSums.ts";
import { startSheet } from "./sheets/start.ts";
import { tolerancesSheet } from "./sheets/tolerances.ts";
import { treeSheet } from "./sheets/tree.ts";
import { wardrobeSheet } from "./sheets/wardrobe.ts";
import { wearersSheet } from "./sheets/wearers.ts";
import { whySheet } from "./sheets/why.ts";

/** The workbook of an invented maker: a chart with mistakes to find, patterns, and sheets that put the functions to use. */
export function demoWorkbook(): WorkbookContent {
  const book = demoBook();
  return {
    sheets: [
      startSheet(),
      figuresSheet(),
      tolerancesSheet(),
      patternsSheet(),
      easeRulesSheet(),
      garmentClassesSheet(),
      gradeRulesSheet(),
      compareSheet(book),
      groupsSheet(book),
      closestSheet(book),
      treeSheet(book),
      looseClothesSheet(book),
      sharingSheet(book),
      houseModelsSheet(book),
      measureNextSheet(book),
      expectedSheet(book),
      flagsSheet(book),
      matchSheet(book),
      wearersSheet(book),
      wardrobeSheet(book),
      whySheet(book),
      listingSheet(book),
      gradeSheet(book),
      resizeSheet(book),
      sizesSheet(),
      skirtsAndDartsSheet(),
      smallSumsSheet(),
      demoReadingsSheet(),
    ],
  };
}
