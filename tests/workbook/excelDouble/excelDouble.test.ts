import { describe, expect, it } from "vitest";
import { createExcelDouble, type RequestContext } from "./excelDouble.ts";

const open = () =>
  createExcelDouble({
    sheets: [
      {
        name: "Figures",
        cells: [
          [{ value: "Figure" }, { value: "Bust" }],
          [{ value: "Ada" }, { value: 136.5 }],
        ],
        tables: [{ name: "Figures", row: 0, column: 0, rows: 2, columns: 2 }],
      },
      { name: "Free page", cells: [] },
    ],
  });

describe("the double of Excel is strict", () => {
  it("refuses to read a property that was not loaded, even after a sync", () =>
    open().Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem("Figures").getRangeByIndexes(0, 0, 1, 1);
      expect(() => range.values).toThrow(/not loaded/);
      range.load("rowIndex");
      await context.sync();
      expect(range.rowIndex).toBe(0);
      expect(() => range.values).toThrow(/not loaded/);
    }));

  it("refuses to read a property that was loaded, but not synced", () =>
    open().Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem("Figures").getRangeByIndexes(1, 1, 1, 1);
      range.load(["values", "valueTypes"]);
      expect(() => range.values).toThrow(/before context.sync/);
      await context.sync();
      expect(range.values).toEqual([[136.5]]);
      expect(range.valueTypes).toEqual([["Double"]]);
    }));

  it("refuses the items of a collection, null objects and results before the sync", () =>
    open().Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      const gone = worksheets.getItemOrNullObject("Nowhere");
      const range = worksheets.getItem("Figures").getRangeByIndexes(0, 0, 1, 1);
      const looks = range.getCellProperties({ format: { wrapText: true } });
      worksheets.load("items/name");
      expect(() => worksheets.items).toThrow(/before context.sync/);
      expect(() => gone.isNullObject).toThrow(/before context.sync/);
      expect(() => looks.value).toThrow(/before context.sync/);
      await context.sync();
      expect(worksheets.items.map((sheet) => sheet.name)).toEqual(["Figures", "Free page"]);
      expect(() => worksheets.items[0]?.id).toThrow(/not loaded/);
      expect(gone.isNullObject).toBe(true);
      expect(looks.value).toEqual([[{ format: { wrapText: false } }]]);
    }));

  it("refuses to load everything, or what there is not", () =>
    open().Excel.run((context) => {
      const range = context.workbook.worksheets.getItem("Figures").getRangeByIndexes(0, 0, 1, 1);
      expect(() => range.load()).toThrow(/which properties/);
      expect(() => range.load("valeus")).toThrow(/valeus/);
      expect(() => context.workbook.worksheets.load()).toThrow(/which properties/);
      return Promise.resolve();
    }));

  it("gives what was there at the sync, not what is there later", () =>
    open().Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem("Figures").getRangeByIndexes(1, 1, 1, 1);
      range.load("values");
      await context.sync();
      range.values = [[2]];
      await context.sync();
      expect(range.values).toEqual([[136.5]]);
    }));
});

describe("the double of Excel queues", () => {
  it("does nothing before the sync", () => {
    const double = open();
    return double.Excel.run(async (context) => {
      context.workbook.worksheets.add("Results");
      expect(double.content().sheets).toHaveLength(2);
      await context.sync();
      expect(double.content().sheets).toHaveLength(3);
      expect(double.host.syncs).toHaveLength(1);
    });
  });

  it("stops at the first refusal, and keeps what was done before it", async () => {
    const double = open();
    const run = double.Excel.run(async (context) => {
      context.workbook.worksheets.add("Results");
      context.workbook.worksheets.add("results");
      context.workbook.worksheets.add("Never");
      await context.sync();
    });
    await expect(run).rejects.toMatchObject({ code: "ItemAlreadyExists" });
    expect(double.content().sheets.map((sheet) => sheet.name)).toEqual(["Figures", "Free page", "Results"]);
  });

  it("refuses requests of more than 5 MB", async () => {
    const run = open().Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem("Free page").getRangeByIndexes(0, 0, 600, 1);
      range.values = Array.from({ length: 600 }, () => ["x".repeat(10_000)]);
      await context.sync();
    });
    await expect(run).rejects.toMatchObject({ code: "RequestPayloadSizeLimitExceeded" });
  });

  it("refuses while a cell is being edited, unless the request may wait", async () => {
    const double = open();
    double.host.editing = true;
    await expect(
      double.Excel.run(async (context) => {
        context.workbook.worksheets.add("Results");
        await context.sync();
      }),
    ).rejects.toMatchObject({ code: "InvalidOperationInCellEditMode" });
    await double.Excel.run({ delayForCellEdit: true }, async (context) => {
      context.workbook.worksheets.add("Results");
      await context.sync();
    });
    expect(double.content().sheets).toHaveLength(3);
  });
});

describe("the double of Excel takes input as Excel does", () => {
  it.each<[string, string | number | boolean, string]>([
    ["=1+1", 2, "Double"],
    ["+1", 1, "Double"],
    ["-1", -1, "Double"],
    ["@x", "#NAME?", "Error"],
    ["TRUE", true, "Boolean"],
    ["#N/A", "#N/A", "Error"],
    ["007", 7, "Double"],
    ["50%", 0.5, "Double"],
    ["'5/8", "5/8", "String"],
    ["Ada", "Ada", "String"],
  ])("reads %s from a cell of no format, and keeps it as text in a text cell", (input, value, type) =>
    open().Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem("Free page").getRangeByIndexes(0, 0, 1, 2);
      range.numberFormat = [["General", "@"]];
      range.formulas = [[input, input]];
      range.load(["values", "valueTypes"]);
      await context.sync();
      expect(range.values).toEqual([[value, input]]);
      expect(range.valueTypes).toEqual([[type, "String"]]);
    }),
  );

  it("turns a fraction into a day, and a number in a text cell into text", () =>
    open().Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem("Free page").getRangeByIndexes(0, 0, 1, 3);
      range.numberFormat = [["General", "@", null]];
      range.values = [["5/8", 5.5, null]];
      range.load(["values", "numberFormat", "valueTypes"]);
      await context.sync();
      // 8 May 2025 is day 45785 of the 1900 date system.
      expect(range.values).toEqual([[45785, "5.5", ""]]);
      expect(range.numberFormat).toEqual([["d-mmm", "@", "General"]]);
      expect(range.valueTypes).toEqual([["Double", "String", "Empty"]]);
    }));

  it("gives new tables other headings where two are the same or one is blank", () => {
    const double = open();
    return double.Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Free page");
      const range = sheet.getRangeByIndexes(0, 0, 2, 3);
      range.values = [
        ["Bust", "bust", ""],
        [1, 2, 3],
      ];
      sheet.tables.add(range, true);
      await context.sync();
      expect(double.content().sheets[1]?.cells[0]?.map((cell) => cell?.value)).toEqual([
        "Bust",
        "bust2",
        "Column3",
      ]);
    });
  });

  it.each<[string, (context: RequestContext) => unknown, string]>([
    ["a sheet name with a slash", (context) => context.workbook.worksheets.add("a/b"), "InvalidArgument"],
    [
      "a table name that is taken",
      (context) => {
        const sheet = context.workbook.worksheets.getItem("Free page");
        sheet.tables.add(sheet.getRangeByIndexes(0, 0, 2, 1), true).name = "FIGURES";
      },
      "ItemAlreadyExists",
    ],
    [
      "a table over another",
      (context) => {
        const sheet = context.workbook.worksheets.getItem("Figures");
        sheet.tables.add(sheet.getRangeByIndexes(1, 1, 2, 2), true);
      },
      "InvalidArgument",
    ],
    [
      "values of another size than the range",
      (context) => {
        context.workbook.worksheets.getItem("Figures").getRangeByIndexes(0, 0, 1, 2).values = [[1]];
      },
      "InvalidArgument",
    ],
    [
      "a sheet that is not there",
      (context) => context.workbook.worksheets.getItem("Nowhere"),
      "ItemNotFound",
    ],
  ])("refuses %s", async (_, queue, code) => {
    const run = open().Excel.run(async (context) => {
      queue(context);
      await context.sync();
    });
    await expect(run).rejects.toMatchObject({ code });
  });

  it("refuses to write to a protected sheet", async () => {
    const double = open();
    const sheet = double.book.sheets[0];
    if (sheet) sheet.protected = true;
    const run = double.Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Figures").getRangeByIndexes(1, 1, 1, 1).values = [[1]];
      await context.sync();
    });
    await expect(run).rejects.toMatchObject({ code: "AccessDenied" });
  });
});

/** Does work with the chart in one request, and gives what is asked of it afterwards. */
async function done<T>(
  double: ReturnType<typeof open>,
  work: (context: RequestContext) => void,
  ask: (content: ReturnType<typeof double.content>) => T,
): Promise<T> {
  await double.Excel.run(async (context) => {
    work(context);
    await context.sync();
  });
  return ask(double.content());
}

const below = (context: RequestContext, rows = 1, columns = 2) =>
  context.workbook.worksheets.getItem("Figures").getRangeByIndexes(2, 0, rows, columns);
const rowsOf = (content: ReturnType<ReturnType<typeof open>["content"]>) =>
  content.sheets[0]?.tables?.[0]?.rows;

describe("the double of Excel knows tables", () => {
  // Microsoft, “Coauthoring in Excel add-ins”: values set directly below a table expand it; an empty row is not taken in.
  it("that expand over data set right below them, and not over blanks or from afar", async () => {
    const values = [
      ["Bela", 110],
      ["", ""],
    ];
    expect(await done(open(), (context) => (below(context, 2).values = values), rowsOf)).toBe(3);
    expect(await done(open(), (context) => (below(context).values = [["", ""]]), rowsOf)).toBe(2);
    const far = (context: RequestContext) => (below(context).getOffsetRange(1, 0).values = [["Bela", 110]]);
    expect(await done(open(), far, rowsOf)).toBe(2);
    const off = open();
    off.book.habits.expandsTables = false;
    expect(await done(off, (context) => (below(context).values = [["Bela", 110]]), rowsOf)).toBe(2);
  });

  // Microsoft, reference of `Table.resize`; “Work with tables”: no data is added, no cell value changed.
  it("that are resized without a change to cells, with their headings in the same row", async () => {
    const grown = await done(
      open(),
      (context) => {
        const table = context.workbook.tables.getItem("Figures");
        table.resize(context.workbook.worksheets.getItem("Figures").getRangeByIndexes(0, 0, 4, 2));
      },
      (content) => content,
    );
    expect(rowsOf(grown)).toBe(4);
    expect(grown.sheets[0]?.cells).toHaveLength(2);
    await expect(
      done(
        open(),
        (context) => {
          context.workbook.tables.getItem("Figures").resize(below(context).getOffsetRange(-1, 0));
        },
        rowsOf,
      ),
    ).rejects.toMatchObject({ code: "InvalidArgument" });
  });

  // Microsoft, “Error handling with the application-specific APIs”: FilteredRangeConflict.
  it("whose rows cannot be moved while a filter hides some of them", async () => {
    const filtered = () => {
      const double = open();
      double.book.tables[0]!.filtered = true;
      return double;
    };
    for (const work of [
      (context: RequestContext) => context.workbook.tables.getItem("Figures").rows.add(-1, [["Bela", 110]]),
      (context: RequestContext) => below(context).getOffsetRange(-1, 0).insert("Down"),
    ])
      await expect(done(filtered(), work, rowsOf)).rejects.toMatchObject({ code: "FilteredRangeConflict" });
    expect(await done(filtered(), (context) => (below(context).values = [["Bela", 110]]), rowsOf)).toBe(3);
  });

  // Microsoft support, “Use calculated columns in an Excel table”: a formula goes on in the column by itself.
  it("with calculated columns, which go on in new rows and are blanked by what is written as blank", async () => {
    const calculated = () => {
      const double = open();
      double.type({ sheet: "Figures", row: 1, column: 1 }, "=LEN(A2)");
      return double;
    };
    const formula = (content: ReturnType<ReturnType<typeof open>["content"]>) =>
      content.sheets[0]?.cells[2]?.[1]?.formula;
    expect(await done(calculated(), (context) => (below(context).values = [["Bela", null]]), formula)).toBe(
      "=LEN(A3)",
    );
    const added = (context: RequestContext) =>
      context.workbook.tables.getItem("Figures").rows.add(-1, [["Bela", ""]]);
    expect(await done(calculated(), added, formula)).toBeUndefined();
  });
});

describe("the double of Excel refuses what Excel refuses", () => {
  // Microsoft, “Undo support with the Excel JavaScript API”: `Worksheet.delete` stands among what cannot be undone.
  it("to remove a sheet in a step of the undo list", async () => {
    const remove = async (context: RequestContext) => {
      context.workbook.worksheets.getItem("Free page").delete();
      await context.sync();
    };
    await expect(open().Excel.run({ mergeUndoGroup: true }, remove)).rejects.toMatchObject({
      code: "UndoNotSupported",
    });
    const double = open();
    await double.Excel.run(remove);
    expect(double.content().sheets).toHaveLength(1);
  });

  // “Overview of formulas in Excel” and “Using structured references with Excel tables”, both Microsoft support.
  it.each([
    "=SUM(1,2",
    "=1+",
    "=(1))",
    '="open',
    "=FIT.SCORE(Nowhere[#All])",
    "=FIT.SCORE(Figures[Hip])",
    "=FIT.SCORE(Figures[#Everything])",
    "=SUM(Figures[Bust)",
    "={1,2",
    "=Nowhere!A1",
    "=[@Bust]",
    "=A1 B1",
  ])("the formula %s", async (formula) => {
    const write = (context: RequestContext) => {
      context.workbook.worksheets.getItem("Free page").getRangeByIndexes(0, 0, 1, 1).formulas = [[formula]];
    };
    await expect(done(open(), write, () => undefined)).rejects.toMatchObject({
      code: "InvalidArgument",
      debugInfo: { errorLocation: "Range.formulas" },
    });
  });

  it.each([
    '=FIT.SCORE(Figures[#All], , "a ""b""")',
    "=FIT.DELTA(Figures[[#Headers],[Bust]], Figures[[Figure]:[Bust]])",
    "=-A1^2%*'Free page'!$B$2+SUM(A:A,1:3)",
    "={1,2;3,-4}",
    "=A4#",
    "=@A1:A3",
    '=IF(A1<>"",TRUE,#N/A)',
  ])("but not the formula %s", async (formula) => {
    const write = (context: RequestContext) => {
      context.workbook.worksheets.getItem("Free page").getRangeByIndexes(0, 0, 1, 1).formulas = [[formula]];
    };
    const written = await done(open(), write, ({ sheets }) => sheets[1]?.cells[0]?.[0]?.formula);
    expect(written).toBe(formula);
  });
});

describe("the double of Excel sorts", () => {
  it("content with looks, and leaves conditional formats where they are", async () => {
    const double = open();
    await done(
      double,
      (context) => {
        below(context).values = [["Aaron", 5]];
        const cell = below(context).getOffsetRange(-1, 1).getResizedRange(0, -1);
        cell.format.font.bold = true;
        const { custom } = cell.conditionalFormats.add("Custom");
        custom.rule.formula = "=B2>100";
      },
      () => undefined,
    );
    double.sort("Figures", 0);
    const cells = double.book.sheets[0]!.cells;
    expect(cells.get("2,0")?.value).toBe("Ada");
    expect(cells.get("2,1")?.font.bold).toBe(true);
    expect(cells.get("1,1")?.conditional.map(({ formula }) => formula)).toEqual(["=RC>100"]);
  });
});
