import type { IDisposable, Injector } from "@univerjs/core";
import { LocaleService } from "@univerjs/core";
import type { IMenuSchema } from "@univerjs/preset-sheets-core";
import { IMenuManagerService, MenuManagerPosition } from "@univerjs/preset-sheets-core";
import { addressBox } from "./addressBox.ts";
import { cellsField } from "./cellsField.ts";

const formulaField = "#__editor___INTERNAL_EDITOR__DOCS_FORMULA_BAR";

/** Names of what the grid shows as a mere icon, by the icon. */
const iconNames: Readonly<Record<string, string>> = {
  "increase-icon": "Add a sheet",
  "convert-icon": "All sheets",
  "more-icon univer-rotate-180": "Earlier sheet tabs",
  "more-icon": "Further sheet tabs",
};

type Attributes = Readonly<Record<string, string | undefined>>;

/**
 * Gives the grid’s own controls what it leaves out: names for the buttons that are icons, roles and a place in the
 * keyboard’s order for those that are no buttons, a role and a name for the fields that are typed into. It does so from
 * outside, again whenever the grid draws anew; what the grid says itself is left as it is.
 *
 * @param container what the grid fills; its menus and one of its fields lie elsewhere on the page
 */
export function nameControls(container: HTMLElement, injector: Injector): IDisposable {
  const commands = commandNames(injector);
  let frame: number | undefined;
  const mend = (): void => {
    frame = undefined;
    mendFields(container);
    mendButtons(container, commands);
    mendRest(container);
  };
  const soon = (): void => {
    frame ??= requestAnimationFrame(mend);
  };
  const observer = new MutationObserver(soon);
  observer.observe(document.body, { childList: true, subtree: true });
  container.addEventListener("keydown", pressed);
  soon();
  return {
    dispose: () => {
      observer.disconnect();
      container.removeEventListener("keydown", pressed);
      if (frame !== undefined) cancelAnimationFrame(frame);
    },
  };
}

/** What each command of the grid is called, in the words of the grid’s own hints. */
function commandNames(injector: Injector): ReadonlyMap<string, string> {
  const locale = injector.get(LocaleService);
  const names = new Map<string, string>();
  const read = ({ item, children }: IMenuSchema): void => {
    const words = item && (item.tooltip ?? item.title);
    if (item && typeof words === "string") names.set(item.id, locale.t(words));
    children?.forEach(read);
  };
  injector.get(IMenuManagerService).getMenuByPositionKey(MenuManagerPosition.RIBBON).forEach(read);
  return names;
}

function mendFields(container: HTMLElement): void {
  set(container.querySelector(cellsField), {
    role: "textbox",
    tabindex: "0",
    "aria-label": "Cells of the sheet",
    "aria-multiline": "true",
    "aria-description":
      "Arrow keys go from cell to cell, F2 changes a cell. Escape, then Tab leaves the sheet; F6 goes on to the pane.",
  });
  // It is reached through F2 in a cell; by Tab it would be a second place for the same.
  set(document.querySelector(formulaField), {
    role: "textbox",
    "aria-label": "Formula bar",
    "aria-multiline": "true",
    tabindex: "-1",
  });
  // It lies beside everything else on the page.
  set(document.querySelector(formulaField)?.closest("body > *") ?? null, {
    role: "region",
    "aria-label": "Field of the formula bar",
  });
  set(container.querySelector(addressBox), { "aria-label": "Go to cell or name" });
  set(container.querySelector("[data-u-command='sheet.command.set-range-font-family'] input"), {
    "aria-label": "Font",
  });
  set(container.querySelector("[data-u-command='sheet.command.set-range-fontsize'] input"), {
    "aria-label": "Font size",
  });
  for (const canvas of container.querySelectorAll("canvas[tabindex]")) set(canvas, { tabindex: "-1" });
}

function mendButtons(container: HTMLElement, commands: ReadonlyMap<string, string>): void {
  for (const element of container.querySelectorAll("[data-u-command]")) {
    const name = commands.get(element.getAttribute("data-u-command") ?? "");
    if (name === undefined || hasWords(element)) continue;
    if (element.querySelector("input")) continue;
    if (element instanceof HTMLButtonElement || element.getAttribute("type") === "button") {
      set(element, { "aria-label": name });
      continue;
    }
    // A button with a second one beside it, that opens more choices.
    const [act, choose] = element.children;
    if (act && !act.hasAttribute("aria-haspopup")) set(act, asButton(name));
    const more = choose?.matches("[aria-haspopup]") ? choose : choose?.querySelector("[aria-haspopup]");
    if (more) set(more, { "aria-label": `${name}: choose` });
  }
  for (const trigger of container.querySelectorAll("[aria-haspopup]:not(button)")) {
    if (trigger.querySelector("button, input")) {
      // What it holds has the keyboard, and hands it on.
      for (const name of ["aria-haspopup", "aria-expanded", "role", "tabindex", "aria-label"])
        trigger.removeAttribute(name);
    } else set(trigger, asButton(trigger.getAttribute("aria-label") ?? triggerName(trigger, commands)));
  }
  for (const button of container.querySelectorAll("button:not([aria-label])")) {
    if (hasWords(button)) continue;
    const icon = button.querySelector("svg")?.getAttribute("class") ?? "";
    const name = Object.entries(iconNames).find(([key]) => icon.includes(key))?.[1];
    set(button, { "aria-label": name ?? "Stop calculating" });
  }
}

function triggerName(trigger: Element, commands: ReadonlyMap<string, string>): string | undefined {
  if (trigger.closest("[data-u-comp=defined-name]")) return "Names in this workbook";
  const command = trigger.closest("[data-u-command]") ?? trigger.querySelector("[data-u-command]");
  return commands.get(command?.getAttribute("data-u-command") ?? "");
}

function mendRest(container: HTMLElement): void {
  set(container.querySelector("[role=toolbar]"), { "aria-label": "Looks of cells, and more" });
  // Two places for messages have the same name; a landmark has to be told from others.
  container.querySelectorAll("section[aria-live]").forEach((place, i) => {
    set(place, {
      role: "log",
      "aria-label": i === 0 ? "Messages of the sheet" : `Messages of the sheet, ${String(i + 1)}`,
    });
  });
  // The arrow keys go through it from the cell, where they stay; it scrolls, so it is named as a place of its own.
  set(document.querySelector("ul[data-u-comp=sheets-formula-editor]"), {
    tabindex: "0",
    "aria-label": "What may be meant: arrow keys choose, Tab takes it",
  });
  for (const sidebar of container.querySelectorAll("[data-u-comp=sidebar]")) {
    sidebar.removeAttribute("aria-expanded");
    // Closed it is moved out of sight, and its button would have the keyboard there.
    sidebar.toggleAttribute("inert", sidebar.clientWidth === 0);
  }
}

function asButton(name: string | undefined): Attributes {
  return { role: "button", tabindex: "0", "aria-label": name };
}

/** What stands in for a button acts as one does: Enter and the space bar press it. Those that open a menu know that. */
function pressed(event: KeyboardEvent): void {
  const { target, key } = event;
  if (!(target instanceof HTMLElement) || target.tagName === "BUTTON") return;
  if (target.getAttribute("role") !== "button" || target.getAttribute("aria-haspopup") === "menu") return;
  if (key !== "Enter" && key !== " ") return;
  event.preventDefault();
  target.click();
}

function hasWords(element: Element): boolean {
  return element.textContent.trim() !== "";
}

function set(element: Element | null, attributes: Attributes): void {
  if (!element) return;
  for (const [name, value] of Object.entries(attributes))
    if (value !== undefined && element.getAttribute(name) !== value) element.setAttribute(name, value);
}
