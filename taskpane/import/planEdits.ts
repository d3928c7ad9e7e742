import { isBlank } from "../../addin/chart/cell.ts";
import type { ImportPlan, PlannedCell, TargetColumn } from "../../addin/chart/import/importPlan.ts";
import type { CellContent } from "../../addin/workbook/content.ts";
import type { CellAddress, Edit, TableInfo } from "../../addin/workbook/port.ts";
import { freeName } from "../shell/freeName.ts";

/** Name of the table that holds the chart. */
export const chartTable = "Figures";

/** Rows above a new chart: title and a quiet line; the headings come next. */
const rowsAbove = 2;

export interface EditOptions {
  /** Put what could not be read into its cell as text, marked, instead of leaving the cell empty. */
  readonly keepRefused: boolean;
}

/** Steps of the work: yields the share done (0 to 1), so that the caller can let the page breathe or stop. */
export type Steps<T> = Generator<number, T>;

/** What an import writes: cells of figures that are there, and the rows of new ones. Columns as in the finished chart. */
export interface Writing {
  readonly updates: ReadonlyMap<number, ReadonlyMap<number, CellContent>>;
  readonly rows: readonly (readonly (CellContent | undefined)[])[];
}

/**
 * A plan → the edits of one action: a new sheet with a title and a table where there is no chart yet, else new columns,
 * new rows and changed cells of the present table. What the file does not fill stays untouched.
 *
 * @param table the present chart’s table; `undefined` makes a new one
 * @param sheets names that are taken, for a new sheet
 */
export function* planEdits(
  plan: ImportPlan,
  table: TableInfo | undefined,
  sheets: readonly string[],
  options: EditOptions,
): Steps<readonly Edit[]> {
  return table ? yield* editsOfTable(plan, table, options) : yield* newSheet(plan, sheets, options);
}

function* newSheet(
  plan: ImportPlan,
  sheets: readonly string[],
  options: EditOptions,
): Steps<readonly Edit[]> {
  const order = inChartOrder(plan.targets);
  const name = freeName(chartTable, sheets);
  const { rows } = yield* writing(plan, order, options);
  return [
    {
      kind: "sheet",
      sheet: {
        name,
        cells: [
          [{ value: "Figures", style: "title" }],
          [
            {
              value: "One row a figure, one column a measure. Leave a cell empty where no reading was taken.",
              style: "quiet",
            },
          ],
          order.map(({ target }) => ({ value: target.heading })),
          ...inFormats(rows, formatsOf(order, rows)),
        ],
        frozenRows: rowsAbove + 1,
        frozenColumns: 1,
        columnWidths: order.map(({ target }) => (target.holds === "name" ? 180 : undefined)),
        tables: [
          { name: chartTable, row: rowsAbove, column: 0, rows: rows.length + 1, columns: order.length },
        ],
      },
    },
  ];
}

function* editsOfTable(plan: ImportPlan, table: TableInfo, options: EditOptions): Steps<readonly Edit[]> {
  const { sheet, row, column, rows: height, columns: width } = table.area;
  const order = besideTable(plan.targets, width);
  const { updates, rows } = yield* writing(plan, order, options);
  const chartRows = plan.present?.rows ?? [];
  const figureOfRow = new Map(chartRows.map((chartRow, figure) => [chartRow, figure]));

  const newColumns = order
    .filter(({ target }) => target.position === undefined)
    .map(({ target, position }): Edit => {
      const values = Array.from({ length: height - 1 }, (_, i) => {
        const figure = figureOfRow.get(i + 1);
        return figure === undefined ? undefined : updates.get(figure)?.get(position)?.value;
      });
      return { kind: "column", table: table.name, heading: target.heading, values };
    });

  const fullWidth = width + newColumns.length;
  // A table that was just begun has empty rows to be written into first.
  const empty = plan.present?.cells.slice(1).every((line) => line.every(isBlank)) === true ? height - 1 : 0;
  // The rows below take over how they look.
  const into = inFormats(rows.slice(0, empty), formatsOf(order, rows));
  const below = rows.slice(empty);
  const newRows: Edit[] = [
    ...(into.length === 0
      ? []
      : [
          {
            kind: "cells" as const,
            at: { sheet, row: row + 1, column },
            cells: into.map((cells) => Array.from({ length: fullWidth }, (_, c) => cells[c])),
          },
        ]),
    ...(below.length === 0
      ? []
      : [
          {
            kind: "rows" as const,
            table: table.name,
            rows: below.map((cells) => Array.from({ length: fullWidth }, (_, c) => cells[c]?.value)),
          },
        ]),
  ];

  const changes = [...updates].flatMap(([figure, cells]): Edit[] => {
    const present = [...cells.keys()].filter((c) => c < width);
    const chartRow = chartRows[figure];
    if (present.length === 0 || chartRow === undefined) return [];
    const from = Math.min(...present);
    const line = Array.from({ length: Math.max(...present) - from + 1 }, (_, i) => cells.get(from + i));
    return [{ kind: "cells", at: { sheet, row: row + chartRow, column: column + from }, cells: [line] }];
  });

  const marked: CellAddress[] = [
    ...[...updates].flatMap(([figure, cells]) =>
      [...cells]
        .filter(([, cell]) => isMarked(cell))
        .map(([c]) => ({ sheet, row: row + (chartRows[figure] ?? 0), column: column + c })),
    ),
    ...rows.flatMap((cells, i) =>
      cells.flatMap((cell, c) =>
        isMarked(cell) ? [{ sheet, row: row + height - empty + i, column: column + c }] : [],
      ),
    ),
  ];
  const marks: Edit[] = marked.length === 0 ? [] : [{ kind: "mark", cells: marked, marked: true }];
  return [...newColumns, ...newRows, ...changes, ...marks];
}

/**
 * The rows of a plan for a table that is made for them.
 *
 * @returns the headings that come behind those of the plan’s table, and the rows in that order
 */
export function* rowsForNew(
  plan: ImportPlan,
  options: EditOptions,
): Steps<Pick<Writing, "rows"> & { readonly added: readonly string[] }> {
  const order = besideTable(plan.targets, plan.present?.cells[0]?.length ?? 0);
  const { rows } = yield* writing(plan, order, options);
  const added = order.flatMap(({ target }) => (target.position === undefined ? [target.heading] : []));
  return { rows, added };
}

/** The thousandth of an inch is far finer than any tape. */
const convertedFormat = "0.000";
/** 1/64 in, the finest that a tape shows, is 0.015625. */
const decimalsOfTape = 6;

/** A format for each column in inches to which readings come from another unit: 7.2 cm are 2.83464566929 in. */
function formatsOf(order: readonly Placed[], rows: Writing["rows"]): ReadonlyMap<number, string> {
  const isConverted = (value: unknown): boolean =>
    typeof value === "number" && value !== Number(value.toFixed(decimalsOfTape));
  const converted = order.filter(
    ({ target, position }) =>
      target.holds === "readings" &&
      target.unit === "in" &&
      rows.some((cells) => isConverted(cells[position]?.value)),
  );
  return new Map(converted.map(({ position }) => [position, convertedFormat]));
}

function inFormats(rows: Writing["rows"], formats: ReadonlyMap<number, string>): Writing["rows"] {
  if (formats.size === 0) return rows;
  return rows.map((cells) =>
    cells.map((cell, c) => {
      const format = formats.get(c);
      const isText = typeof cell?.value === "string";
      return format === undefined || isText ? cell : { ...cell, format };
    }),
  );
}

/** A target with its column in the finished chart and its index in the plan. */
export interface Placed {
  readonly target: TargetColumn;
  readonly index: number;
  readonly position: number;
}

/** In a new chart the figure names come first, the rest in the file’s order. */
function inChartOrder(targets: readonly TargetColumn[]): readonly Placed[] {
  const indexed = targets.map((target, index) => ({ target, index }));
  const names = indexed.filter(({ target }) => target.holds === "name");
  const others = indexed.filter(({ target }) => target.holds !== "name");
  return [...names, ...others].map((placed, position) => ({ ...placed, position }));
}

/** New columns go to the right of a present chart. */
export function besideTable(targets: readonly TargetColumn[], width: number): readonly Placed[] {
  const fresh = targets.filter((target) => target.position === undefined);
  return targets.map((target, index) => ({
    target,
    index,
    position: target.position ?? width + fresh.indexOf(target),
  }));
}

export function* writing(plan: ImportPlan, order: readonly Placed[], options: EditOptions): Steps<Writing> {
  const width = order.reduce((most, { position }) => Math.max(most, position + 1), 0);
  const updates = new Map<number, Map<number, CellContent>>();
  const rows: (CellContent | undefined)[][] = [];
  const rowOfFigure = new Map<number, (CellContent | undefined)[]>();

  for (const [f, figure] of plan.figures.entries()) {
    if (f % 200 === 199) yield (f + 1) / plan.figures.length;
    if (figure.action === "skip") continue;
    const cells = order.map(({ index }) => written(plan.cell(f, index), options));
    if (figure.action === "add") {
      // In the chart’s order, with room for columns that the file does not have.
      const row: (CellContent | undefined)[] = Array<undefined>(width).fill(undefined);
      order.forEach(({ position }, i) => {
        row[position] = cells[i];
      });
      rows.push(row);
      rowOfFigure.set(f, row);
    } else if (figure.target?.in === "the file") {
      const row = rowOfFigure.get(figure.target.figure);
      order.forEach(({ position }, i) => {
        if (row && cells[i]) row[position] = cells[i];
      });
    } else if (figure.target) {
      const before = updates.get(figure.target.figure) ?? new Map<number, CellContent>();
      order.forEach(({ position }, i) => {
        if (cells[i]) before.set(position, cells[i]);
      });
      updates.set(figure.target.figure, before);
    }
  }
  return { updates, rows };
}

function written(cell: PlannedCell, { keepRefused }: EditOptions): CellContent | undefined {
  switch (cell.kind) {
    case "new":
    case "changed":
      return { value: cell.value };
    case "refused":
      // A reading that could not be read never goes over a cell that holds something.
      return keepRefused && isBlank(cell.old) ? { value: cell.text, style: "marked" } : undefined;
    case "blank":
    case "same":
      return undefined;
  }
}

function isMarked(cell: CellContent | undefined): boolean {
  return cell?.style === "marked";
}
