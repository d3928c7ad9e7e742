import { afterEach, describe, expect, it, vi } from "vitest";
import type { WorkbookContent } from "../../../addin/workbook/content.ts";
import type { Edit } from "../../../addin/workbook/port.ts";
import { ExcelRefusal } from "../excelDouble/book.ts";
import { summary } from "../summary.ts";
import { openExcel } from "./openExcel.ts";

const start: WorkbookContent = {
  sheets: [{ name: "Figures", cells: [[{ value: "Figure" }], [{ value: "Ada" }]] }],
};
const at = { sheet: "Figures", row: 1, column: 0 };
const addSheet: Edit = { kind: "sheet", sheet: { name: "Results", cells: [[{ value: "A" }]] } };

afterEach(() => {
  vi.unstubAllGlobals();
});

// Microsoft, “Undo support with the Excel JavaScript API”: `Worksheet.delete` cannot be undone, and what cannot be undone
// throws `UndoNotSupported` inside a group.
describe("one step of Excel’s own undo list", () => {
  it("is asked for when an action is done, and never when one is taken back", async () => {
    const { double, workbook } = openExcel(start);
    await workbook.apply("Add", [addSheet]);
    expect(double.runs.map(({ mergeUndoGroup }) => mergeUndoGroup)).toEqual([true]);
    expect(await workbook.undo()).toBe("Add");
    expect(double.runs.slice(1).every(({ mergeUndoGroup }) => !mergeUndoGroup)).toBe(true);
    expect(summary(double.content())).toEqual(summary(start));
  });

  it("is not needed for taking back an action that broke off after a sheet was added", async () => {
    const { double, workbook } = openExcel(start);
    double.host.beforeOperation = (label) => {
      // A refusal that users can mend is not tried again.
      if (label.startsWith("set content") || label.startsWith("freeze"))
        throw new ExcelRefusal("NonBlankCellOffSheet", "Cells would be pushed off.");
    };
    const freeze: Edit = { kind: "freeze", sheet: "Figures", rows: 1, columns: 0 };
    await expect(workbook.apply("Add", [addSheet, freeze])).rejects.toThrow(/Filled cells would be pushed/);
    expect(summary(double.content())).toEqual(summary(start));
    expect(double.runs).toHaveLength(2);
  });

  it.each(["UndoNotSupported", "GeneralException"])(
    "is done without where grouping fails (%s), with nothing left of the first try",
    async (code) => {
      const { double, workbook } = openExcel(start);
      let isFirst = true;
      double.host.atSync = (when) => {
        const isGroup = double.runs.at(-1)?.mergeUndoGroup === true;
        if (when === "after" && isGroup && isFirst && double.content().sheets.length > 1) {
          isFirst = false;
          throw new ExcelRefusal(code, "The step cannot be grouped.");
        }
      };
      await workbook.apply("Add", [addSheet]);
      expect(double.runs.map(({ mergeUndoGroup }) => mergeUndoGroup === true)).toEqual([true, false, false]);
      expect(await workbook.sheets()).toEqual(["Figures", "Results"]);
      expect(await workbook.undo()).toBe("Add");
      expect(summary(double.content())).toEqual(summary(start));
    },
  );

  // office-js repository on GitHub, report “UndoNotSupported error when inserting large number of formulas with
  // mergeUndoGroup”: 40 × 40 formulas.
  it("is done without for many formulas", async () => {
    const { double, workbook } = openExcel(start);
    const cells = Array.from({ length: 40 }, () => Array.from({ length: 40 }, () => ({ formula: "=1+1" })));
    await workbook.apply("Many", [{ kind: "sheet", sheet: { name: "Many", cells } }]);
    expect(double.content().sheets[1]?.cells[39]?.[39]?.formula).toBe("=1+1");
    expect(await workbook.undo()).toBe("Many");
    expect(summary(double.content())).toEqual(summary(start));
  });
});

describe("undo that breaks off", () => {
  it("is tried once more by itself", async () => {
    const { double, workbook } = openExcel(start);
    await workbook.apply("Add", [addSheet, { kind: "cells", at, cells: [[{ value: "Bela" }]] }]);
    let broken = 0;
    double.host.beforeOperation = (label) => {
      if (label.startsWith("delete") && broken++ === 0) throw new ExcelRefusal("RequestAborted", "Aborted.");
    };
    expect(await workbook.undo()).toBe("Add");
    expect(summary(double.content())).toEqual(summary(start));
  });

  it("says so where it cannot go on, and goes on from there the next time", async () => {
    const { double, workbook } = openExcel(start);
    await workbook.apply("Add", [{ kind: "cells", at, cells: [[{ value: "Bela" }]] }, addSheet]);
    let isAway = true;
    double.host.beforeOperation = (label) => {
      if (isAway && label.startsWith("delete of a worksheet"))
        throw new ExcelRefusal("ServiceNotAvailable", "The service is unavailable.");
    };
    await expect(workbook.undo()).rejects.toThrow(/“Add” is taken back in part only.*Undo goes on/);
    isAway = false;
    expect(workbook.lastAction()).toBe("Add");
    expect(await workbook.undo()).toBe("Add");
    expect(summary(double.content())).toEqual(summary(start));
  });
});
