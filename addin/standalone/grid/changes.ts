import type { ICellData, ICommandInfo, IDisposable, IExecutionOptions, Nullable } from "@univerjs/core";
import { CommandType, ICommandService } from "@univerjs/core";
import { SetArrayFormulaDataMutation } from "@univerjs/engine-formula";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import * as z from "zod/mini";
import type { Cell } from "../../chart/cell.ts";
import type { TypedCell } from "../../workbook/port.ts";
import type { FormulaErrors } from "./formulaErrors.ts";
import type { GridUnit } from "./gridSheets.ts";
import { spilledIn, workbookOf } from "./gridSheets.ts";
import { toCell } from "./values.ts";

const onSheet = z.object({
  unitId: z.string(),
  subUnitId: z.optional(z.string()),
  sheetId: z.optional(z.string()),
  sheet: z.optional(z.object({ id: z.string() })),
});
const cellValues = z.object({
  subUnitId: z.string(),
  cellValue: z.record(z.string(), z.record(z.string(), z.custom<Nullable<ICellData>>())),
});

/** How far a change goes that the grid has made. */
export type ChangeKind = "edit" | "calculation";

export interface GridChange {
  readonly kind: ChangeKind;
  readonly sheetId: string;
  /** Set where one cell alone got another value. */
  readonly typed?: TypedCell;
}

/** Changes that no one would want to keep or hear of: heights that follow the text, and notes shown on hovering. */
const unimportant = /auto-height|toggle-note-popup/;

/** Tells of everything that changes what the workbook holds. Calculations that change nothing are left out. */
export function watchChanges(
  unit: GridUnit,
  errors: FormulaErrors,
  listener: (change: GridChange) => void,
): IDisposable {
  const commands = unit.injector.get(ICommandService);
  // What was kept with the workbook is there already.
  const spills = new Map<string, string>();
  changedSpills(unit, spills);
  const cellsBefore = new WeakMap<Readonly<ICommandInfo>, OneCell>();
  const before = commands.beforeCommandExecuted((command, options) => {
    const cell = isEdit(command, options) ? oneCell(unit, command) : undefined;
    if (cell) cellsBefore.set(command, cell);
    if (isCalculation(command, options) && changesValues(unit, command))
      listener({ kind: "calculation", sheetId: sheetOf(unit, command) ?? "" });
  });
  const after = commands.onCommandExecuted((command, options) => {
    if (command.id === SetArrayFormulaDataMutation.id) {
      for (const sheetId of changedSpills(unit, spills)) listener({ kind: "calculation", sheetId });
      return;
    }
    const sheetId = sheetOf(unit, command);
    if (sheetId === undefined || !isEdit(command, options)) return;
    forgetErrors(errors, command);
    const typed = typedCell(cellsBefore.get(command), oneCell(unit, command));
    listener({ kind: "edit", sheetId, ...(typed && { typed }) });
  });
  return {
    dispose: () => {
      before.dispose();
      after.dispose();
    },
  };
}

function isCalculation({ id }: Readonly<ICommandInfo>, options?: IExecutionOptions): boolean {
  return id === SetRangeValuesMutation.id && options?.applyFormulaCalculationResult === true;
}

function isEdit(command: Readonly<ICommandInfo>, options?: IExecutionOptions): boolean {
  const { id, type } = command;
  return (
    type === CommandType.MUTATION &&
    id.startsWith("sheet.mutation.") &&
    !unimportant.test(id) &&
    options?.applyFormulaCalculationResult !== true &&
    options?.fromFormula !== true
  );
}

function sheetOf(unit: GridUnit, { params }: Readonly<ICommandInfo>): string | undefined {
  const { unitId, subUnitId, sheetId, sheet } = onSheet.safeParse(params).data ?? {};
  return unitId === unit.unitId ? (subUnitId ?? sheetId ?? sheet?.id) : undefined;
}

function changesValues(unit: GridUnit, { params }: Readonly<ICommandInfo>): boolean {
  const { data } = cellValues.safeParse(params);
  const sheet = data && workbookOf(unit).getSheetBySheetId(data.subUnitId);
  if (!sheet) return false;
  return Object.entries(data.cellValue).some(([row, columns]) =>
    Object.entries(columns).some(([column, next]) => {
      const now = sheet.getCellRaw(Number(row), Number(column));
      return (now?.v ?? "") !== (next?.v ?? "");
    }),
  );
}

/** A cell as it is, where a command is about that cell and no other. */
interface OneCell {
  readonly row: number;
  readonly column: number;
  readonly value: Cell;
  readonly isFormula: boolean;
}

function oneCell(unit: GridUnit, { id, params }: Readonly<ICommandInfo>): OneCell | undefined {
  if (id !== SetRangeValuesMutation.id) return undefined;
  const { data } = cellValues.safeParse(params);
  const sheet = data && workbookOf(unit).getSheetBySheetId(data.subUnitId);
  const [line, ...lines] = Object.entries(data?.cellValue ?? {});
  const [column, ...columns] = Object.keys(line?.[1] ?? {});
  if (!sheet || !line || column === undefined || lines.length + columns.length > 0) return undefined;
  const at = { row: Number(line[0]), column: Number(column) };
  const now = sheet.getCellRaw(at.row, at.column);
  return { ...at, value: toCell(now), isFormula: Boolean(now?.f ?? now?.si) };
}

function typedCell(before: OneCell | undefined, after: OneCell | undefined): TypedCell | undefined {
  if (!before || !after || before.isFormula || after.isFormula || before.value === after.value)
    return undefined;
  return { row: after.row, column: after.column, before: before.value, after: after.value };
}

/** Sheets whose spilled results are not what they were. */
function changedSpills(unit: GridUnit, known: Map<string, string>): string[] {
  return workbookOf(unit)
    .getSheets()
    .map((sheet) => sheet.getSheetId())
    .filter((sheetId) => {
      const now = JSON.stringify(spilledIn(unit, sheetId).all);
      if ((known.get(sheetId) ?? "{}") === now) return false;
      known.set(sheetId, now);
      return true;
    });
}

/** What is written into a cell is no longer what an earlier error was about. */
function forgetErrors(errors: FormulaErrors, command: Readonly<ICommandInfo>): void {
  if (command.id !== SetRangeValuesMutation.id) return;
  const { data } = cellValues.safeParse(command.params);
  if (!data) return;
  for (const [row, columns] of Object.entries(data.cellValue))
    for (const column of Object.keys(columns))
      errors.forget({ sheetId: data.subUnitId, row: Number(row), column: Number(column) });
}
