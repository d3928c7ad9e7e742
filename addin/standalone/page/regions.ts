import { cellsField } from "../grid/cellsField.ts";

/** Parts of the page between which F6 goes. Each is an element with that name as `data-region`. */
export type Region = "sheet" | "pane" | "books" | "top";

export interface RegionsOptions {
  /** The regions that can be reached now, in the order of F6. */
  readonly regions: () => readonly Region[];
  /** Bring a region into sight, before the keyboard goes there. */
  readonly show: (region: Region) => void;
  readonly focusCells: () => void;
  /** Whether something is being typed into a cell: then keys belong to it. */
  readonly isTyping: () => boolean;
  readonly say: (words: string) => void;
}

export interface Regions {
  goTo(region: Region): void;
  stop(): void;
}

/** Elements to which the grid does not leave the keyboard: it takes it back into the cells. */
const takenBack = new Set(["button", "sheet-bar-append-button"]);

/**
 * Ways around the page without a mouse: F6 and Shift+F6 go from region to region and come back to where one was; Escape,
 * then Tab or Shift+Tab leaves the cells, where Tab alone goes to the next cell.
 *
 * Listens before the grid does, so it has to be called before the grid opens.
 */
export function watchRegions(options: RegionsOptions): Regions {
  const last = new Map<Region, HTMLElement>();
  let isLeaving = false;
  let isTabbing = false;

  const goTo = (region: Region): void => {
    options.show(region);
    if (region === "sheet") {
      options.focusCells();
      return;
    }
    const part = elementOf(region);
    const before = last.get(region);
    const next = before && part?.contains(before) && isShown(before) ? before : part && tabStops(part)[0];
    next?.focus();
  };

  const keydown = (event: KeyboardEvent): void => {
    isTabbing = event.key === "Tab";
    if (event.ctrlKey || event.altKey || event.metaKey || options.isTyping()) {
      isLeaving = false;
      return;
    }
    if (event.key === "F6") {
      taken(event);
      const regions = options.regions();
      const now = regions.indexOf(regionOf(document.activeElement) ?? regions.at(-1) ?? "top");
      const next = regions.at((now + (event.shiftKey ? -1 : 1)) % regions.length);
      if (next) goTo(next);
      return;
    }
    if (event.key === "Tab" && isLeaving) {
      taken(event);
      isLeaving = false;
      const stops = tabStops(document.body);
      const now = stops.findIndex((stop) => stop.matches(cellsField));
      stops.at((now + (event.shiftKey ? -1 : 1)) % stops.length)?.focus();
      return;
    }
    if (event.key === "Shift") return;
    isLeaving = event.key === "Escape" && event.target instanceof Element && event.target.matches(cellsField);
    if (isLeaving) options.say("Tab leaves the sheet now.");
  };

  const focusin = (event: FocusEvent): void => {
    const { target } = event;
    if (!(target instanceof HTMLElement)) return;
    const region = regionOf(target);
    if (region) last.set(region, target);
    if (isTabbing && takenBack.has(target.dataset.uComp ?? "")) event.stopImmediatePropagation();
  };

  const pointerdown = (): void => {
    isTabbing = false;
    isLeaving = false;
  };

  window.addEventListener("keydown", keydown, { capture: true });
  window.addEventListener("focusin", focusin, { capture: true });
  window.addEventListener("pointerdown", pointerdown, { capture: true });
  return {
    goTo,
    stop: () => {
      window.removeEventListener("keydown", keydown, { capture: true });
      window.removeEventListener("focusin", focusin, { capture: true });
      window.removeEventListener("pointerdown", pointerdown, { capture: true });
    },
  };
}

function taken(event: KeyboardEvent): void {
  event.preventDefault();
  event.stopImmediatePropagation();
}

function elementOf(region: Region): HTMLElement | null {
  return document.querySelector(`[data-region="${region}"]`);
}

/** Menus and one field of the grid lie outside its region. */
function regionOf(element: Element | null): Region | undefined {
  if (!element || element === document.body) return undefined;
  const region = element.closest("[data-region]")?.getAttribute("data-region");
  if (region === "sheet" || region === "pane" || region === "books" || region === "top") return region;
  return element.closest("#root") ? undefined : "sheet";
}

const canFocus =
  "a[href], button, input, select, textarea, summary, [contenteditable='true'], [tabindex]:not([tabindex^='-'])";

/** Where Tab stops within an element, in order. */
function tabStops(within: HTMLElement): HTMLElement[] {
  return [...within.querySelectorAll<HTMLElement>(canFocus)].filter(
    (element) =>
      element.tabIndex >= 0 && !element.matches(":disabled, [aria-hidden='true'] *") && isShown(element),
  );
}

function isShown(element: HTMLElement): boolean {
  return element.checkVisibility({ visibilityProperty: true });
}
