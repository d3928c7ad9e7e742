import type { IDisposable } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import { SetWorksheetActiveOperation } from "@univerjs/sheets";
import { ILayoutService, RenameSheetOperation } from "@univerjs/preset-sheets-core";
import type { GridUnit } from "./gridSheets.ts";
import { workbookOf } from "./gridSheets.ts";

/** Longer than the time within which the grid itself takes a second press for a double one, in milliseconds. */
const secondPress = 400;

/**
 * Mends what presses on the tabs of the sheets do. The grid, when a tab is pressed twice, goes on waiting for a long press: half a
 * second later the tab sticks to the mouse, and the sheets change their order. The second press of two is kept from it here, and the
 * double click, as the browser tells of it, is what names a sheet anew. A click that the grid has missed opens the sheet all the same,
 * what is typed after a click goes into the cells, and Escape gives a new name up.
 */
export function mendSheetTabs(container: HTMLElement, unit: GridUnit): IDisposable {
  const commands = unit.injector.get(ICommandService);
  let last: { readonly sheet: string; readonly at: number; readonly wasOpen: boolean } | undefined;

  const pressed = (event: PointerEvent): void => {
    const sheet = sheetOfTab(event.target);
    const isSecond =
      sheet !== undefined &&
      sheet === last?.sheet &&
      event.button === 0 &&
      event.timeStamp - last.at < secondPress;
    if (isSecond && !isNamed(event.target)) event.stopPropagation();
    else last = sheet === undefined ? undefined : { sheet, at: event.timeStamp, wasOpen: isOpen(sheet) };
  };
  const isOpen = (sheet: string): boolean => workbookOf(unit).getActiveSheet().getSheetId() === sheet;

  const clicked = (event: MouseEvent): void => {
    const subUnitId = sheetOfTab(event.target);
    if (subUnitId === undefined || isNamed(event.target)) return;
    if (!isOpen(subUnitId))
      void commands.executeCommand(SetWorksheetActiveOperation.id, { unitId: unit.unitId, subUnitId });
    unit.injector.get(ILayoutService).focus();
  };

  const clickedTwice = (event: MouseEvent): void => {
    const subUnitId = sheetOfTab(event.target);
    if (subUnitId === undefined || isNamed(event.target)) return;
    // The grid names the tab that it shows as open; of one that has just been opened this is not yet sure.
    if (last?.sheet !== subUnitId || !last.wasOpen) return;
    void commands.executeCommand(RenameSheetOperation.id, { unitId: unit.unitId, subUnitId });
  };

  const givenUp = (event: KeyboardEvent): void => {
    const subUnitId = sheetOfTab(event.target);
    if (event.key !== "Escape" || subUnitId === undefined || !isNamed(event.target)) return;
    const name = workbookOf(unit).getSheetBySheetId(subUnitId)?.getName();
    if (name !== undefined) event.target.innerText = name;
    event.target.blur();
    event.stopPropagation();
  };

  // Before the grid hears of it.
  const early = { capture: true };
  container.addEventListener("pointerdown", pressed, early);
  container.addEventListener("click", clicked);
  container.addEventListener("dblclick", clickedTwice);
  container.addEventListener("keydown", givenUp, early);
  return {
    dispose: () => {
      container.removeEventListener("pointerdown", pressed, early);
      container.removeEventListener("click", clicked);
      container.removeEventListener("dblclick", clickedTwice);
      container.removeEventListener("keydown", givenUp, early);
    },
  };
}

/** The grid’s own name for the sheet whose tab an element is part of. */
function sheetOfTab(target: EventTarget | null): string | undefined {
  if (!(target instanceof Element)) return undefined;
  return target.closest<HTMLElement>("[data-u-comp=slide-tab-item]")?.dataset.id;
}

/** Whether the name of the sheet is being typed there. */
function isNamed(target: EventTarget | null): target is HTMLElement {
  return target instanceof HTMLElement && target.isContentEditable;
}
