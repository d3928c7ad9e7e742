import type { ICellData, ICommandService, Injector, IWorkbookData, Nullable } from "@univerjs/core";
import { SetFormulaCalculationNotificationMutation } from "@univerjs/engine-formula";
import { FormulaCalculationSessionService } from "@univerjs/sheets-formula";
import * as z from "zod/mini";

const end = z.object({ functionsExecutedState: z.number() });

/** Resolves when the formulas of a workbook that is about to open have been calculated; at once if it has none. */
export function whenCalculated(commands: ICommandService, snapshot: IWorkbookData): Promise<void> {
  return hasFormulas(snapshot) ? nextCalculation(commands) : Promise.resolve();
}

/** Resolves when the next calculation has finished and its results are in the cells. */
export function nextCalculation(commands: ICommandService): Promise<void> {
  return new Promise((resolve) => {
    const listening = commands.onCommandExecuted(({ id, params }) => {
      if (id !== SetFormulaCalculationNotificationMutation.id || !end.safeParse(params).success) return;
      listening.dispose();
      // The results are written right after this notice.
      setTimeout(resolve);
    });
  });
}

/** Longer than the grid waits after a change before it calculates: 100 ms, in its `TriggerCalculationController`. */
const beginsWithinMs = 150;

/** Resolves when nothing that was changed until now waits to be calculated, and the results are in the cells. */
export async function allCalculated(injector: Injector): Promise<void> {
  const session = injector.get(FormulaCalculationSessionService);
  // Before it is drawn, the grid calculates nothing.
  if (!session.state.initialized) return;
  await new Promise((resolve) => setTimeout(resolve, beginsWithinMs));
  await session.waitForLatestApplied(undefined, 0);
}

function hasFormulas({ sheets }: IWorkbookData): boolean {
  return Object.values(sheets).some((sheet) => {
    const rows: readonly Readonly<Record<number, Nullable<ICellData>>>[] = Object.values(
      sheet.cellData ?? {},
    );
    return rows.some((row) => Object.values(row).some((cell) => Boolean(cell?.f ?? cell?.si)));
  });
}
