import { describe, expect, it } from "vitest";
import { phases } from "../../addin/workbook/phases.ts";
import type { Edit } from "../../addin/workbook/port.ts";

const cells = (sheet: string, row = 0): Edit => ({
  kind: "cells",
  at: { sheet, row, column: 0 },
  cells: [[{ value: 1 }]],
});
const rows = (table: string): Edit => ({ kind: "rows", table, rows: [[1]] });
const column = (table: string): Edit => ({ kind: "column", table, heading: "New", values: [1] });
const sheet = (name: string): Edit => ({ kind: "sheet", sheet: { name, cells: [] } });
const mark = (name: string): Edit => ({
  kind: "mark",
  cells: [{ sheet: name, row: 0, column: 0 }],
  marked: true,
});
const table = (name: string): Edit => ({
  kind: "table",
  name,
  area: { sheet: "A", row: 9, column: 0, rows: 2, columns: 1 },
});

const sizes = (edits: readonly Edit[]) =>
  phases(edits, (name) => (name === "OnA" ? "A" : undefined)).map((phase) => phase.length);

describe("phases", () => {
  it("keeps edits together that do not disturb one another", () => {
    expect(sizes([])).toEqual([]);
    expect(sizes([cells("A"), cells("A", 1), mark("A"), table("T")])).toEqual([4]);
    expect(sizes([mark("A"), table("T"), rows("OnA")])).toEqual([3]);
    expect(sizes([rows("OnA"), cells("B")])).toEqual([2]);
    expect(sizes([column("OnA"), column("OnA")])).toEqual([2]);
  });

  it("starts anew where addresses may have moved", () => {
    expect(sizes([cells("A"), rows("OnA"), cells("a"), mark("A")])).toEqual([1, 1, 2]);
    expect(sizes([rows("New"), cells("B")])).toEqual([1, 1]);
    expect(sizes([rows("OnA"), rows("OnA")])).toEqual([1, 1]);
    expect(sizes([cells("A"), rows("OnA")])).toEqual([1, 1]);
    expect(sizes([cells("B"), rows("OnA")])).toEqual([2]);
    expect(sizes([column("OnA"), rows("OnA"), column("OnA")])).toEqual([1, 1, 1]);
  });

  it("starts anew for what was just made, and for cells just written", () => {
    expect(sizes([sheet("New"), mark("new")])).toEqual([1, 1]);
    expect(sizes([table("T"), rows("t")])).toEqual([1, 1]);
    expect(sizes([cells("A"), cells("A")])).toEqual([1, 1]);
  });

  it("loses no edit and changes no order", () => {
    const edits = [sheet("A"), cells("A"), rows("OnA"), cells("A"), mark("B"), table("T"), rows("T")];
    expect(phases(edits, () => "A").flat()).toEqual(edits);
  });
});
