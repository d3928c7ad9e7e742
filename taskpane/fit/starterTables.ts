import { easeRuleCells } from "../../addin/chart/readEaseRules.ts";
import { garmentClassCells } from "../../addin/chart/readGarmentClasses.ts";
import type { StarterTable, TakenNames } from "../shell/starterTable.ts";
import { starterTable } from "../shell/starterTable.ts";
import { usualNames } from "./fitTables.ts";

/** The ease rules that come with the project, to be changed. */
export function easeRulesStarter(taken: TakenNames): StarterTable {
  return starterTable("Ease rules", usualNames.easeRules, taken, {
    says: "How much larger than the body a garment is: percent of the body plus a length. Empty is no limit.",
    cells: easeRuleCells(),
    widths: [168, 144, 80, 80, 80, 80, 80, 320],
  });
}

/** The garment classes that come with the project, to be changed. */
export function garmentClassesStarter(taken: TakenNames): StarterTable {
  return starterTable("Garment classes", usualNames.garmentClasses, taken, {
    says: "Where each class is worn, how many cut edges its seams have, which openings must be known, its usual sleeves and end.",
    cells: garmentClassCells(),
    widths: [168, 112, 80, 112, 80, 112, 224, 320],
  });
}
