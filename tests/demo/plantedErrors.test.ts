import { expect, it } from "vitest";
import { readChart } from "../../addin/chart/readChart.ts";
import { checkChart, flagKinds } from "../../addin/checking/checkChart.ts";
import { demoRows, figureHeadings, trueRows } from "../../addin/demo/figuresTable.ts";
import { plantedErrors } from "../../addin/demo/plantedErrors.ts";
import { fromMm } from "../../addin/measures/units.ts";
import { withCorrections } from "../checking/withCorrections.ts";

const cellsOf = (rows: ReturnType<typeof demoRows>) => [
  figureHeadings,
  ...rows.map((row) => row.map(({ value }) => value)),
];
const cells = cellsOf(demoRows());
const flags = checkChart(readChart(cells));

it("raises exactly the flags of the planted errors", () => {
  const say = (flag: { kind: string; figure: string; measure: string }) =>
    `${flag.kind}: ${flag.figure}, ${flag.measure}`;
  expect(flags.map(say).sort()).toEqual(plantedErrors.map(say).sort());
});

it("has one planted error of every other kind", () => {
  // The demo measures one side of the body, so the two sides cannot differ in it; its headings state their units, it has no estimates, and
  // its twins differ in nothing that another slip does not explain.
  const elsewhere = [
    "left and right differ",
    "unit not known",
    "unit assumed",
    "estimates",
    "unlike its twin",
  ];
  const kinds = flagKinds.filter((kind) => !elsewhere.includes(kind));
  expect(new Set(plantedErrors.map(({ kind }) => kind))).toEqual(new Set(kinds));
});

it("offers the true reading where one can be told", () => {
  for (const planted of plantedErrors) {
    const flag = flags.find(({ kind, figure }) => kind === planted.kind && figure === planted.figure);
    const suggested = flag?.suggestedMm === undefined ? undefined : fromMm(flag.suggestedMm, flag.unit);
    if (planted.suggested === undefined) expect(suggested).toBeUndefined();
    else expect(Math.abs((suggested ?? Number.NaN) - planted.suggested)).toBeLessThanOrEqual(0.5);
  }
});

it("knows the date by its format too", () => {
  const formats = [
    figureHeadings.map(() => "General"),
    ...demoRows().map((row) => row.map(({ format }) => format ?? "General")),
  ];
  const dates = readChart(cells, { formats }).problems.filter(
    ({ kind }) => kind === "date instead of a reading",
  );
  expect(dates).toHaveLength(1);
});

it("has nothing more to say once every suggestion is taken, but for what only the user can tell", () => {
  const left = checkChart(readChart(withCorrections(cells, flags)));
  const toldBefore = plantedErrors.filter(
    ({ suggested, dividedByTen }) => suggested === undefined && !dividedByTen,
  );
  expect(left.map(({ kind }) => kind).sort()).toEqual(toldBefore.map(({ kind }) => kind).sort());
});

it("raises nothing on the true chart, but the note on the figure that was made to be different", () => {
  const notes = checkChart(readChart(cellsOf(trueRows())));
  expect(notes.map(({ kind, figure }) => [kind, figure])).toEqual([["unlike the other figures", "Pommel"]]);
});
