import { afterEach, describe, expect, it, vi } from "vitest";
import type { CellContent, WorkbookContent } from "../../../addin/workbook/content.ts";
import type { Edit } from "../../../addin/workbook/port.ts";
import { ExcelRefusal, peek } from "../excelDouble/book.ts";
import { summary } from "../summary.ts";
import { openExcel } from "./openExcel.ts";

const v = (value: CellContent["value"]): CellContent => ({ value });

const start: WorkbookContent = {
  sheets: [
    {
      name: "Figures",
      cells: [
        [v("Figure"), v("Bust"), v("Twice")],
        [v("Ada"), { value: 136.5, format: "0.0" }, { formula: "=B2*2", value: 273 }],
        [v("Bela"), v(110), { formula: "=B3*2", value: 220 }],
        [],
        [v("By tape")],
      ],
      tables: [{ name: "Figures", row: 0, column: 0, rows: 3, columns: 3 }],
      notes: [{ row: 1, column: 1, text: "Twice" }],
      frozenRows: 1,
    },
    {
      name: "Loose",
      cells: [
        [v("Bust"), v("Waist")],
        [v(1), v(2)],
      ],
    },
  ],
};
const at = (row: number, column: number, sheet = "Figures") => ({ sheet, row, column });

const results = (name: string): Edit => ({
  kind: "sheet",
  sheet: {
    name,
    cells: [
      [v("Figure"), v("Group")],
      [{ formula: "=ROWS(Figures[#All])" }, { value: "?", style: "marked" }],
    ],
    frozenRows: 1,
    tables: [{ name, row: 0, column: 0, rows: 2, columns: 2 }],
    notes: [{ row: 0, column: 0, text: "New" }],
  },
});

/** Each kind of edit, and the actions of the pane’s sections as lists of them. */
const actions: Readonly<Record<string, readonly Edit[]>> = {
  cells: [{ kind: "cells", at: at(1, 1), cells: [[{ value: "5 3/8", style: "title" }]] }],
  "a sheet": [results("Groups")],
  "a table": [{ kind: "table", name: "Loose", area: { ...at(0, 0, "Loose"), rows: 2, columns: 2 } }],
  "rows with text below": [{ kind: "rows", table: "Figures", rows: [["Caro", 120, undefined]] }],
  "a column": [{ kind: "column", table: "Figures", heading: "Group", values: ["Group 1", "alone"] }],
  "a mark": [{ kind: "mark", cells: [at(1, 1), at(2, 0)], marked: true }],
  "a note": [{ kind: "note", at: at(1, 1), text: undefined }],
  "frozen rows": [{ kind: "freeze", sheet: "Figures", rows: 0, columns: 1 }],
  "an import": [
    { kind: "column", table: "Figures", heading: "Hip", values: [150, undefined] },
    { kind: "rows", table: "Figures", rows: [["Caro", "about 12", undefined, 151]] },
    { kind: "cells", at: at(1, 1), cells: [[v(137)]] },
    { kind: "mark", cells: [at(3, 1)], marked: true },
  ],
  "a correction": [
    { kind: "cells", at: at(1, 1), cells: [[{ value: 13.65, format: "General" }]] },
    { kind: "mark", cells: [at(1, 1)], marked: false },
  ],
  "several sheets of results": [results("Groups"), results("Bases"), results("Fit")],
};

afterEach(() => {
  vi.unstubAllGlobals();
});

type Opened = ReturnType<typeof openExcel>;

/** All that a user could see, looks included. */
function seen({ double }: Opened) {
  const looks = double.book.sheets.map((sheet) =>
    Array.from({ length: 6 }, (_, row) =>
      Array.from({ length: 5 }, (__, column) => {
        const { font, format, conditional } = peek(sheet, row, column);
        return { font, format, rules: conditional.map(({ formula, fill }) => ({ formula, fill })) };
      }),
    ),
  );
  return JSON.stringify([summary(double.content()), looks]);
}

/** How a request can go wrong: it never arrives, or it is done and the answer is lost. */
const faults = ["before", "after"] as const;

const count = { actions: 0, points: 0, faults: 0 };

async function failAt(
  opened: Opened,
  sync: number,
  fault: (typeof faults)[number],
  work: () => Promise<unknown>,
) {
  const first = opened.double.host.syncs.length;
  opened.double.host.atSync = (when, index) => {
    if (when === fault && index - first === sync) throw new ExcelRefusal("RequestAborted", "Aborted.");
  };
  count.faults += 1;
  const said = await work().then(
    () => undefined,
    (error: unknown) => error,
  );
  opened.double.host.atSync = undefined;
  return said;
}

// Microsoft, “Error handling with the application-specific APIs”: `RequestAborted`, “The request was aborted during run
// time.” It may be any request, and what was done by it stays done.
describe.each([20, 12])("with ExcelApi 1.%d, a fault at every request", (version) => {
  describe.each(Object.entries(actions))("of %s", (_, edits) => {
    it.each(faults)(
      "leaves the workbook as before or as after (%s it is done)",
      async (fault) => {
        const whole = openExcel(start, version);
        const before = seen(whole);
        await whole.workbook.apply("Action", edits);
        const after = seen(whole);
        const points = whole.double.host.syncs.length;
        await whole.workbook.undo();
        expect(seen(whole)).toBe(before);
        const undoPoints = whole.double.host.syncs.length - points;
        if (fault === "before") count.points += points + undoPoints;
        count.actions += 1;

        for (let sync = 0; sync < points; sync++) {
          const opened = openExcel(start, version);
          const said = await failAt(opened, sync, fault, () => opened.workbook.apply("Action", edits));
          expect(seen(opened), `sync ${String(sync)}`).toBe(said === undefined ? after : before);
          expect(opened.workbook.lastAction()).toBe(said === undefined ? "Action" : undefined);
        }
        for (let sync = 0; sync < undoPoints; sync++) {
          const opened = openExcel(start, version);
          await opened.workbook.apply("Action", edits);
          const said = await failAt(opened, sync, fault, () => opened.workbook.undo());
          expect(seen(opened), `sync ${String(sync)} of undo`).toBe(said === undefined ? before : after);
          expect(opened.workbook.lastAction()).toBe(said === undefined ? undefined : "Action");
        }
      },
      60_000,
    );
  });
});

describe("counts", () => {
  it("of what was tried", () => {
    console.info(
      `${String(count.points)} requests of ${String(count.actions / 2)} actions with undo, ${String(count.faults)} faults`,
    );
    expect(count.faults).toBe(2 * count.points);
    expect(count.points).toBeGreaterThan(500);
  });
});
