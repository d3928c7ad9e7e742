import { DataValidationType, Direction, RedoCommand, UndoCommand } from "@univerjs/core";
import { DataValidatorRegistryService } from "@univerjs/data-validation";
import { InsertRowCommand, SetRangeValuesCommand } from "@univerjs/sheets";
import { ListValidator, SheetDataValidationModel } from "@univerjs/sheets-data-validation";
import { afterEach, describe, expect, it } from "vitest";
import { sheetOf } from "../../../addin/standalone/grid/gridSheets.ts";
import type { CellContent, WorkbookContent } from "../../../addin/workbook/content.ts";
import { descriptors } from "../../../functions/all.ts";
import type { HeadlessGrid } from "./headless.ts";
import { openHeadless } from "./headless.ts";

const v = (value: CellContent["value"]): CellContent => ({ value });

const content: WorkbookContent = {
  sheets: [
    {
      name: "Figures",
      cells: [
        [{ value: "Figures", style: "title" }, undefined, { value: "as taped", style: "quiet" }],
        [{ value: "Figure", style: "heading" }, v("Bust"), v("Taped on")],
        [v("Ada"), { value: 200.25, format: "0.0" }, { value: "5/8", format: "@" }],
        [v("Bela"), { value: 201, style: "marked" }, v("-")],
        [{ value: "A long remark\non two lines", style: "wrap" }],
        [v("=1+1"), v(true), v("TRUE"), v("007"), v(0)],
      ],
      frozenRows: 2,
      frozenColumns: 1,
      columnWidths: [140, undefined, 90],
      tables: [{ name: "Figures", row: 1, column: 0, rows: 3, columns: 3 }],
      notes: [{ row: 2, column: 1, text: "Measured twice" }],
      pickLists: [
        { row: 2, column: 2, rows: 20, columns: 1, from: ["-", '5" wide', "n/a"] },
        { row: 2, column: 4, rows: 3, columns: 2, from: { table: "Figures", heading: "Figure" } },
      ],
    },
    {
      name: "Out",
      cells: [[{ formula: "=FIT.STEPS(Figures[#All])" }], [], [], [], [{ formula: "=SUM(A1:A2)" }]],
    },
  ],
};

describe("a workbook in the grid", () => {
  let grid: HeadlessGrid | undefined;
  const open = async (opened: Parameters<typeof openHeadless>[0] = content): Promise<HeadlessGrid> => {
    grid?.close();
    grid = openHeadless(opened, descriptors);
    await grid.calculated();
    return grid;
  };
  const place = (sheet: string, row: number, column: number) => ({
    unitId: grid!.unit.unitId,
    subUnitId: sheetOf(grid!.unit, sheet).getSheetId(),
    range: { startRow: row, endRow: row, startColumn: column, endColumn: column },
  });

  afterEach(() => {
    grid?.close();
    grid = undefined;
  });

  it("comes back as it was opened", async () => {
    const { workbook } = await open();
    const [sheet] = workbook.content().sheets;
    const [original] = content.sheets;
    expect(sheet).toMatchObject({
      name: "Figures",
      frozenRows: 2,
      frozenColumns: 1,
      columnWidths: original?.columnWidths,
      tables: original?.tables,
      notes: original?.notes,
      pickLists: original?.pickLists,
    });
    expect(sheet?.cells.map((row) => [...row])).toEqual(original?.cells.map((row) => [...row]));
  });

  it("offers lists to choose from, those of a column as it is at the time, and keeps them when it is opened again", async () => {
    const choices = async (row: number, column: number): Promise<string[]> => {
      const { injector, unitId } = grid!.unit;
      const subUnitId = sheetOf(grid!.unit, "Figures").getSheetId();
      const rule = injector.get(SheetDataValidationModel).getRuleByLocation(unitId, subUnitId, row, column);
      const list = injector.get(DataValidatorRegistryService).getValidatorItem(DataValidationType.LIST);
      if (!rule || !(list instanceof ListValidator)) return [];
      return list.getListAsync(rule, unitId, subUnitId);
    };
    await open();
    expect(await choices(3, 2)).toEqual(["-", '5" wide', "n/a"]);
    await expect.poll(() => choices(2, 5)).toEqual(["Ada", "Bela"]);
    await grid!.command(SetRangeValuesCommand.id, { ...place("Figures", 3, 0), value: { v: "Berta" } });
    await expect.poll(() => choices(2, 5)).toEqual(["Ada", "Berta"]);
    await grid!.command(SetRangeValuesCommand.id, { ...place("Figures", 1, 0), value: { v: "Body" } });
    await expect.poll(() => choices(2, 5)).toEqual(["Ada", "Berta"]);
    expect(grid!.workbook.content().sheets[0]?.pickLists?.[1]?.from).toEqual({
      table: "Figures",
      heading: "Body",
    });
    await grid!.command(InsertRowCommand.id, {
      ...place("Figures", 0, 0),
      range: { startRow: 0, endRow: 0, startColumn: 0, endColumn: 10 },
      direction: Direction.UP,
    });
    const lists = grid!.workbook.content().sheets[0]?.pickLists;
    expect(lists?.map(({ row, rows }) => ({ row, rows }))).toEqual([
      { row: 3, rows: 20 },
      { row: 3, rows: 3 },
    ]);
    const { workbook } = await open(grid!.workbook.snapshot());
    expect(workbook.content().sheets[0]?.pickLists).toEqual(lists);
  });

  it("gives formulas with what they fill, and marks what is filled", async () => {
    const { workbook } = await open();
    const cells = workbook.content().sheets[1]?.cells ?? [];
    expect(cells[0]?.[0]).toMatchObject({
      formula: "=FIT.STEPS(Figures[#All])",
      spill: { columns: expect.any(Number) as number },
    });
    const spill = cells[0]?.[0]?.spill;
    expect(cells[0]?.[1]).toMatchObject({ spilled: true });
    expect(cells[0]).toHaveLength(spill?.columns ?? 0);
  });

  it("survives being kept and opened again, with preferences and looks", async () => {
    const { workbook } = await open();
    await workbook.setPreference("unit", "cm");
    const before = workbook.content();
    const kept: unknown = JSON.parse(JSON.stringify(workbook.snapshot()));
    await open(kept as Parameters<typeof openHeadless>[0]);
    expect(grid!.workbook.content()).toEqual(before);
    expect(await grid!.workbook.preference("unit")).toBe("cm");
  });

  it("takes an action back with one Ctrl+Z, and does it again with one Ctrl+Y", async () => {
    const { workbook, command } = await open();
    const before = workbook.content().sheets[0];
    await workbook.apply("Import 2 figures", [
      {
        kind: "rows",
        table: "Figures",
        rows: [
          ["Caro", 1, 2],
          ["Dora", 3, 4],
        ],
      },
      { kind: "note", at: { sheet: "Figures", row: 4, column: 0 }, text: "New" },
      { kind: "mark", cells: [{ sheet: "Figures", row: 4, column: 1 }], marked: true },
    ]);
    const after = workbook.content().sheets[0];
    await command(UndoCommand.id, {});
    expect(workbook.content().sheets[0]).toEqual(before);
    expect(workbook.lastAction()).toBeUndefined();
    await command(RedoCommand.id, {});
    expect(workbook.content().sheets[0]).toEqual(after);
    expect(workbook.lastAction()).toBe("Import 2 figures");
    expect(await workbook.undo()).toBe("Import 2 figures");
    expect(workbook.content().sheets[0]).toEqual(before);
  });

  it("refuses to take an action back after rows were moved under it", async () => {
    const { workbook, command } = await open();
    await workbook.apply("Write", [
      { kind: "cells", at: { sheet: "Figures", row: 9, column: 0 }, cells: [[v(1)]] },
    ]);
    const { unitId, subUnitId } = place("Figures", 7, 0);
    await command(InsertRowCommand.id, {
      unitId,
      subUnitId,
      direction: 0,
      range: { startRow: 7, endRow: 7, startColumn: 0, endColumn: 10 },
    });
    await expect(workbook.undo()).rejects.toThrow("Write");
    expect(
      (await workbook.readArea({ sheet: "Figures", row: 10, column: 0, rows: 1, columns: 1 })).values,
    ).toEqual([[1]]);
  });

  it("makes a row typed right below a table part of it, and one undo takes both back", async () => {
    const { workbook, command } = await open({
      sheets: [
        {
          name: "Figures",
          cells: [[v("Figure"), v("Bust")], [v("Ada"), v(200)], [], [], [v("a remark")]],
          tables: [{ name: "Figures", row: 0, column: 0, rows: 2, columns: 2 }],
        },
        { name: "Out", cells: [[{ formula: "=ROWS(Figures[#All])" }]] },
      ],
    });
    const rows = async () => (await workbook.tables())[0]?.area.rows;
    const calculated = grid!.calculated();
    await command(SetRangeValuesCommand.id, { ...place("Figures", 2, 0), value: { v: "Bela", t: 1 } });
    await calculated;
    expect(await rows()).toBe(3);
    expect(
      (await workbook.readArea({ sheet: "Out", row: 0, column: 0, rows: 1, columns: 1 })).values,
    ).toEqual([[3]]);
    await command(UndoCommand.id, {});
    expect(await rows()).toBe(2);
    expect(
      (await workbook.readArea({ sheet: "Figures", row: 2, column: 0, rows: 1, columns: 1 })).values,
    ).toEqual([[undefined]]);
  });

  it("leaves a table alone when something is typed further down or beside it", async () => {
    const { workbook, command } = await open();
    await command(SetRangeValuesCommand.id, { ...place("Figures", 7, 0), value: { v: "x", t: 1 } });
    await command(SetRangeValuesCommand.id, { ...place("Figures", 4, 5), value: { v: "x", t: 1 } });
    expect((await workbook.tables())[0]?.area.rows).toBe(3);
  });

  it("lets formulas find a column by a heading that was typed anew", async () => {
    const { workbook, command } = await open({
      sheets: [
        {
          name: "Figures",
          cells: [
            [v("Figure"), v("Bust")],
            [v("Ada"), v(200)],
          ],
          tables: [{ name: "Figures", row: 0, column: 0, rows: 2, columns: 2 }],
        },
        { name: "Out", cells: [[{ formula: "=1+1" }]] },
      ],
    });
    await command(SetRangeValuesCommand.id, { ...place("Figures", 0, 1), value: { v: "Chest", t: 1 } });
    const calculated = grid!.calculated();
    await command(SetRangeValuesCommand.id, {
      ...place("Out", 0, 0),
      value: { f: "=SUM(Figures[Chest])", v: null },
    });
    await calculated;
    expect((await workbook.tables())[0]?.headings).toEqual(["Figure", "Chest"]);
    expect(
      (await workbook.readArea({ sheet: "Out", row: 0, column: 0, rows: 1, columns: 1 })).values,
    ).toEqual([[200]]);
  });
});
