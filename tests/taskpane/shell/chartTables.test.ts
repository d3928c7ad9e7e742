import { expect, it } from "vitest";
import { chartTables } from "../../../taskpane/shell/chartTables.ts";

const table = (name: string, ...headings: string[]) => ({
  name,
  headings,
  area: { sheet: "Sheet1", row: 0, column: 0, rows: 2, columns: headings.length },
});
const namesOf = (...tables: ReturnType<typeof table>[]) => chartTables(tables).map(({ name }) => name);

it("takes tables of names with at least one known measure, in any unit", () => {
  const charts = [table("Old", "Doll", "Maker", "Waist"), table("New", "Name", "Bust (in)", "Mood")];
  expect(namesOf(...charts)).toEqual(["Old", "New"]);
});

it("leaves out tables without measures, and those that begin with one", () => {
  const others = [
    table("Prices", "Figure", "Price"),
    table("Turned", "Waist", "Hip"),
    table("Names", "Figure"),
  ];
  expect(namesOf(...others)).toEqual([]);
});

it("leaves out tables of patterns and tolerances, whatever they are called", () => {
  const others = [
    table("A", "Pattern", "Garment class", "Finished bust (mm)", "Bust (mm)"),
    table("B", "Measure", "Tolerance", "Waist"),
  ];
  expect(namesOf(...others)).toEqual([]);
});

it("keeps the table Figures, so that what is wrong with it is said", () => {
  expect(namesOf(table("Figures", "Figure", "Price"))).toEqual(["Figures"]);
});
