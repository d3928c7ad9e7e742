import { afterEach, describe, expect, it, vi } from "vitest";
import { InputError } from "../../../addin/measures/inputError.ts";
import type { CellContent, WorkbookContent } from "../../../addin/workbook/content.ts";
import type { Edit } from "../../../addin/workbook/port.ts";
import { summary } from "../summary.ts";
import { openExcel } from "./openExcel.ts";

const v = (value: CellContent["value"]): CellContent => ({ value });

const start: WorkbookContent = {
  sheets: [
    {
      name: "Figures",
      cells: [
        [v("Figure"), v("Bust")],
        [v("Ada"), v(136.5)],
        [v("Bela"), v(110)],
      ],
      tables: [{ name: "Figures", row: 0, column: 0, rows: 3, columns: 2 }],
    },
    { name: "Notes", cells: [[v("By tape")]] },
  ],
};
const at = (row: number, column: number, sheet = "Figures") => ({ sheet, row, column });
const write: Edit = { kind: "cells", at: at(1, 1), cells: [[v(140)]] };
const addRow: Edit = { kind: "rows", table: "Figures", rows: [["Caro", 120]] };
const addSheet: Edit = { kind: "sheet", sheet: { name: "Results", cells: [[v("A")]] } };
const onNotes: Edit = { kind: "cells", at: at(0, 0, "Notes"), cells: [[v("By eye")]] };

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("bad input is refused in plain words, and nothing is half-written", () => {
  it("an Excel without the requirement sets", async () => {
    const { double, workbook } = openExcel(start, 9);
    for (const ask of [workbook.tables(), workbook.apply("Write", [write]), workbook.readTable("Figures")])
      await expect(ask).rejects.toThrow(/too old for the pane.*Microsoft 365/);
    expect(double.host.syncs).toHaveLength(0);
  });

  it("a protected sheet, also when another one is written first", async () => {
    const { double, workbook } = openExcel(start);
    double.book.sheets[1]!.protected = true;
    const requests = double.host.syncs.length;
    await expect(workbook.apply("Write", [write, onNotes])).rejects.toThrow(
      "The sheet “Notes” is protected. Take its protection off under Review, then try again.",
    );
    expect(double.host.syncs.length - requests).toBeLessThanOrEqual(4);
    expect(summary(double.content())).toEqual(summary(start));
  });

  it("a sheet that was protected since, at undo", async () => {
    const { double, workbook } = openExcel(start);
    await workbook.apply("Write", [onNotes, write]);
    const after = summary(double.content());
    double.book.sheets[0]!.protected = true;
    await expect(workbook.undo()).rejects.toThrow(/“Figures” is protected/);
    expect(summary(double.content())).toEqual(after);
    double.book.sheets[0]!.protected = false;
    expect(await workbook.undo()).toBe("Write");
    expect(summary(double.content())).toEqual(summary(start));
  });

  it("a workbook whose structure is protected, for an action that adds a sheet and for its undo", async () => {
    const { double, workbook } = openExcel(start);
    double.book.structureProtected = true;
    await expect(workbook.apply("Add", [write, addSheet])).rejects.toThrow(
      /structure of the workbook is protected/,
    );
    expect(summary(double.content())).toEqual(summary(start));
    double.book.structureProtected = false;
    await workbook.apply("Add", [addSheet]);
    double.book.structureProtected = true;
    await expect(workbook.undo()).rejects.toThrow(/structure of the workbook is protected/);
    expect(await workbook.sheets()).toContain("Results");
  });

  it("a cell that is being edited, also when editing begins in the middle of an action", async () => {
    const whole = openExcel(start);
    await whole.workbook.apply("Write", [write, addRow]);
    for (let sync = 0; sync < whole.double.host.syncs.length; sync++) {
      const { double, workbook } = openExcel(start);
      double.host.atSync = (when, index) => {
        if (when === "after" && index === sync) double.host.editing = true;
      };
      const said = await workbook.apply("Write", [write, addRow]).then(
        () => "",
        (error: unknown) => (error instanceof InputError ? error.message : "not in words"),
      );
      expect(said, `sync ${String(sync)}`).toMatch(/^$|A cell is still being edited\. Press Enter/);
      expect(summary(double.content())).toEqual(summary(said === "" ? whole.double.content() : start));
    }
  });

  it("a table that was renamed, before an action and before its undo", async () => {
    const { double, workbook } = openExcel(start);
    double.book.tables[0]!.name = "Chart";
    await expect(workbook.apply("Add", [addRow])).rejects.toThrow(
      "There is no table “Figures” in this workbook. Its tables are “Chart”.",
    );
    expect(summary(double.content()).map(({ cells }) => cells)).toEqual(
      summary(start).map(({ cells }) => cells),
    );
    double.book.tables[0]!.name = "Figures";
    await workbook.apply("Add", [addRow]);
    double.book.tables[0]!.name = "Chart";
    await expect(workbook.undo()).rejects.toThrow(/changed since/);
    expect((await workbook.readTable("Chart")).values).toHaveLength(4);
  });

  it("a column that was renamed, in a formula", async () => {
    const { double, workbook } = openExcel(start);
    await workbook.typeInto(at(0, 1), "Bust girth");
    const formula: Edit = {
      kind: "sheet",
      sheet: { name: "Results", cells: [[{ formula: "=MAX(Figures[Bust])" }]] },
    };
    await expect(workbook.apply("Add", [write, formula])).rejects.toThrow(
      /Excel does not take a formula.*table or column that was renamed/,
    );
    expect(double.content().sheets).toHaveLength(2);
    expect((await workbook.readTable("Figures")).values[1]).toEqual(["Ada", 136.5]);
  });

  it("a sheet that was renamed, before an action and before its undo", async () => {
    const { double, workbook } = openExcel(start);
    await workbook.apply("Write", [onNotes]);
    double.book.sheets[1]!.name = "Remarks";
    await expect(workbook.undo()).rejects.toThrow(/no longer there.*renamed or deleted/);
    await expect(workbook.apply("Write", [write, onNotes])).rejects.toThrow(/There is no sheet “Notes”/);
    expect((await workbook.readTable("Figures")).values[1]).toEqual(["Ada", 136.5]);
  });
});

// Microsoft, “Set or get range values, text, and formulas”: values and formulas of the interface are in English.
describe("decimal commas", () => {
  it("are what users type, and numbers stay numbers both ways", async () => {
    const { double, workbook } = openExcel(start);
    double.book.habits.decimalComma = true;
    await workbook.typeInto(at(2, 1), "110,25");
    expect((await workbook.readTable("Figures")).values[2]).toEqual(["Bela", 110.25]);
    await workbook.apply("Write", [
      { kind: "cells", at: at(1, 1), cells: [[{ value: 136.525, format: "0.00" }]] },
      { kind: "mark", cells: [at(1, 1)], marked: true },
      { kind: "rows", table: "Figures", rows: [["Caro", "120,5"]] },
    ]);
    const { values } = await workbook.readTable("Figures");
    expect(values.slice(1)).toEqual([
      ["Ada", 136.525],
      ["Bela", 110.25],
      ["Caro", "120,5"],
    ]);
    expect(summary(double.content())[0]?.marks).toEqual({ B2: true });
    await workbook.undo();
    expect((await workbook.readTable("Figures")).values[1]).toEqual(["Ada", 136.5]);
  });
});

// Microsoft, reference of `Excel.CalculationMode`: “Manual: calculations only occur when the user or add-in requests them.”
describe("manual calculation", () => {
  it("is told, so that results that wait are not taken for results", async () => {
    const { double, workbook } = openExcel(start);
    expect(await workbook.calculatesByItself?.()).toBe(true);
    double.book.calculationMode = "Manual";
    expect(await workbook.calculatesByItself?.()).toBe(false);
  });
});
