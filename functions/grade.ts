import type { Chart } from "../addin/chart/chart.ts";
import { figureIndex } from "../addin/chart/find.ts";
import { gradePieces } from "../addin/chart/gradeBlocks.ts";
import type { GradePiece, GradeRule } from "../addin/chart/gradeRule.ts";
import { lengthWords } from "../addin/measures/lengthWords.ts";
import { differentFigures } from "../addin/grading/differentFigures.ts";
import type { GirthMismatch } from "../addin/grading/girthIdentity.ts";
import { girthMismatches } from "../addin/grading/girthIdentity.ts";
import type { Movement } from "../addin/grading/grade.ts";
import { grade, prepareGrading } from "../addin/grading/grade.ts";
import { measureById } from "../addin/measures/dictionary.ts";
import { InputError } from "../addin/measures/inputError.ts";
import type { LengthUnit } from "../addin/measures/units.ts";
import { chart, text } from "./arguments.ts";
import { defineFunction } from "./descriptor.ts";
import { exampleChart } from "./exampleChart.ts";
import { emptyChart, unknownFigure } from "./failures.ts";
import { gradeRules } from "./gradeRules.ts";
import { shownLength } from "./shown.ts";

export const gradeFunction = defineFunction({
  name: "GRADE",
  summary: "How far every point of a pattern moves to go from one figure to another, piece by piece.",
  details:
    "A point moves by shares of what the measures change by. Across is to the right, away from the centre line, fold or crease; " +
    "Along is upwards. Pieces are halves where they are cut on a fold or twice, so a quarter of the bust goes on each half front " +
    "and half back. Pieces can be named by garment: Bodice, Sleeve, Fitted skirt, Flared skirt, Trousers, Hat band, Hood, " +
    "Stocking. Lengths are in the unit of the chart, or in mm where its columns differ.\n\n" +
    "Says names the measures that are missing on one side; what they would move is blank then. In a table of rules of your " +
    "own, the pieces of a garment must add up to the change of the girth at every girth line: where they do not, Says tells by " +
    "how much, and in which rows. A piece that the table names goes by the table alone.",
  parameters: {
    chart: chart(),
    base: text("The figure that the pattern was drafted for."),
    target: text("The figure that is to wear it."),
    rules: gradeRules(),
  },
  result: "table",
  examples: [
    {
      formula: 'FIT.GRADE(Figures[#All], "Linnet", "Teal", "Skirt front")',
      values: [exampleChart, "Linnet", "Teal", "Skirt front"],
      gives: [
        ["Piece", "Point", "Across", "Along", "Unit", "Says"],
        ["Skirt front", "Waist at centre", 0, 0, "mm", ""],
        ["Skirt front", "Waist at side", 13.75, 0, "mm", ""],
        ["Skirt front", "Hip at side", 15, "", "mm", "Waist to hip is not in the chart."],
        ["Skirt front", "Hem at side", 15, "", "mm", "Waist to knee is not in the chart."],
        ["Skirt front", "Hem at centre", 0, "", "mm", "Waist to knee is not in the chart."],
      ],
    },
  ],
  failures: [
    emptyChart,
    unknownFigure,
    { when: "Base and target are the same figure.", shows: "#VALUE!" },
    {
      when: "A rule names an unknown piece, point or measure, or a share that is more than the whole. The message names the row.",
      shows: "#VALUE!",
    },
    {
      when: "No measure that the rules use is known of both figures. The message names some.",
      shows: "#N/A",
    },
  ],
  source:
    "A quarter of a girth on each half front and half back is the classical split. The other shares are common practice of flat " +
    "pattern drafting, without one source.",
  compute: ({ chart: figures, base, target, rules: { rules, pieces } }) => {
    const from = figureIndex(figures, base);
    const to = figureIndex(figures, target);
    differentFigures(figures, from, to);
    const changeMm = (id: string): number => {
      const column = figures.measures.find(({ key }) => key === id);
      return (column?.mm[to] ?? Number.NaN) - (column?.mm[from] ?? Number.NaN);
    };
    const shownPieces = piecesKnown(rules, pieces ?? gradePieces, (id) => !Number.isNaN(changeMm(id)));
    const movements = grade(prepareGrading(figures, rules, pieces ?? shownPieces), from, to);
    const mismatches = girthMismatches(rules, gradePieces);
    const unit = unitOf(figures);
    return [
      ["Piece", "Point", "Across", "Along", "Unit", "Says"],
      ...movements.map((movement) => [
        movement.piece,
        movement.point,
        shownLength(movement.acrossMm, unit),
        shownLength(movement.alongMm, unit),
        unit,
        [
          ...movement.missing.map((measure) => missingWords(measure, figures, [from, to])),
          ...mismatches
            .filter((mismatch) => isAt(mismatch, movement))
            .map((mismatch) => mismatchWords(mismatch, mismatch.excess * changeMm(mismatch.measure), unit)),
        ].join(" "),
      ]),
    ];
  },
});

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
  const needed = [...new Set(pieces.flatMap(rulesOf).map(({ measure }) => nameOf(measure)))];
  throw new InputError(
    `None of the measures that move these pieces is known of both figures. Measure some of ${needed.slice(0, 4).join(", ")} on both.`,
    "absent",
  );
}

/** Which reading to take, and on whom. */
function missingWords(measure: string, { measures, figures }: Chart, pair: readonly number[]): string {
  const column = measures.find(({ key }) => key === measure);
  if (!column) return `${nameOf(measure)} is not in the chart.`;
  const lacking = pair.filter((figure) => Number.isNaN(column.mm[figure]));
  return `${nameOf(measure)} is not known of ${lacking.map((figure) => figures[figure] ?? "").join(" and ")}.`;
}

/** True at the points of a girth line that does not add up. */
function isAt({ garment, line }: GirthMismatch, movement: Movement): boolean {
  const piece = gradePieces.find(({ name }) => name === movement.piece);
  const point = piece?.points.find(({ name }) => name === movement.point);
  return piece?.garment === garment && point?.line?.name === line;
}

function mismatchWords(mismatch: GirthMismatch, excessMm: number, unit: LengthUnit): string {
  const { garment, line, girth, measure, sum, excess, rules } = mismatch;
  const rows = rules.flatMap(({ row }) => (row === undefined ? [] : [String(row + 1)]));
  const where =
    rows.length > 0 ? `${rows.length > 1 ? "Rows" : "Row"} ${rows.join(", ")} of the grade rules: ` : "";
  const whole = measure === girth ? "100 %" : "nothing";
  const size = lengthWords(Math.abs(excessMm), unit);
  const off =
    Number.isNaN(excessMm) || excessMm === 0
      ? percent(Math.abs(excess))
      : `${percent(Math.abs(excess))} or ${size}`;
  return `${where ? `${where}at` : "At"} the ${line} the pieces of the ${garment.toLowerCase()} add up to ${percent(sum)} of the change of ${nameOf(measure)} instead of ${whole}, ${off} too ${excess > 0 ? "much" : "little"}.`;
}

function percent(share: number): string {
  return `${String(Math.round(share * 1000) / 10)} %`.replace("-", "−");
}

/** The unit that all columns share; mm where they differ. */
function unitOf({ measures }: Chart): LengthUnit {
  const units = new Set(measures.map(({ unit }) => unit));
  const [unit] = units;
  return units.size === 1 && unit ? unit : "mm";
}

function nameOf(measure: string): string {
  return measureById(measure)?.shortName ?? measure;
}
