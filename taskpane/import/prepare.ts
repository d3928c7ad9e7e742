import { cellText } from "../../addin/chart/cell.ts";
import type { BodyMeasure } from "../../addin/chart/import/bodyMeasures.ts";
import { bodyMeasures } from "../../addin/chart/import/bodyMeasures.ts";
import { defaultGarmentClasses } from "../../addin/chart/garmentClass.ts";
import type { ColumnChoice, ImportColumn } from "../../addin/chart/import/columns.ts";
import { matchColumns } from "../../addin/chart/import/columns.ts";
import { detectDecimalMark } from "../../addin/chart/import/decimalMark.ts";
import type { TwinChoices } from "../../addin/chart/import/figures.ts";
import { decideFigures } from "../../addin/chart/import/figures.ts";
import type { ImportPlan, PresentChart } from "../../addin/chart/import/importPlan.ts";
import { planOf } from "../../addin/chart/import/importPlan.ts";
import type { ImportKind } from "../../addin/chart/import/columns.ts";
import { kindOf, matchPatternColumns } from "../../addin/chart/import/patternColumns.ts";
import type { FoundWord } from "../../addin/chart/import/patternPlan.ts";
import {
  patternPlanOf,
  presentPatternRows,
  withoutGroupLines,
  wordsFound,
} from "../../addin/chart/import/patternPlan.ts";
import type { ChosenWords, Words } from "../../addin/chart/import/patternWords.ts";
import { patternWords } from "../../addin/chart/import/patternWords.ts";
import { requireChart, requireRows } from "../../addin/chart/import/requireChart.ts";
import { shapeRemarks } from "../../addin/chart/import/survey.ts";
import type { LaidOutSource } from "../../addin/chart/import/source.ts";
import { detectHeadingRow, detectTurned, layOut, turn } from "../../addin/chart/import/source.ts";
import type { DecimalMark } from "../../addin/measures/decimal.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import { count } from "../ui/words.ts";
import type { ReadSource } from "./readSource.ts";
import { figureOffers, figureRemark } from "./figureOffers.ts";
import type { PatternsAround } from "./rowProblems.ts";
import { rowProblems } from "./rowProblems.ts";

/** What the user decided about the layout and the columns; what is left open is detected. */
export interface LayoutSettings {
  readonly decimalMark?: DecimalMark | undefined;
  /** Index into the rows. */
  readonly headingRow?: number | undefined;
  /** True when measures run down and figures across. */
  readonly turned?: boolean | undefined;
  readonly figureColumn?: number | undefined;
  /** The unit of columns that give no sign of theirs. */
  readonly assumedUnit?: LengthUnit | undefined;
  readonly columns: ReadonlyMap<number, ColumnChoice>;
  readonly twins: TwinChoices;
  /** What the list holds. */
  readonly what?: ImportKind | undefined;
  /** What words of a list of patterns mean. */
  readonly words?: ChosenWords | undefined;
  /** Put what could not be read into its cell as marked text, and rows that cannot be used as well; else they are left out. */
  readonly keepRefused: boolean;
}

/** A file under its headings, and what it holds. */
export interface LaidOut {
  readonly decimalMark: DecimalMark | undefined;
  readonly headingRow: number;
  readonly turned: boolean;
  readonly laidOut: LaidOutSource;
  readonly what: ImportKind;
  /** True where the file leaves no doubt, or the user has said it. */
  readonly isSure: boolean;
}

/** Everything between the rows of a file and the question “Import?”. */
export interface Prepared extends LaidOut {
  readonly columns: readonly ImportColumn[];
  readonly plan: ImportPlan;
  /** What is odd about the shape of the file, in sentences. */
  readonly remarks: readonly string[];
  /** Why nothing can be imported as things stand, in words. */
  readonly obstacle: string | undefined;
  /** The words of a list of patterns. */
  readonly words: readonly FoundWord[];
  /** What can be chosen for them; of a list of patterns. */
  readonly dictionary: Words | undefined;
  /** Patterns that cannot be used as they stand, by index into the plan’s figures, each with the reason. */
  readonly unusable: ReadonlyMap<number, string>;
}

/** Lays the rows out under their headings, and tells what they hold. */
export function layOutRead(read: ReadSource, settings: LayoutSettings): LaidOut {
  const turned = settings.turned ?? detectTurned(read.source.rows, read.source.texts);
  const source = turned ? turn(read.source) : read.source;
  const headingRow = settings.headingRow ?? detectHeadingRow(source.rows, source.texts);
  const laidOut = layOut(source, headingRow);
  const guess = kindOf(laidOut, defaultGarmentClasses);
  const what = settings.what ?? guess.kind;
  return {
    decimalMark: settings.decimalMark ?? detectDecimalMark(sampleTexts(laidOut)),
    ...{ headingRow, turned, what },
    laidOut: what === "patterns" ? withoutGroupLines(laidOut) : laidOut,
    isSure: settings.what !== undefined || guess.isSure,
  };
}

/** Matches and plans. Nothing is thrown for a bad chart: the settings stay open for mending, with the obstacle said. */
export function prepare(
  name: string,
  read: ReadSource,
  settings: LayoutSettings,
  present: PresentChart | undefined,
  laid = layOutRead(read, settings),
): Prepared {
  const { laidOut, decimalMark } = laid;
  const columns = matchColumns(laidOut, {
    decimalMark,
    chart: present?.chart,
    choices: settings.columns,
    figureColumn: settings.figureColumn,
    assumedUnit: settings.assumedUnit,
  });
  const figures = decideFigures(
    laidOut,
    columns.find((c) => c.role === "figure")?.position ?? 0,
    present?.chart.figures ?? [],
    settings.twins,
  );
  const plan = planOf({ laidOut, columns, figures, decimalMark, present });
  return {
    ...laid,
    ...{ columns, plan, words: [], dictionary: undefined, unusable: new Map() },
    remarks: shapeRemarks(plan),
    obstacle: obstacle(() => {
      requireChart(name, laidOut, columns, figures);
    }),
  };
}

/** The same for a list of patterns. */
export function preparePatterns(
  name: string,
  laid: LaidOut,
  settings: LayoutSettings,
  around: PatternsAround,
): Prepared {
  const { laidOut, decimalMark } = laid;
  const { chart, classes } = around;
  const columns = matchPatternColumns(laidOut, {
    ...{ decimalMark, classes, chart },
    choices: settings.columns,
    nameColumn: settings.figureColumn,
    assumedUnit: settings.assumedUnit,
  });
  const words = patternWords(classes, chart, settings.words);
  const bodyOf = bodyMeasures(laidOut, columns, decimalMark);
  const offers = figureOffers(bodyOf, around, settings.words);
  const all = decideFigures(
    laidOut,
    columns.find((c) => c.role === "figure")?.position ?? 0,
    presentPatternRows(around).names,
    settings.twins,
    "Pattern",
  );
  const unusable = new Map<number, string>();
  const planned = (): ImportPlan => {
    const leftOut = settings.keepRefused ? new Map<number, string>() : unusable;
    const figures = all.map((figure, i) =>
      leftOut.has(i) ? { ...figure, action: "skip" as const } : figure,
    );
    return patternPlanOf({ laidOut, columns, figures, decimalMark, present: around, words, offers });
  };
  const why = obstacle(() => {
    requireRows(name, laidOut, columns, all, "pattern");
    // Without one pattern those that are worn over it may fall out too.
    for (let found = 0; ; found = unusable.size) {
      for (const [i, reason] of rowProblems(planned(), around, settings)) unusable.set(i, reason);
      if (settings.keepRefused || unusable.size === found) return;
    }
  });
  const plan = planned();
  return {
    ...laid,
    ...{ columns, plan, unusable, dictionary: words, words: wordsFound(plan, words, offers) },
    remarks: [
      ...shapeRemarks(plan),
      ...bodyRemarks(plan, bodyOf, around),
      ...(chart.figures.length === 0
        ? [
            "There is no figure in the workbook yet. Import your figures first, so that patterns can name them.",
          ]
        : []),
    ],
    obstacle: why,
  };
}

/** Remarks of one kind that are listed; the others are counted. */
const listed = 3;

/** What the list says of bodies that its patterns are to fit, in sentences. */
function bodyRemarks(
  plan: ImportPlan,
  bodyOf: (row: number) => readonly BodyMeasure[],
  around: PatternsAround,
): readonly string[] {
  const target = plan.targets.findIndex(({ from }) => from.key === "draftedFor");
  if (target < 0) return [];
  let offered = 0;
  const against: string[] = [];
  for (const [i, { name, row }] of plan.figures.entries()) {
    const cell = plan.cell(i, target);
    const body = bodyOf(row);
    if (cell.says !== undefined) offered++;
    else if ("value" in cell && body.length > 0) {
      const remark = figureRemark({ pattern: name, figure: cellText(cell.value) }, body, around);
      if (remark !== undefined) against.push(remark);
    }
  }
  return [
    ...(offered === 0
      ? []
      : [
          `${count(offered, "pattern")} ${offered === 1 ? "says" : "say"} what body to fit, and not which figure. The one figure whose readings are within tolerance goes into Drafted for; where several are, or none, please choose under Words.`,
        ]),
    ...against.slice(0, listed),
    ...(against.length > listed ? [`So it is with ${String(against.length - listed)} more.`] : []),
  ];
}

function* sampleTexts({ source, firstRow }: LaidOutSource): Generator<string> {
  for (const row of source.rows.slice(firstRow, firstRow + 200)) yield* row.map(cellText);
}

function obstacle(check: () => void): string | undefined {
  try {
    check();
    return undefined;
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
}
