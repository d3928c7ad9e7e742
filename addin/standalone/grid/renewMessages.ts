import type { IDisposable } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import { SetTriggerFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import type { FormulaErrors } from "./formulaErrors.ts";
import type { GridUnit } from "./gridSheets.ts";

/** Changes that move cells to other addresses without calculating them anew. */
const moving = /^sheet\.mutation\.(insert-row|insert-col|remove-row|remove-col|move-|reorder)/;

/** Messages are kept by address. When cells move, they are forgotten, and everything is calculated anew. */
export function renewMessages({ injector }: GridUnit, errors: FormulaErrors): IDisposable {
  const commands = injector.get(ICommandService);
  let isAsked = false;
  return commands.onCommandExecuted(({ id }) => {
    if (!moving.test(id) || errors.isEmpty || isAsked) return;
    isAsked = true;
    // The command that this is a part of has to finish first.
    queueMicrotask(() => {
      isAsked = false;
      errors.forgetAll();
      void commands.executeCommand(
        SetTriggerFormulaCalculationStartMutation.id,
        { commands: [], forceCalculation: true },
        { onlyLocal: true },
      );
    });
  });
}
