import type { IDisposable, Injector } from "@univerjs/core";
import {
  DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY,
  DOCS_NORMAL_EDITOR_UNIT_ID_KEY,
  FOCUSING_FX_BAR_EDITOR,
  IContextService,
  toDisposable,
} from "@univerjs/core";
import {
  DocSelectionRenderService,
  IEditorBridgeService,
  IEditorService,
  ILayoutService,
} from "@univerjs/preset-sheets-core";

/**
 * Keeps the keyboard in the bar above the sheet while a user types there. The grid opens the editor in the cell at the
 * same time, which takes the keyboard a moment later, so that what is typed would be lost.
 */
export function keepKeyboardInBar(injector: Injector): IDisposable {
  const editors = injector.get(IEditorService);
  const contexts = injector.get(IContextService);
  const guarded = new WeakSet<DocSelectionRenderService>();
  const isInBar = (): boolean =>
    contexts.getContextValue(FOCUSING_FX_BAR_EDITOR) &&
    editors.getFocusEditor()?.getEditorId() === DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY;
  return toDisposable(
    editors.focus$.subscribe(() => {
      const cell = editors.getEditor(DOCS_NORMAL_EDITOR_UNIT_ID_KEY)?.render.with(DocSelectionRenderService);
      if (!cell || guarded.has(cell)) return;
      guarded.add(cell);
      const focus = cell.focus.bind(cell);
      cell.focus = () => {
        if (!isInBar()) focus();
      };
    }),
  );
}

/**
 * Leaves the keyboard to whoever has it while a book opens. The grid takes it for its cells with the first cell that it selects, a
 * moment after it was drawn, be it in the middle of a word that is typed elsewhere on the page. Where the cells were to have it before
 * they could, after a click on them for example, they get it then.
 */
export function leaveKeyboard(injector: Injector): void {
  const editors = injector.get(IEditorService);
  const layout = injector.get(ILayoutService);
  const bridge = injector.get(IEditorBridgeService);
  const cells = (): DocSelectionRenderService | undefined =>
    editors.getEditor(DOCS_NORMAL_EDITOR_UNIT_ID_KEY)?.render.with(DocSelectionRenderService);

  const focus = layout.focus.bind(layout);
  let givenUpBy: Element | null = null;
  layout.focus = () => {
    focus();
    if (!cells()?.isFocusing) givenUpBy = document.activeElement;
  };

  const select = bridge.setEditCell.bind(bridge);
  bridge.setEditCell = (cell) => {
    const first = cells();
    if (!first) {
      select(cell);
      return;
    }
    bridge.setEditCell = select;
    layout.focus = focus;
    let isLeft = !first.canFocusing && document.activeElement !== givenUpBy;
    const take = first.focus.bind(first);
    first.focus = () => {
      if (!isLeft) take();
    };
    try {
      select(cell);
    } finally {
      isLeft = false;
    }
  };
}

/**
 * Keeps what is being typed when a calculation ends meanwhile. The grid reads the cell again, over what stands in the
 * editor, whenever a cell of the same row and column gets a value, be it on another sheet. Once the editor closes, the grid
 * reads the cell by itself.
 */
export function keepTyped(injector: Injector): void {
  const editor = injector.get(IEditorBridgeService);
  const refresh = editor.refreshEditCellState.bind(editor);
  editor.refreshEditCellState = () => {
    if (!editor.isVisible().visible) refresh();
  };
}
