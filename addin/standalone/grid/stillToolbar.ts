import type { Injector } from "@univerjs/core";
import { Quantity } from "@univerjs/core";
import type { IMenuSchema } from "@univerjs/preset-sheets-core";
import { IRibbonService } from "@univerjs/preset-sheets-core";
import { distinctUntilChanged } from "rxjs";

/**
 * Leaves the row of buttons above the sheet as it is while it holds the same buttons. The grid asks them all anew at each
 * key, and would draw and measure the whole row each time, twice.
 */
export function keepToolbarStill(injector: Injector): void {
  const ribbon = injector.get(IRibbonService, Quantity.OPTIONAL);
  if (ribbon) ribbon.ribbon$ = ribbon.ribbon$.pipe(distinctUntilChanged<IMenuSchema[]>(sameMenus));
}

function sameMenus(one: readonly IMenuSchema[], other: readonly IMenuSchema[]): boolean {
  return (
    one.length === other.length &&
    one.every((menu, i) => {
      const like = other[i];
      return (
        like !== undefined &&
        menu.key === like.key &&
        menu.order === like.order &&
        menu.item === like.item &&
        sameMenus(menu.children ?? [], like.children ?? [])
      );
    })
  );
}
