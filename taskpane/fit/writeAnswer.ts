import { explainPair } from "../../addin/fit/explainPair.ts";
import type { Fitting } from "../../addin/fit/match.ts";
import { areaName } from "../../addin/workbook/address.ts";
import type { CellContent } from "../../addin/workbook/content.ts";
import { verdictLook } from "../../addin/workbook/verdictCells.ts";
import type { Table } from "../../functions/descriptor.ts";
import { told, toldHeadings } from "../../functions/listed.ts";
import { reasons } from "../../functions/reasons.ts";
import { freeName } from "../shell/freeName.ts";
import type { ColumnLook, Writing, WritingForm } from "../shell/writing.ts";
import { followed, headingRow, resultSheet, startOn, tenths } from "../shell/writing.ts";
import type { Pair, RankedPair } from "./ranking.ts";
import type { Fit } from "./readFit.ts";
import { fitFormula } from "./writeMatrix.ts";

/** A question about one pattern or one figure, or both, with what stands on the screen. */
export type Asked =
  | { readonly kind: "wearers" | "wardrobe"; readonly pair: Pair; readonly shown: readonly RankedPair[] }
  | { readonly kind: "why"; readonly pair: Pair };

/** The answer as a sheet gives it. */
interface Answer {
  readonly name: string;
  readonly title: string;
  readonly function: string;
  /** What the formula names beside the tables. */
  readonly asked: readonly string[];
  readonly rows: Table;
  readonly widths: readonly number[];
}

/** Column widths in pixels, so that the answer is on the screen beside its question. */
const widths = { name: 112, title: 168, verdict: 136, place: 168, number: 92, words: 400 } as const;

/** Plans a new sheet with the answer to a question: as a formula, or as it stands on the screen. */
export function planAnswer(
  form: WritingForm,
  asked: Asked,
  fit: Pick<Fit, "sheets"> & Parameters<typeof fitFormula>[1],
  fitting: Fitting,
): Writing {
  const answer = answerTo(asked, fitting);
  const name = freeName(answer.name, fit.sheets);
  const { rows, title } = answer;
  const columns = rows[0]?.length ?? 0;
  const where = `${areaName({ row: headingRow, column: 0, rows: rows.length, columns })} of the new sheet “${name}”`;
  const formula = form === "formulas" ? fitFormula(answer.function, fit, answer.asked) : undefined;
  return {
    label: `Write: ${title}`,
    preview:
      formula === undefined
        ? `Writes what is on the screen into ${where}.`
        : `Writes ${formula} into A${String(headingRow + 1)}; it fills ${where}.`,
    done: `“${title}” is on the sheet “${name}”.`,
    at: startOn(name),
    edits: () => [
      {
        kind: "sheet",
        sheet: resultSheet({
          name,
          title,
          says:
            formula === undefined
              ? "As judged when it was written; it does not follow later changes."
              : "Follows every change of the patterns and figures.",
          cells:
            formula === undefined
              ? asCells(rows)
              : followed(formula, { rows: rows.length, looks: looksOf(rows) }),
          columnWidths: answer.widths,
        }),
      },
    ],
  };
}

function answerTo(asked: Asked, fitting: Fitting): Answer {
  const { pattern, figure } = asked.pair;
  const compiled = fitting.patterns[pattern]?.pattern;
  const code = compiled?.code ?? "";
  const figureName = fitting.view.chart.figures[figure] ?? "";
  const toldWidths = [widths.verdict, widths.place, widths.number, widths.words];
  switch (asked.kind) {
    case "wearers":
      return {
        ...{ name: "Wearers", title: `Who wears ${code}`, function: "WEARERS", asked: [code] },
        rows: [
          ["Figure", ...toldHeadings],
          ...asked.shown.map(({ explanation }) => [explanation.figure, ...told(explanation, "")]),
        ],
        widths: [widths.name, ...toldWidths],
      };
    case "wardrobe":
      return {
        ...{
          name: "Wardrobe",
          title: `What ${figureName} can wear`,
          function: "WARDROBE",
          asked: [figureName],
        },
        rows: [
          ["Pattern", "Title", ...toldHeadings],
          ...asked.shown.map(({ explanation, pattern: shown }) => [
            explanation.pattern,
            fitting.patterns[shown]?.pattern.title ?? "",
            ...told(explanation, ""),
          ]),
        ],
        widths: [widths.name, widths.title, ...toldWidths],
      };
    case "why":
      return {
        ...{ name: "Why", title: `${code} on ${figureName}`, function: "REASONS", asked: [code, figureName] },
        rows: reasons(explainPair(fitting, pattern, figure)),
        widths: [220, ...Array.from({ length: 3 }, () => widths.number), 260, widths.words],
      };
  }
}

/** Columns of lengths and of verdicts by what stands in them. */
function looksOf([headings = [], ...rows]: Table): readonly ColumnLook[] {
  return headings.map((_, column) => {
    const values = rows.map((row) => row[column]);
    if (values.some((value) => typeof value === "number")) return tenths;
    return values.some((value) => typeof value === "string" && verdictLook(value)) ? "verdicts" : undefined;
  });
}

/** A blank stays empty; lengths have the tenth that a tape shows. */
function asCells([headings = [], ...rows]: Table): readonly (readonly (CellContent | undefined)[])[] {
  return [
    headings.map((value): CellContent => ({ value, style: "heading" })),
    ...rows.map((row) =>
      row.map((value): CellContent | undefined =>
        value === ""
          ? undefined
          : typeof value === "number"
            ? { value, ...tenths }
            : verdictLook(String(value))
              ? { value, style: "verdict" }
              : { value },
      ),
    ),
  ];
}
