import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo, useState } from "react";
import type { MeasureColumn } from "../../addin/chart/chart.ts";
import type { PrintScale } from "../../addin/grading/printScale.ts";
import { download, handedOver } from "../drawing/download.ts";
import { fileNameOf } from "../drawing/fileName.ts";
import { useDoubts } from "../check/useCheck.ts";
import type { FiguresToGroup } from "../groups/readGroups.ts";
import { DoubtBox } from "../ui/DoubtWords.tsx";
import { Part } from "../ui/Part.tsx";
import type { Saving } from "../saving/SaveBox.tsx";
import { SaveBox } from "../saving/SaveBox.tsx";
import { useSession } from "../shell/session.ts";
import { WriteBox } from "../shell/WriteBox.tsx";
import type { MeasuresFor } from "./countedMeasures.ts";
import { DartsPart } from "./DartsPart.tsx";
import { hasDarts } from "./dartsView.ts";
import { diagramWords } from "./diagramWords.ts";
import { FlarePart } from "./FlarePart.tsx";
import type { PieceChoice } from "./garments.ts";
import type { GradedPiece } from "./gradedPieces.ts";
import { gradeDoubts } from "./gradeDoubts.ts";
import { gradedPieces } from "./gradedPieces.ts";
import { pageWords } from "./papers.ts";
import { PiecePart } from "./PiecePart.tsx";
import { PrintPart, ResidualPart } from "./PrintPart.tsx";
import { printView } from "./printView.ts";
import type { GradingInput } from "./readGrading.ts";
import { RunPart } from "./RunPart.tsx";
import { runView } from "./runView.ts";
import { trueSizePage } from "./trueSize.ts";
import { Verdict } from "./Verdict.tsx";
import { planGrade } from "./writeGrade.ts";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
  button: { alignSelf: "flex-start" },
});

const forms = {
  formulas: "As formulas that follow every change",
  values: "As words and numbers that stay as they are",
} as const;

/** All that is said about going from one figure to another: the print scale, then the pieces. */
export function PairAnswers(props: {
  readonly input: GradingInput;
  readonly figures: FiguresToGroup;
  /** Rows of the chart. */
  readonly pair: { readonly base: number; readonly target: number; readonly more: readonly number[] };
  readonly pieces: PieceChoice;
  readonly measures: { readonly which: MeasuresFor; readonly columns: readonly MeasureColumn[] };
  readonly scale: PrintScale;
  readonly asked: number;
}): ReactNode {
  const styles = useStyles();
  const { input, figures, pair, pieces, measures, scale, asked } = props;
  const { chart } = figures;
  const { ruleSet } = input;
  const { base, target, more } = pair;
  const [allowance, setAllowance] = useState("");
  const view = useMemo(() => printView(scale), [scale]);
  const graded = useMemo(
    () => gradedPieces(chart, ruleSet.rules, pieces.pieces, base, target),
    [chart, ruleSet, pieces, base, target],
  );
  const names = { base: chart.figures[base] ?? "", target: chart.figures[target] ?? "" };
  const garments = [...new Set(graded.map(({ garment }) => garment))];
  const targets = [target, ...more];

  const doubtful = useDoubts(figures.table, chart);
  const doubts = useMemo(() => {
    if (!doubtful) return [];
    const asked = { chart, base, targets: [target, ...more], columns: measures.columns };
    const by = { rules: ruleSet.rules, pieces: pieces.pieces, tolerances: figures.tolerances };
    return gradeDoubts({ ...asked, ...by }, doubtful);
  }, [chart, base, target, more, measures, ruleSet, pieces, figures, doubtful]);

  return (
    <>
      <Verdict view={view} />
      <DoubtBox says={doubts} />
      <PrintPart view={view} allowance={allowance} onAllowance={setAllowance} />
      <ResidualPart view={view} />
      {more.length > 0 && (
        <RunPart view={runView(chart, { base, targets }, measures.columns, figures.tolerances)} />
      )}
      <Part title="How the pieces change">
        <p className={styles.quiet}>{diagramWords}</p>
        {graded.map((piece) => (
          <PiecePart
            key={piece.name}
            piece={piece}
            together={graded.filter(({ garment }) => garment === piece.garment)}
            {...names}
          />
        ))}
        <SavePieces pieces={graded} what={pieces.words} {...names} />
      </Part>
      {garments.filter(hasDarts).map((garment) => (
        <DartsPart key={garment} chart={chart} garment={garment} figures={[base, target]} />
      ))}
      {garments.includes("Flared skirt") && (
        <FlarePart chart={chart} figures={[base, target]} unit={view.unit} allowance={allowance} />
      )}
      <WriteBox
        forms={forms}
        asked={asked}
        plan={(form) =>
          planGrade(form, {
            ...{ chart, base, targets, allowance: allowance.trim(), sheets: input.sheets },
            figures: { name: figures.table.name, values: figures.data.values },
            tolerances: input.toleranceCells,
            rules: ruleSet.cells,
            pieces: pieces.name,
            measures: measuresWritten(measures, pieces.name, ruleSet.cells !== undefined),
          })
        }
      />
    </>
  );
}

/** As a formula names the measures that count: by the garment or piece where it can. */
function measuresWritten(
  { which, columns }: { readonly which: MeasuresFor; readonly columns: readonly MeasureColumn[] },
  pieces: string | undefined,
  hasOwnRules: boolean,
): readonly string[] | undefined {
  if (which === "body") return undefined;
  if (which === "pieces" && pieces !== undefined && !hasOwnRules) return [pieces];
  return columns.map(({ heading }) => heading);
}

/** Saves the chosen pieces on one page that prints true to size. */
function SavePieces(props: {
  readonly pieces: readonly GradedPiece[];
  readonly what: string;
  readonly base: string;
  readonly target: string;
}): ReactNode {
  const styles = useStyles();
  const { say, services } = useSession();
  const { pieces, what, base, target } = props;
  const [saving, setSaving] = useState<Saving>();
  const drawn = pieces.filter(({ outlines }) => outlines.corners.length > 0);
  const unit = drawn[0]?.unit;
  if (unit === undefined) return null;
  const page = trueSizePage(drawn, { base, target, unit });
  return (
    <>
      <p className={styles.text}>
        To print them: all pieces on one page, true to size, with a test square to measure.{" "}
        {pageWords(page, unit)}
      </p>
      <Button
        className={styles.button}
        onClick={() => {
          const name = fileNameOf("grade", what, base, target);
          if (services.keepsDownloads) {
            download(`${name}.svg`, page.text, "image/svg+xml");
            say({ kind: "done", text: `${handedOver(`${name}.svg`)} Print it at 100 %.` });
          } else setSaving({ name, svg: page.text, as: "svg" });
        }}
      >
        Save the pieces true to size
      </Button>
      {saving && (
        <SaveBox
          saving={saving}
          onClose={() => {
            setSaving(undefined);
          }}
        />
      )}
    </>
  );
}
