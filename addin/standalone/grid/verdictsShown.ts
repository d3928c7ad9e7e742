import type { ICellData, Injector, IStyleData, Nullable } from "@univerjs/core";
import { BooleanNumber, InterceptorEffectEnum } from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";
import { verdictInk, verdictLook } from "../../workbook/verdictCells.ts";
import { styleNameOf } from "./cellLook.ts";
import { toCell } from "./values.ts";

/** Shows verdicts with their signs and colours. What the cells hold stays as it is. */
export function showVerdicts(injector: Injector): void {
  injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    // After what a formula fills has come, and before rules of the user’s own.
    priority: 1,
    effect: InterceptorEffectEnum.Value | InterceptorEffectEnum.Style,
    handler: (cell, { rawData, workbook }, next) => {
      const look = styleNameOf(rawData) === "verdict" ? verdictLook(toCell(cell)) : undefined;
      if (!look) return next(cell);
      const own = styleIn(cell, (id) => workbook.getStyles().get(id));
      return next({
        ...cell,
        v: `${look.sign} ${look.word}`,
        s: { ...own, cl: { rgb: verdictInk[look.tone] }, bl: BooleanNumber.TRUE },
      });
    },
  });
}

function styleIn(
  cell: Nullable<ICellData>,
  named: (id: string) => Nullable<IStyleData>,
): Nullable<IStyleData> {
  return typeof cell?.s === "string" ? named(cell.s) : cell?.s;
}
