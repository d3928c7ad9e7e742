import { IFunctionService } from "@univerjs/engine-formula";
import { describe, expect, it } from "vitest";
import { limits } from "../../../addin/workbook/limits.ts";
import { askingFunctions } from "../../../addin/workbook/keptFormula.ts";
import { readXlsx } from "../../../addin/workbook/xlsx/readXlsx.ts";
import { hostileFiles } from "../../workbook/xlsx/hostile/hostileFiles.ts";
import type { HeadlessGrid } from "./headless.ts";
import { openHeadless } from "./headless.ts";

const opening = hostileFiles.filter(({ refused, isHeavy }) => !refused && !isHeavy);
const first = { sheet: "First", row: 0, column: 0 };

async function opened(name: string): Promise<HeadlessGrid> {
  const file = hostileFiles.find((each) => each.name === name);
  if (!file) throw new Error(`There is no file “${name}”.`);
  const grid = openHeadless(await readXlsx(file.make()));
  await grid.calculated();
  return grid;
}

async function valueOf(formula: string): Promise<{ value: unknown; message: string | undefined }> {
  const grid = openHeadless({ sheets: [{ name: "First", cells: [[{ formula }]] }] });
  await grid.calculated();
  const { values } = await grid.workbook.readArea({ ...first, rows: 1, columns: 1 });
  const message = grid.workbook.errorAt(first);
  grid.close();
  return { value: values[0]?.[0], message };
}

describe("a hostile workbook in the grid", () => {
  it.each(opening)(
    "is calculated to an end: $name",
    async ({ make }) => {
      const content = await readXlsx(make());
      const grid = openHeadless(content);
      const hasFormula = content.sheets.some(({ cells }) =>
        cells.some((row) => row.some((cell) => cell?.formula)),
      );
      if (hasFormula) await grid.calculated();
      // The engine still answers afterwards.
      const cells = [[{ formula: "=SUM(1,2)" }]];
      const done = grid.calculated();
      await grid.workbook.apply("Add", [{ kind: "cells", at: { sheet: "First", row: 0, column: 5 }, cells }]);
      await done;
      const { values } = await grid.workbook.readArea({ ...first, column: 5, rows: 1, columns: 1 });
      expect(values).toEqual([[3]]);
      grid.close();
    },
    30_000,
  );
});

describe("a function that would give too much", () => {
  // Microsoft, “Excel specifications and limits”: a cell holds 32,767 characters. The others are limits of ours.
  it.each([
    ['=REPT("x",32768)', "REPT would give a text of 32,768 characters; a cell holds 32,767."],
    [
      "=SEQUENCE(1048576,16384)",
      "SEQUENCE would give 1,048,576 rows by 16,384 columns; at most 1,000,000 cells are possible.",
    ],
    [
      "=RANDARRAY(2000,2000)",
      "RANDARRAY would give 2,000 rows by 2,000 columns; at most 1,000,000 cells are possible.",
    ],
    ["=MUNIT(2000)", "MUNIT would give 2,000 rows by 2,000 columns; at most 1,000,000 cells are possible."],
    [
      "=EXPAND(1,1000000,2,0)",
      "EXPAND would give 1,000,000 rows by 2 columns; at most 1,000,000 cells are possible.",
    ],
    [
      "=MAKEARRAY(10000,10000,LAMBDA(r,c,r*c))",
      "MAKEARRAY would give 10,000 rows by 10,000 columns; at most 1,000,000 cells are possible.",
    ],
    [
      '=SUBSTITUTE(REPT("a",30000),"a",REPT("b",30000))',
      "SUBSTITUTE would give a text of 900,000,000 characters; a cell holds 32,767.",
    ],
  ])("is not begun: %s", async (formula, message) => {
    expect(await valueOf(formula)).toEqual({ value: { error: "#VALUE!" }, message });
  });

  it.each([
    ['=LEN(REPT("x",32767))', 32_767],
    ["=SUM(SEQUENCE(900,100))", 4_050_045_000],
    ["=ROWS(VSTACK(SEQUENCE(10),SEQUENCE(10)))", 20],
  ])("is begun within the limits: %s", async (formula, value) => {
    expect(await valueOf(formula)).toEqual({ value, message: undefined });
  });
});

it("stops texts that double from cell to cell, and says why", async () => {
  const grid = await opened("texts that double 40 times");
  const { values } = await grid.workbook.readArea({ ...first, rows: 20, columns: 1 });
  expect(String(values[11]?.[0])).toHaveLength(2 ** 11);
  // Of a longer word the cell keeps the beginning; the next formula still has it whole, as the message below tells.
  expect(String(values[14]?.[0])).toHaveLength(limits.word);
  expect(values[15]?.[0]).toEqual({ error: "#VALUE!" });
  expect(grid.workbook.errorAt({ ...first, row: 15 })).toBe(
    "CONCATENATE gives a text of 32,768 characters; a cell holds 32,767.",
  );
  grid.close();
});

it("has no function that asks another computer", async () => {
  const grid = openHeadless({ sheets: [{ name: "First", cells: [[{ formula: "=1" }]] }] });
  await grid.calculated();
  const names = [...grid.unit.injector.get(IFunctionService).getExecutors().keys()].map(String);
  expect(names.length).toBeGreaterThan(400);
  expect(names.filter((name) => askingFunctions.includes(name))).toEqual([]);
  grid.close();
});
