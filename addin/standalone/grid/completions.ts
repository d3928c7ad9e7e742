import type { Injector } from "@univerjs/core";
import { ICommandService, Quantity } from "@univerjs/core";
import type { ISearchItemWithType } from "@univerjs/sheets-formula";
import { IDescriptionService } from "@univerjs/sheets-formula";
import { FunctionType } from "@univerjs/engine-formula";
import { IEditorService, IShortcutService, KeyCode } from "@univerjs/preset-sheets-core";
import { namespace } from "../../../functions/namespace.ts";
import type { GridUnit } from "./gridSheets.ts";
import { tablesOf } from "./gridSheets.ts";

/**
 * Completes more of what is typed than the grid does by itself: columns of a table after its bracket
 * (`Figures[Bu` → `Figures[Bust (mm)]`), and our functions without what stands before their names (`APA` → `FIT.APART`).
 * And no more than is still wanted: see {@link leaveLateCompletions}.
 */
export function completeMore(unit: GridUnit): void {
  const descriptions = unit.injector.get(IDescriptionService);
  const searched = leaveLateCompletions(unit.injector);
  goOnBehindCompletion(unit.injector);
  const search = descriptions.getSearchListByNameFirstLetter.bind(descriptions);
  descriptions.getSearchListByNameFirstLetter = (text) => {
    searched();
    const typed = text.trim();
    if (typed.includes("[")) return columns(unit, typed);
    const ours = typed === "" || typed.includes(".") ? [] : search(`${namespace}.${typed}`);
    const found = search(typed);
    return [...found, ...ours.filter(({ name }) => found.every((other) => other.name !== name))];
  };
}

const takesCompletion = /\.search_function\./;

/**
 * The grid renews its list a moment after the last key, and Enter would put what the list was made for into a formula that
 * has been typed to its end meanwhile. Enter and Tab then do what they do without a list.
 *
 * @returns to be called when a list is made
 */
function leaveLateCompletions(injector: Injector): () => void {
  const editors = injector.get(IEditorService, Quantity.OPTIONAL);
  const shortcuts = injector.get(IShortcutService, Quantity.OPTIONAL);
  // Without a screen nobody types.
  if (!editors || !shortcuts) return () => undefined;
  const text = (): string | undefined => editors.getFocusEditor()?.getDocumentData().body?.dataStream;
  let listed: string | undefined;
  const register = shortcuts.registerShortcut.bind(shortcuts);
  shortcuts.registerShortcut = (item) => {
    const takes =
      takesCompletion.test(item.id) && (item.binding === KeyCode.ENTER || item.binding === KeyCode.TAB);
    if (!takes) return register(item);
    if (item.binding === KeyCode.ENTER) beginAtFirst(injector.get(ICommandService), item.id);
    return register({
      ...item,
      preconditions: (contexts) => text() === listed && (item.preconditions?.(contexts) ?? true),
    });
  };
  return () => {
    listed = text();
  };
}

/** As many as the grid lists. */
const mostListed = 10;

/**
 * Marks the first of a new list. The grid leaves the mark where it was in the list before, be there nothing now: Enter would
 * then do nothing.
 */
function beginAtFirst(commands: ICommandService, id: string): void {
  queueMicrotask(() => {
    for (let i = 0; i < mostListed; i++)
      commands.executeCommand(id, { keyCode: KeyCode.ARROW_UP }).catch(() => undefined);
  });
}

/**
 * The grid puts the cursor behind what it has completed a moment later: what is typed at once would stand before it, and
 * the cursor would jump. Here it goes there at once, and does not go back.
 */
function goOnBehindCompletion(injector: Injector): void {
  const editors = injector.get(IEditorService, Quantity.OPTIONAL);
  if (!editors) return;
  const commands = injector.get(ICommandService);
  const now = () => {
    const editor = editors.getFocusEditor();
    const [cursor] = editor?.getSelectionRanges() ?? [];
    if (!editor || !cursor?.collapsed) return undefined;
    return {
      editor,
      cursor: cursor.startOffset,
      length: editor.getDocumentData().body?.dataStream.length ?? 0,
    };
  };
  let before: ReturnType<typeof now>;
  commands.beforeCommandExecuted(({ id }) => {
    if (takesCompletion.test(id)) before = now();
  });
  commands.onCommandExecuted(({ id }) => {
    if (!takesCompletion.test(id) || !before) return;
    const { editor, cursor, length } = before;
    const longer = (editor.getDocumentData().body?.dataStream.length ?? 0) - length;
    if (longer === 0) return;
    const behind = cursor + longer;
    const set = editor.setSelectionRanges.bind(editor);
    set([{ startOffset: behind, endOffset: behind }]);
    const once: typeof set = (ranges, focusesToo) => {
      const [range] = ranges;
      if (range?.startOffset === behind && range.endOffset === behind)
        Object.assign(editor, { setSelectionRanges: set });
      else set(ranges, focusesToo);
    };
    Object.assign(editor, { setSelectionRanges: once });
  });
}

/** What may stand in the brackets after the name of a table; those that begin with what is typed come first. */
function columns(unit: GridUnit, typed: string): ISearchItemWithType[] {
  const [, name = "", begun = ""] = /^([^[\]]+)\[([^[\]]*)$/.exec(typed) ?? [];
  const table = tablesOf(unit).find((each) => each.name.toLowerCase() === name.toLowerCase());
  if (!table) return [];
  const sought = begun.toLowerCase();
  const parts = [
    {
      part: "#All",
      help: `The whole table ${table.name}, headings included. Functions of ${namespace} take it so.`,
    },
    // A heading with signs of the notation itself cannot be written in it here.
    ...table.headings
      .filter((heading) => heading !== "" && !/[[\]#']/.test(heading))
      .map((part) => ({ part, help: `A column of the table ${table.name}` })),
  ];
  const at = ({ part }: { part: string }): number => part.toLowerCase().indexOf(sought);
  return parts
    .filter((each) => at(each) >= 0)
    .sort((a, b) => Number(at(a) > 0) - Number(at(b) > 0))
    .map(({ part, help }) => ({
      name: `${table.name}[${part}]`,
      desc: help,
      functionType: FunctionType.Table,
    }));
}
