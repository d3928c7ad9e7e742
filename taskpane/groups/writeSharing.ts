import { InputError } from "../../addin/measures/inputError.ts";
import { shares, sharesOfAll } from "../../addin/similarity/shares.ts";
import { figureAt } from "./sharing.ts";
import { shown } from "../../functions/shown.ts";
import type { Writing } from "../shell/writing.ts";
import { count } from "../ui/words.ts";
import type { FiguresToGroup, GroupsInput } from "./readGroups.ts";
import type { SheetToWrite } from "./writeSheet.ts";
import { planFormula } from "./writeSheet.ts";

/**
 * What one figure shares with another, or with all others, as the worksheet function SHARES gives it.
 *
 * @param other where the other figure stands in the chart; `undefined` for all others
 */
export function sharingSheet(
  figures: FiguresToGroup,
  place: number,
  other: number | undefined,
): SheetToWrite {
  const { chart, tolerances, garments } = figures;
  const name = figureAt(chart, place);
  if (other !== undefined) {
    const found = shares(chart, place, other, { tolerances, garments });
    const both = `${name} and ${figureAt(chart, other)}`;
    return {
      name: "Sharing of two",
      title: `What ${both} share`,
      what: `answers for ${both}`,
      values: [
        ["Part or garment", "Share", "Why", "Of tolerance"],
        ...found.map(({ what, answer, why, ofTolerance }) => [what, answer, why, shown(ofTolerance)]),
      ],
      widths: [150, 90, 560, 110],
    };
  }
  const values = sharesOfAll(chart, place, { tolerances, garments });
  return {
    name: "Loose clothes",
    title: `Who only shares loose clothes with ${name}`,
    what: `answers for ${count(values.length - 1, "figure")}`,
    values,
    widths: [128, 144, ...Array.from({ length: garments.length + 1 }, () => 200)],
  };
}

/**
 * The same as a formula.
 *
 * @throws {InputError} when estimates count, or a name stands for two figures
 */
export function planSharing(
  figures: FiguresToGroup,
  place: number,
  other: number | undefined,
  input: GroupsInput,
): Writing {
  const { chart, table, estimates } = figures;
  if (estimates.areCounted) {
    throw new InputError(
      "The formula leaves estimates out, and here they count. Switch “Count estimates too” off, or write values.",
    );
  }
  const named = [place, ...(other === undefined ? [] : [other])].map((at) => {
    const name = figureAt(chart, at);
    if (chart.figures.indexOf(name) !== at)
      throw new InputError(
        `The chart has two figures “${name}”, and a formula finds the first. Rename one of them, or write values.`,
      );
    return `"${name.replaceAll('"', '""')}"`;
  });
  return planFormula(
    sharingSheet(figures, place, other),
    {
      formula: (tolerances) => {
        const given = [`${table.name}[#All]`, ...named];
        if (tolerances !== undefined) given.push(...(other === undefined ? [""] : []), `${tolerances}[#All]`);
        return `FIT.SHARES(${given.join(", ")})`;
      },
      times: 1,
      columns: [],
      garment: undefined,
    },
    input,
    figures,
  );
}
