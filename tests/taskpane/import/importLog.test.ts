import { expect, test } from "vitest";
import { logEdits, logIn } from "../../../taskpane/import/importLog.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";

const survey = { added: 3, updated: 1, skipped: 0, readings: 12, changed: 2, missing: 1, refusals: [] };
const entry = { when: new Date(2031, 2, 4, 9, 5), from: "“spring.csv”", into: "Figures", survey };

test("an import is noted in a table of its own, the next one below, and the noting is part of the import’s undo", async () => {
  const workbook = createMemoryWorkbook({ sheets: [{ name: "Imports", cells: [[{ value: "mine" }]] }] });
  const taken = { sheets: await workbook.sheets(), tables: [] };
  await workbook.apply("Import 3 figures", logEdits(entry, undefined, taken));
  const table = logIn(await workbook.tables());
  if (!table) throw new Error("No log was begun.");
  expect(table.area.sheet).toBe("Imports 2");
  const { values } = await workbook.readTable(table.name);
  expect(values[1]).toEqual(["2031-03-04 09:05", "“spring.csv”", "Figures", 3, 1, 12, 2, 0]);
  await workbook.apply(
    "Import 1 figure",
    logEdits({ ...entry, from: "“late.csv”" }, { table, cells: values }, taken),
  );
  const after = (await workbook.readTable(table.name)).values;
  expect(after.map((row) => row[1])).toEqual(["From", "“spring.csv”", "“late.csv”"]);
  await workbook.undo();
  await workbook.undo();
  expect(await workbook.sheets()).toEqual(["Imports"]);
});
