import type { Area, FoundCell } from "../port.ts";
import { cellOf, partOf, rangeOf, readParts } from "./ranges.ts";
import { supports } from "./requests.ts";

/** See `Workbook.findCells`. */
export async function findCells(
  context: Excel.RequestContext,
  isWanted: (cell: FoundCell) => boolean,
): Promise<readonly FoundCell[]> {
  const found = await readFilled(context, await usedAreas(context), isWanted);
  return (await ownCells(context, found)).filter(isWanted);
}

interface Used {
  readonly area: Area;
  readonly isProtected: boolean;
}

async function usedAreas(context: Excel.RequestContext): Promise<readonly Used[]> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  const loading = worksheets.items.map((sheet) => {
    const range = sheet.getUsedRangeOrNullObject(true);
    range.load(["rowIndex", "columnIndex", "rowCount", "columnCount"]);
    const { protection } = sheet;
    protection.load("protected");
    return { sheet: sheet.name, range, protection };
  });
  await context.sync();
  return loading.flatMap(({ sheet, range, protection }) => {
    if (range.isNullObject) return [];
    const { rowIndex: row, columnIndex: column, rowCount: rows, columnCount: columns } = range;
    return [{ area: { sheet, row, column, rows, columns }, isProtected: protection.protected }];
  });
}

async function readFilled(
  context: Excel.RequestContext,
  used: readonly Used[],
  isWanted: (cell: FoundCell) => boolean,
): Promise<readonly FoundCell[]> {
  const parts = used.map((each) => ({ ...partOf(each.area, 30), isProtected: each.isProtected }));
  const found = await readParts(parts, async (group) => {
    const ranges = group.map((part) => {
      const range = rangeOf(context, part.area);
      range.load("formulas");
      return { part, range };
    });
    await context.sync();
    return ranges.map(({ part, range }) =>
      range.formulas.flatMap((line, i) =>
        line.flatMap((holds: unknown, j): FoundCell[] => {
          if ((typeof holds !== "string" && typeof holds !== "number") || holds === "") return [];
          const { sheet, row, column } = part.area;
          const cell: FoundCell = {
            at: { sheet, row: row + i, column: column + j },
            holds,
            isFormula: typeof holds === "string" && holds.startsWith("="),
            ...(part.isProtected && { closed: `the sheet “${sheet}” is protected` }),
          };
          const mayBeText = cell.isFormula && isWanted({ ...cell, isFormula: false });
          return isWanted(cell) || mayBeText ? [cell] : [];
        }),
      ),
    );
  });
  return found.flat();
}

/** With text that only looks like a formula told from formulas, and without what the formula of another cell fills. */
async function ownCells(
  context: Excel.RequestContext,
  cells: readonly FoundCell[],
): Promise<readonly FoundCell[]> {
  const parts = cells.map((cell) => ({ ...partOf({ ...cell.at, rows: 1, columns: 1 }, 400), cell }));
  const own = await readParts(parts, async (group) => {
    const loading = group.map(({ cell }) => {
      const range = cellOf(context, cell.at);
      range.load("values");
      const parent = supports("1.12") ? range.getSpillParentOrNullObject() : undefined;
      parent?.load(["rowIndex", "columnIndex"]);
      return { cell, range, parent };
    });
    await context.sync();
    return loading.map(({ cell, range, parent }) => {
      const { row, column } = cell.at;
      const isFilled =
        parent?.isNullObject === false && (parent.rowIndex !== row || parent.columnIndex !== column);
      if (isFilled) return [];
      const isFormula = cell.isFormula && range.values[0]?.[0] !== cell.holds;
      return [{ ...cell, isFormula }];
    });
  });
  return own.flat();
}
