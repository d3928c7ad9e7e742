import type { Chart, MeasureColumn } from "../addin/chart/chart.ts";
import { figureIndex } from "../addin/chart/find.ts";
import { gradePieces } from "../addin/chart/gradeBlocks.ts";
import type { GradePiece, GradeRule } from "../addin/chart/gradeRule.ts";
import type { ToleranceTable } from "../addin/chart/tolerances.ts";
import { columnsMoving, commonestUnit } from "../addin/grading/columnsMoving.ts";
import { differentFigures } from "../addin/grading/differentFigures.ts";
import type { GirthMismatch } from "../addin/grading/girthIdentity.ts";
import { girthMismatches } from "../addin/grading/girthIdentity.ts";
import { grade, prepareGrading } from "../addin/grading/grade.ts";
import { unevenMeasures } from "../addin/grading/gradeRun.ts";
import { printScale } from "../addin/grading/printScale.ts";
import { verdictWords } from "../addin/grading/printWords.ts";
import { runOrder } from "../addin/grading/runOrder.ts";
import { steps } from "../addin/grading/steps.ts";
import { InputError } from "../addin/measures/inputError.ts";
import { lengthWords } from "../addin/measures/lengthWords.ts";
import { someOf } from "../addin/measures/quote.ts";
import { chart, figureName, tolerances } from "./arguments.ts";
import type { Table, Value } from "./descriptor.ts";
import { defineFunction } from "./descriptor.ts";
import { withDoubts } from "./doubtMarks.ts";
import { exampleChart } from "./exampleChart.ts";
import { badTolerances, emptyChart, unknownFigure } from "./failures.ts";
import { gradeRules } from "./gradeRules.ts";
import { isAt, measureName, mismatchWords, missingWords } from "./gradeWords.ts";
import { doubtfulNote } from "./listed.ts";
import { shown, shownLength } from "./shown.ts";
import { targetFigures } from "./targetFigures.ts";

export const gradeFunction = defineFunction({
  name: "GRADE",
  summary:
    "How far every point of a pattern moves to go from one figure to another, or to each of several, piece by piece.",
  details:
    "A point moves by shares of what the measures change by. Across is to the right, away from the centre line, fold or crease; " +
    "Along is upwards. Pieces are halves where they are cut on a fold or twice, so a quarter of the bust goes on each half front " +
    "and half back. Pieces can be named by garment: Bodice, Sleeve, Fitted skirt, Flared skirt, Trousers, Hat band, Hood, " +
    "Stocking. Lengths are in the unit that most of the measures are in that move the pieces.\n\n" +
    "The first row gives the print scale in percent that keeps most of the measures that move these pieces within tolerance, " +
    "and says whether a print will do, what to let out or take in after it, or that the figure has another shape: draft anew. " +
    "Under Across it is the scale of the width, under Along that of the height; they differ only where two scales keep more. Pieces of several " +
    "garments have a row for each garment too: a bodice is judged by the measures that move it, as RESIZE does it for " +
    "Bodice. Several targets have two columns each, in the order " +
    "named; the row Steps then says where the steps within that run, from the smallest figure to the largest, are uneven.\n\n" +
    "Says names the measures that are missing on one side; what they would move is blank then. In a table of rules of your " +
    "own, the pieces of a garment must add up to the change of the girth at every girth line: where they do not, Says tells by " +
    "how much, and in which rows. A piece that the table names goes by the table alone.\n\n" +
    "Where a row rests on a flagged or estimated reading, a last column Doubtful says on which, and what it would be if that were " +
    `mended. ${doubtfulNote}`,
  parameters: {
    chart: chart(),
    base: figureName("The figure that the pattern was drafted for."),
    target: targetFigures(
      "The figure that is to wear it, or several: a range of names, or one text with commas.",
    ),
    rules: gradeRules(),
    tolerances: tolerances(),
  },
  result: "table",
  examples: [
    {
      formula: 'FIT.GRADE(Figures[#All], "Linnet", "Teal", "Skirt front")',
      values: [exampleChart, "Linnet", "Teal", "Skirt front"],
      gives: [
        ["Piece", "Point", "Across", "Along", "Unit", "Says"],
        [
          "All pieces",
          "Print scale",
          143,
          143,
          "%",
          "Print at 143 %, then let out Waist by 12 mm. Hip is within tolerance.",
        ],
        ["Skirt front", "Waist at centre", 0, 0, "mm", ""],
        ["Skirt front", "Waist at side", 13.75, 0, "mm", ""],
        ["Skirt front", "Hip at side", 15, "", "mm", "Waist to hip is not in the chart."],
        ["Skirt front", "Hem at side", 15, "", "mm", "Waist to knee is not in the chart."],
        ["Skirt front", "Hem at centre", 0, "", "mm", "Waist to knee is not in the chart."],
      ],
    },
    {
      formula: 'FIT.GRADE(Figures[#All], "Linnet", "Dunnock, Teal", "Skirt back")',
      values: [exampleChart, "Linnet", "Dunnock, Teal", "Skirt back"],
      gives: [
        ["Piece", "Point", "Dunnock across", "Dunnock along", "Teal across", "Teal along", "Unit", "Says"],
        [
          "All pieces",
          "Print scale",
          101,
          101,
          143,
          143,
          "%",
          "Dunnock: print at 101 %. At worst Hip is 0.6 mm too small, which is within tolerance. Teal: print at 143 %, then let out Waist by 12 mm. Hip is within tolerance.",
        ],
        ["All pieces", "Steps", "", "", "", "", "", "Uneven: Waist 1 mm to 54 mm, Hip 2 mm to 58 mm."],
        ["Skirt back", "Waist at centre", 0, 0, 0, 0, "mm", ""],
        ["Skirt back", "Waist at side", 0.25, 0, 13.75, 0, "mm", ""],
        ["Skirt back", "Hip at side", 0.5, "", 15, "", "mm", "Waist to hip is not in the chart."],
        ["Skirt back", "Hem at side", 0.5, "", 15, "", "mm", "Waist to knee is not in the chart."],
        ["Skirt back", "Hem at centre", 0, "", 0, "", "mm", "Waist to knee is not in the chart."],
      ],
    },
  ],
  failures: [
    emptyChart,
    unknownFigure,
    { when: "Base and target are the same figure, or a target is named twice.", shows: "#VALUE!" },
    {
      when: "A rule names an unknown piece, point or measure, or a share that is more than the whole. The message names the row.",
      shows: "#VALUE!",
    },
    {
      when: "No measure that the rules use is known of both figures. The message names some.",
      shows: "#N/A",
    },
    badTolerances,
  ],
  source:
    "A quarter of a girth on each half front and half back is the classical split. The other shares are common practice of flat " +
    "pattern drafting, without one source.",
  compute: (given) => {
    const { chart: figures, rules: chosen } = given;
    const { rules } = chosen;
    const base = figureIndex(figures, given.base);
    const targets = given.target(figures);
    for (const target of targets) differentFigures(figures, base, target);
    const tableOn = (on: Chart): Table => {
      const isKnown = (id: string) => targets.some((target) => !Number.isNaN(changeMm(on, id, base, target)));
      const knownPieces = piecesKnown(rules, chosen.pieces ?? gradePieces, isKnown);
      const pieces = chosen.pieces ?? knownPieces;
      const grading = prepareGrading(on, rules, pieces);
      const movements = targets.map((target) => grade(grading, base, target));
      const mismatches = girthMismatches(rules, gradePieces);
      const run = { figures: on, base, targets, rules, pieces, columns: columnsMoving(on, rules, pieces) };
      const unit = commonestUnit(run.columns);
      return [
        ["Piece", "Point", ...targets.flatMap((target) => headingsOf(on, target, targets)), "Unit", "Says"],
        ...scaleRows(run, given.tolerances(figures)),
        ...(targets.length > 1 ? [stepsRow(run)] : []),
        ...(movements[0] ?? []).map(({ piece, point }, i) => {
          const ofPoint = movements.flatMap((each) => each[i] ?? []);
          const missing = new Set(ofPoint.flatMap((movement) => movement.missing));
          return [
            piece,
            point,
            ...ofPoint.flatMap(({ acrossMm, alongMm }) => [
              shownLength(acrossMm, unit),
              shownLength(alongMm, unit),
            ]),
            unit,
            [
              ...[...missing].map((measure) => missingWords(measure, on, [base, ...targets])),
              ...mismatches
                .filter((mismatch) => isAt(mismatch, { piece, point }))
                .map((mismatch) => mismatchWords(mismatch, excessesMm(mismatch, run), unit)),
            ].join(" "),
          ];
        }),
      ];
    };
    return withDoubts(figures, tableOn, { keys: 2, about: [base, ...targets] });
  },
});

/** From one figure to others, by the measures that move the pieces. */
interface Run {
  readonly figures: Chart;
  readonly base: number;
  readonly targets: readonly number[];
  readonly rules: readonly GradeRule[];
  readonly pieces: readonly GradePiece[];
  readonly columns: readonly MeasureColumn[];
}

function headingsOf(figures: Chart, target: number, targets: readonly number[]): readonly string[] {
  if (targets.length === 1) return ["Across", "Along"];
  const name = figures.figures[target] ?? "";
  return [`${name} across`, `${name} along`];
}

/** The print of all pieces to every target; where they are of several garments, of each garment too. */
function scaleRows(run: Run, allowed?: ToleranceTable): readonly (readonly Value[])[] {
  const { figures, rules, pieces } = run;
  const garments = [...new Set(pieces.map(({ garment }) => garment))];
  const apart = garments.length > 1 ? garments : [];
  return [
    scaleRow("All pieces", run, allowed),
    ...apart.map((garment) => {
      const own = pieces.filter((piece) => piece.garment === garment);
      return scaleRow(garment, { ...run, columns: columnsMoving(figures, rules, own) }, allowed);
    }),
  ];
}

/** The best print to every target, and what it leaves, by some measures. */
function scaleRow(
  what: string,
  { figures, base, targets, columns }: Omit<Run, "rules" | "pieces">,
  allowed?: ToleranceTable,
): readonly Value[] {
  const scales = targets.map((target) => printScale(base, target, columns, allowed));
  const words = scales.map(verdictWords);
  const named = words.map((said, i) => `${figures.figures[targets[i] ?? -1] ?? ""}: ${lowerFirst(said)}`);
  return [
    what,
    "Print scale",
    ...scales.flatMap(({ best }) => [shown(best.across.percent), shown(best.along.percent)]),
    "%",
    (targets.length > 1 ? named : words).join(" "),
  ];
}

/** Where the steps from figure to figure differ, from the smallest to the largest. */
function stepsRow({ figures, base, targets, columns }: Run): readonly Value[] {
  const words = unevenMeasures(steps(figures, columns, runOrder(base, targets, columns)), columns).map(
    ({ column: { heading, unit }, leastMm, mostMm }) =>
      `${heading} ${lengthWords(leastMm, unit)} to ${lengthWords(mostMm, unit)}`,
  );
  const says = words.length > 0 ? `Uneven: ${words.join(", ")}.` : "Even.";
  return ["All pieces", "Steps", ...targets.flatMap(() => ["", ""]), "", says];
}

function changeMm({ measures }: Chart, id: string, base: number, target: number): number {
  const mm = measures.find(({ key }) => key === id)?.mm;
  return (mm?.[target] ?? Number.NaN) - (mm?.[base] ?? Number.NaN);
}

function lowerFirst(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}

/**
 * The pieces of which something is known.
 *
 * @throws {InputError} “absent” when that is none
 */
function piecesKnown(
  rules: readonly GradeRule[],
  pieces: readonly GradePiece[],
  isKnown: (measure: string) => boolean,
): readonly GradePiece[] {
  const rulesOf = ({ name }: GradePiece) => rules.filter(({ piece }) => piece === name);
  const known = pieces.filter((piece) => rulesOf(piece).some(({ measure }) => isKnown(measure)));
  if (known.length > 0) return known;
  const needed = [...new Set(pieces.flatMap(rulesOf).map(({ measure }) => measureName(measure)))];
  throw new InputError(
    `The chart has no measure that moves these pieces for both figures. Measure some of ${someOf(needed)} on both.`,
    "absent",
  );
}

/** How much too much or too little the line moves, for every target of which the measure is known. */
function excessesMm({ measure, excess }: GirthMismatch, { figures, base, targets }: Run): readonly number[] {
  return targets
    .map((target) => Math.abs(excess * changeMm(figures, measure, base, target)))
    .filter((mm) => mm > 0);
}
