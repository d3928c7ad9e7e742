import type { Cells } from "../addin/chart/cell.ts";
import { cellText } from "../addin/chart/cell.ts";
import { figureKey } from "../addin/chart/find.ts";
import { defaultGradeRules, gradePieces } from "../addin/chart/gradeBlocks.ts";
import type { GradePiece, GradeRule } from "../addin/chart/gradeRule.ts";
import { isGradeRuleTable, readGradeRules } from "../addin/chart/readGradeRules.ts";
import { onceFor } from "../addin/chart/workOnce.ts";
import { InputError } from "../addin/measures/inputError.ts";
import { didYouMean } from "../addin/measures/nearNames.ts";
import { quote, someOf } from "../addin/measures/quote.ts";
import type { Parameter } from "./arguments.ts";
import { optionalRange, tableFrom } from "./arguments.ts";

/** The rules of a call, and the pieces that it asks for; `undefined` when it names none. */
export interface ChosenRules {
  readonly rules: readonly GradeRule[];
  readonly pieces: readonly GradePiece[] | undefined;
}

const gradeRulesOf = onceFor((cells: Cells) => readGradeRules(cells));

/** A table of grade rules, or the names of pieces or garments whose usual rules are wanted. */
export function gradeRules(): Parameter<ChosenRules> {
  return optionalRange(
    "The pieces wanted, such as Bodice, Sleeve; or a table with the headings Piece, Point, Measure, Share across, Share along.",
    "the rules that come with Measure Book, for every piece that the chart has measures for",
    (cells, name) => {
      if (!cells) return { rules: defaultGradeRules, pieces: undefined };
      if (!isGradeRuleTable(cells)) return { rules: defaultGradeRules, pieces: piecesNamed(cells, name) };
      const { rules, pieces } = gradeRulesOf(tableFrom(cells));
      return { rules, pieces: gradePieces.filter((piece) => pieces.includes(piece.name)) };
    },
  );
}

function piecesNamed(cells: Cells, where: string): readonly GradePiece[] {
  const wanted = cells
    .flat()
    .flatMap((cell) => cellText(cell).split(/[,;]/u))
    .map((part) => part.trim())
    .filter((part) => part !== "" && part !== "0");
  const found = wanted.flatMap((name) => {
    const pieces = piecesCalled(name);
    if (pieces.length > 0) return pieces;
    const names = [...new Set(gradePieces.flatMap((piece) => [piece.garment, piece.name]))];
    throw new InputError(
      `${where}: ${quote(name)} is neither a piece nor a garment that has grade rules.${didYouMean(name, names) || ` There is ${someOf(names)}.`}`,
    );
  });
  return gradePieces.filter((piece) => found.includes(piece));
}

/** The pieces of a garment, or the one piece, of that name in any case; none where there is no such. */
export function piecesCalled(name: string): readonly GradePiece[] {
  const key = figureKey(name);
  return gradePieces.filter((piece) => [piece.name, piece.garment].some((each) => figureKey(each) === key));
}
