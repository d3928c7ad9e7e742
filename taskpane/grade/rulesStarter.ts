import { gradeRuleCells } from "../../addin/chart/readGradeRules.ts";
import type { StarterTable, TakenNames } from "../shell/starterTable.ts";
import { starterTable } from "../shell/starterTable.ts";
import { usualGradeRules } from "./readGrading.ts";

/** The grade rules that come with the project, to be changed. */
export function gradeRulesStarter(taken: TakenNames): StarterTable {
  return starterTable("Grade rules", usualGradeRules, taken, {
    says: "How far a point moves: its share of what the measure changes by. Across is away from the centre line or fold, along is up.",
    cells: gradeRuleCells(),
    widths: [144, 168, 176, 112, 112],
  });
}
