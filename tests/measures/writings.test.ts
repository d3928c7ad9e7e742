import { describe, expect, it } from "vitest";
import { matchColumns } from "../../addin/chart/import/columns.ts";
import { decideFigures } from "../../addin/chart/import/figures.ts";
import { planOf } from "../../addin/chart/import/importPlan.ts";
import { layOut } from "../../addin/chart/import/source.ts";
import { textReader } from "../../addin/chart/import/texts.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { unitOfFraction } from "../../addin/chart/unitsOfColumns.ts";
import { InputError } from "../../addin/measures/inputError.ts";
import { parseReading } from "../../addin/measures/parseReading.ts";
import type { LengthUnit } from "../../addin/measures/units.ts";
import { lengthUnits, mmPerUnit } from "../../addin/measures/units.ts";
import { lengthFunction } from "../../functions/length.ts";
import type { Writing } from "./writings.ts";
import { writings } from "./writings.ts";

/** mm, or why not. */
type Read = number | "refused" | "missing";

const all = writings();

function expected({ means }: Writing, unit: LengthUnit): Read {
  if (means === "refused") return means;
  return "mm" in means ? means.mm : means.bare * mmPerUnit[unit];
}

function isRight(read: Read, wanted: Read): boolean {
  return typeof read === "number" && typeof wanted === "number"
    ? Math.abs(read - wanted) <= 1e-6 * Math.max(1, wanted)
    : read === wanted;
}

/** Writings that are read as something else than they say, and those that say one length and are refused. */
function wrong(read: (writing: Writing) => Read, unit: LengthUnit = "mm") {
  const off = all.filter((writing) => !isRight(read(writing), expected(writing, unit)));
  const say = (writing: Writing) =>
    `${writing.kind}: ${JSON.stringify(writing.text)} as ${String(read(writing))}`;
  return {
    misread: off.filter((writing) => typeof read(writing) === "number").map(say),
    refused: off.filter((writing) => typeof read(writing) !== "number").map(say),
  };
}

describe("writings with their own meaning", () => {
  it("are more than three thousand, of every kind", () => {
    expect(all.length).toBeGreaterThan(3000);
    expect(new Set(all.map(({ text }) => text)).size).toBeGreaterThan(2500);
    expect(new Set(all.map(({ kind }) => kind)).size).toBe(26);
  });

  it.each(lengthUnits)("are read as they are meant where %s are assumed, and never otherwise", (unit) => {
    expect(
      wrong(({ text }) => {
        const reading = parseReading(text, { unit, fractionUnit: unitOfFraction });
        return reading.kind === "length" ? reading.mm : reading.kind;
      }, unit),
    ).toEqual({ misread: [], refused: [] });
  });
});

describe("the worksheet function LENGTH, a chart and Import agree on every writing", () => {
  it("LENGTH", () => {
    const read = ({ text }: Writing): Read => {
      try {
        const mm = lengthFunction.compute([text, "mm", null]);
        return typeof mm === "number" ? mm : "missing";
      } catch (error) {
        if (error instanceof InputError) return "refused";
        throw error;
      }
    };
    // It shows lengths to a thousandth of a millimetre.
    const off = all.filter((writing) => {
      const [is, wanted] = [read(writing), expected(writing, "mm")];
      return typeof is === "number" && typeof wanted === "number"
        ? Math.abs(is - wanted) > 6e-4
        : is !== wanted;
    });
    expect(off).toEqual([]);
  });

  it("a chart whose heading states no unit", () => {
    const cells = [["Figure", "Wing span"], ...all.map(({ text }, i) => [`F${String(i)}`, text])];
    const chart = readChart(cells);
    const refused = new Set(
      chart.problems.flatMap(({ kind, row }) => (kind === "refused reading" ? [row] : [])),
    );
    const at = new Map(all.map((writing, i) => [writing, i]));
    const [column] = chart.measures;
    const unit = column?.unit ?? "mm";
    expect(
      wrong((writing) => {
        const i = at.get(writing) ?? -1;
        return refused.has(i + 1) ? "refused" : (column?.mm[i] ?? "missing");
      }, unit),
    ).toEqual({ misread: [], refused: [] });
  });

  it("Import of the same chart", () => {
    const rows = [["Figure", "Wing span"], ...all.map(({ text }, i) => [`F${String(i)}`, text])];
    const laidOut = layOut({ rows, numbers: rows.map((_, i) => i + 1), texts: textReader() }, 0);
    const decimalMark = undefined;
    const columns = matchColumns(laidOut, { decimalMark });
    const unit = columns[1]?.unit ?? "mm";
    expect(unit).toBe(readChart(rows).measures[0]?.unit);
    const figures = decideFigures(laidOut, 0, [], { inChart: "skip", inFile: "skip" });
    const plan = planOf({ laidOut, columns, figures, decimalMark, present: undefined });
    const at = new Map(all.map((writing, i) => [writing, i]));
    expect(
      wrong((writing) => {
        const cell = plan.cell(at.get(writing) ?? -1, 1);
        if (cell.kind === "refused") return "refused";
        return cell.kind === "new" && typeof cell.value === "number"
          ? cell.value * mmPerUnit[unit]
          : "missing";
      }, unit),
    ).toEqual({ misread: [], refused: [] });
  });
});
