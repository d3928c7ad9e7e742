import type { Cells } from "../../../addin/chart/cell.ts";
import type { Chart } from "../../../addin/chart/chart.ts";
import { defaultGradeRules, gradePieces } from "../../../addin/chart/gradeBlocks.ts";
import { readChart } from "../../../addin/chart/readChart.ts";
import type { GradedPiece } from "../../../taskpane/grade/gradedPieces.ts";
import { gradedPieces } from "../../../taskpane/grade/gradedPieces.ts";

/** Invented figures; lengths in mm. Brae is Ardmoor at 110 %; Corrie is slimmer at the hip; Dell lacks a hip. */
export const figures: Cells = [
  ["Figure", "Height", "Bust", "Waist", "Hip", "Waist to hip", "Waist to knee"],
  ["Ardmoor", 400, 180, 140, 200, 44, 140],
  ["Brae", 440, 198, 154, 220, 48.4, 154],
  ["Corrie", 440, 190, 150, 190, 50, 160],
  ["Dell", 440, 198, 154, undefined, 48.4, 154],
];

export const chart: Chart = readChart(figures);

export function piecesOf(garment: string, base: number, target: number): readonly GradedPiece[] {
  const wanted = gradePieces.filter((piece) => piece.garment === garment || piece.name === garment);
  return gradedPieces(chart, defaultGradeRules, wanted, base, target);
}
