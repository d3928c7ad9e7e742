import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { lengthWords } from "../../addin/measures/lengthWords.ts";
import { DrawingFrame } from "../drawing/DrawingFrame.tsx";
import { fileNameOf } from "../drawing/fileName.ts";
import type { GradedPiece } from "./gradedPieces.ts";
import { acrossWords, alongWords } from "./movementWords.ts";
import { PieceDrawing } from "./PieceDrawing.tsx";
import { screenScale } from "./screenLabels.ts";
import { trueSizePage } from "./trueSize.ts";

const useStyles = makeStyles({
  piece: { display: "flex", flexDirection: "column", gap: "8px" },
  name: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600 },
  text: { margin: 0, overflowWrap: "anywhere" },
  list: { margin: 0, paddingLeft: "24px" },
});

/** One piece: its drawing and where every point goes; what has to be measured first where it cannot be drawn. */
export function PiecePart(props: {
  readonly piece: GradedPiece;
  /** All pieces of its garment that are shown: they are drawn to one scale. */
  readonly together: readonly GradedPiece[];
  readonly base: string;
  readonly target: string;
}): ReactNode {
  const styles = useStyles();
  const { piece, together, base, target } = props;
  const points = (
    <ol className={styles.list} aria-label={`Where the points of the ${piece.name.toLowerCase()} go`}>
      {piece.points.map(({ point, words }) => (
        <li key={point}>
          {point}: {words}
        </li>
      ))}
    </ol>
  );
  if (piece.outlines.corners.length === 0) {
    return (
      <section className={styles.piece}>
        <h3 className={styles.name}>{piece.name}</h3>
        <p className={styles.text}>It cannot be drawn yet. {piece.missing.join(" ")}</p>
        {points}
      </section>
    );
  }
  return (
    <section className={styles.piece}>
      <DrawingFrame
        title={piece.name}
        description={descriptionOf(piece, base, target)}
        fileName={fileNameOf("grade", piece.name, base, target)}
        table={tableOf(piece)}
        exportSvg={() => trueSizePage([piece], { base, target, unit: piece.unit }).text}
      >
        {(width) => (
          <PieceDrawing
            piece={piece}
            base={base}
            target={target}
            width={width}
            perMm={screenScale(
              together.map(({ outlines }) => outlines),
              width,
            )}
          />
        )}
      </DrawingFrame>
      {points}
    </section>
  );
}

function descriptionOf({ points, outlines }: GradedPiece, base: string, target: string): string {
  const furthest = points.reduce<(typeof points)[number] | undefined>((far, each) => {
    const size = ({ movement }: typeof each) => Math.hypot(movement.acrossMm, movement.alongMm);
    return far === undefined || size(each) > size(far) ? each : far;
  }, undefined);
  const moves =
    !furthest || furthest.words === "stays"
      ? "No point moves."
      : `${furthest.point} moves furthest: ${furthest.words}.`;
  return `${base} dashed, ${target} solid, over each other at the + (${outlines.origin}). ${moves}`;
}

function tableOf({ points, outlines, unit }: GradedPiece) {
  const spot = (at: readonly [number, number] | undefined): string =>
    at ? `${lengthWords(at[0], unit)} across, ${lengthWords(at[1], unit)} up` : "";
  return {
    headings: ["Point", "Across", "Along", "On the base", "On the target"],
    rows: points.map(({ point, movement, base }, i) => [
      `${String(i + 1)} ${point}`,
      acrossWords(movement.acrossMm, base.acrossMm, unit) || "stays",
      alongWords(movement.alongMm, unit) || "stays",
      spot(outlines.corners[i]?.base),
      spot(outlines.corners[i]?.target),
    ]),
  };
}
