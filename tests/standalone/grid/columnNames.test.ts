import { describe, expect, it } from "vitest";
import { canBeNamed, withColumnNames } from "../../../addin/standalone/grid/columnNames.ts";

// How references to tables are written: Microsoft, “Using structured references with Excel tables”.
describe("a column that has another name now", () => {
  it.each([
    ["=SUM(Figures[Bust])", "=SUM(Figures[Chest])"],
    ["=SUM(figures[Bust])", "=SUM(figures[Chest])"],
    ["=Figures[[#This Row],[Bust]]/2", "=Figures[[#This Row],[Chest]]/2"],
    ["=SUM(Figures[[Bust]:[Hip]])", "=SUM(Figures[[Chest]:[Hip]])"],
    ["=SUM(Figures[[#All],[Bust]],Figures[Waist])", "=SUM(Figures[[#All],[Chest]],Figures[Waist])"],
    ['=Figures[Bust]&"Figures[Bust]"', '=Figures[Chest]&"Figures[Bust]"'],
    ["=SUM(Others[Bust])", "=SUM(Others[Bust])"],
    ["=SUM(MyFigures[Bust])", "=SUM(MyFigures[Bust])"],
    ["=FIT.FLAGS(Figures[#All])", "=FIT.FLAGS(Figures[#All])"],
    ["=SUM(Figures[High Bust])", "=SUM(Figures[High Bust])"],
  ])("is called so in %s", (formula, after) => {
    expect(withColumnNames(formula, "Figures", new Map([["Bust", "Chest"]]))).toBe(after);
  });

  it("may change places with another one", () => {
    const names = new Map([
      ["Bust", "Hip"],
      ["Hip", "Bust"],
    ]);
    expect(withColumnNames("=Figures[Bust]-Figures[Hip]", "Figures", names)).toBe(
      "=Figures[Hip]-Figures[Bust]",
    );
  });

  it("cannot be named with signs of the notation itself", () => {
    expect(["Bust (mm)", "Bust, high", "", "A [1]", "No#", "’25"].filter(canBeNamed)).toEqual([
      "Bust (mm)",
      "Bust, high",
      "’25",
    ]);
  });
});
