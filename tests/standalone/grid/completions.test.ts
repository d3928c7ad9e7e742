import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { IDescriptionService } from "@univerjs/sheets-formula";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { completeMore } from "../../../addin/standalone/grid/completions.ts";
import { functionHelp } from "../../../addin/standalone/grid/gridFunctions.ts";
import { descriptors } from "../../../functions/all.ts";
import type { HeadlessGrid } from "./headless.ts";
import { openHeadless } from "./headless.ts";

describe("completing what is typed in a formula", () => {
  let grid: HeadlessGrid;
  let names: (typed: string) => string[];

  beforeEach(() => {
    const headings = ["Figure", "Bust (mm)", "Waist (mm)", "High bust", "Note [1]"];
    grid = openHeadless({
      sheets: [
        {
          name: "Chart",
          cells: [headings.map((value) => ({ value })), [{ value: "Ardwen" }]],
          tables: [{ name: "Figures", row: 0, column: 0, rows: 2, columns: headings.length }],
        },
      ],
    });
    const descriptions = grid.unit.injector.get(IDescriptionService);
    descriptions.registerDescriptions(descriptors.map(functionHelp));
    completeMore(grid.unit);
    names = (typed) => descriptions.getSearchListByNameFirstLetter(typed).map(({ name }) => name);
  });
  afterEach(() => {
    grid.close();
  });

  it("names the columns of a table after its bracket, those that begin so first", () => {
    expect(names("Figures[")).toEqual([
      "Figures[#All]",
      "Figures[Figure]",
      "Figures[Bust (mm)]",
      "Figures[Waist (mm)]",
      "Figures[High bust]",
    ]);
    expect(names("figures[bu")).toEqual(["Figures[Bust (mm)]", "Figures[High bust]"]);
    expect(names("Figures[zz")).toEqual([]);
    expect(names("Nothing[")).toEqual([]);
  });

  // The grid looks up the part of the formula that the cursor stands behind.
  it.each(["Figures[", "Figures[#", "Figures[Bust (m", "Figures[High bu"])(
    "looks up “%s” as a whole",
    (typed) => {
      const parts = grid.unit.injector.get(LexerTreeBuilder).sequenceNodesBuilder(`=SUM(${typed}`);
      expect(parts?.at(-1)).toMatchObject({ token: typed });
      expect(parts).toHaveLength(3);
    },
  );

  it("names every function by its whole name and by what stands after the point", () => {
    for (const { name } of descriptors) {
      expect(names(`FIT.${name}`)).toContain(`FIT.${name}`);
      expect(names(name.slice(0, 3).toLowerCase())).toContain(`FIT.${name}`);
    }
    expect(names("SUMI")).toContain("SUMIF");
  });
});

it("helps with each argument: what it means, whether it may be left out, and how it is written", () => {
  for (const descriptor of descriptors) {
    const { functionParameter, functionName } = functionHelp(descriptor);
    expect(functionParameter.map(({ name }) => name)).toEqual(descriptor.parameters.map(({ name }) => name));
    const call = `${functionName}(${functionParameter.map(({ example }) => example).join(", ")})`;
    expect(call.replace(/(, )+\)$/, ")")).toBe(descriptor.examples[0]?.formula);
  }
});
