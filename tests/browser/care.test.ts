import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from "vitest";
import { faults } from "./faults.ts";
import type { Visitor } from "./page.ts";
import { newVisitor, ready } from "./page.ts";
import { goToStop, openSection, shownSection, tour } from "./tour.ts";

describe("a narrow screen of 320 px", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor({ width: 320, height: 640 });
    page = await visitor.open(inject("address"));
  });

  afterAll(() => visitor.close());

  it("shows sheet and pane in turn", async () => {
    await page.getByRole("button", { name: "Pane", exact: true }).click();
    await openSection(page, "Home");
    await page.getByRole("button", { name: "Sheet", exact: true }).click();
    await page.locator("canvas").first().waitFor();
  });

  it("goes to the sheet when a flag is chosen in the pane", async () => {
    await page.getByRole("button", { name: "Pane", exact: true }).click();
    await openSection(page, "Check");
    await page.locator("[data-flag]").first().click();
    await page.locator("canvas").first().waitFor({ state: "visible" });
    expect(await page.getByRole("button", { name: "Sheet", exact: true }).getAttribute("aria-pressed")).toBe(
      "true",
    );
  });
});

/** Every state of the pane, at the width that it is made for. */
describe.each(["light", "dark"] as const)("every answer at 320 px, %s", (colorScheme) => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor({ width: 320, height: 640 });
    page = await visitor.context.newPage();
    await page.emulateMedia({ colorScheme });
    await page.goto(inject("address"));
    await ready(page);
    await page.getByRole("button", { name: "Pane", exact: true }).click();
  });

  afterAll(() => visitor.close());

  it.each(tour.map((stop) => [stop.name, stop] as const))(
    "%s: axe finds no fault, and nothing is cut off at the side, folded and unfolded",
    async (_, stop) => {
      await goToStop(page, stop);
      const shown = shownSection(page, stop.section);
      await isAllThere(shown);
      await isSound(page, "as it is met");
      const folded = await unfold(shown);
      await isAllThere(shown);
      // The tables behind drawings.
      const asTables = await shown.getByLabel("Show as table").filter({ visible: true }).all();
      for (const asTable of asTables) await asTable.check();
      if (folded + asTables.length > 0) await isSound(page, "unfolded, drawings as tables");
      if (colorScheme === "light") expect(await withoutKeyboard(page, shown)).toEqual([]);
      for (const asTable of asTables) await asTable.uncheck();
      await fold(shown);
    },
  );

  it("what is wrong with something typed, and the forms of the bar above", async () => {
    await openSection(page, "Groups");
    const shown = shownSection(page, "Groups");
    await shown.getByRole("button", { name: "Who shares a body?" }).click();
    await unfold(shown);
    await shown.getByLabel("How far two figures may differ").last().fill("lots");
    await shown.getByText("“lots” is not a number").waitFor();
    await isSound(page, "a refusal");
    await shown.getByLabel("How far two figures may differ").last().fill("1");
    await openSection(page, "Check");
    await page.getByRole("button", { name: "It is right" }).first().click();
    await page.getByText(/^✓ Done\./).waitFor();
    await isSound(page, "a message");
    await page.getByRole("button", { name: "Close this message" }).click();
    for (const form of ["New book", "Books", "Save .xlsx"]) {
      await page.getByRole("button", { name: form, exact: true }).click();
      await page.locator(".shelf, .ask").filter({ visible: true }).first().waitFor();
      await isSound(page, form, ".shelf, .ask");
      await page.getByRole("button", { name: form, exact: true }).click();
    }
  });

  async function isSound(at: Page, state: string, part?: string): Promise<void> {
    expect(await overflow(at), state).toBeLessThanOrEqual(0);
    // Long, and from its beginning: axe takes a label that is scrolled out of sight for none.
    await at.setViewportSize({ width: 320, height: 6000 });
    await at.evaluate(() => {
      for (const shown of document.querySelectorAll(".pane [role=region]")) shown.scrollTop = 0;
    });
    expect(await faults(at, part), state).toEqual([]);
    await at.setViewportSize({ width: 320, height: 640 });
  }
});

describe("what can go wrong, on the page without Excel", () => {
  let visitor: Visitor;
  let page: Page;

  beforeEach(async () => {
    visitor = await newVisitor();
    page = await visitor.open(inject("address"));
  });

  afterEach(() => visitor.close());

  it("says of a picture renamed .csv what it is, and imports nothing", async () => {
    await openSection(page, "Import");
    await page.locator("input[type=file]").setInputFiles({
      name: "chart.csv",
      mimeType: "text/csv",
      buffer: readFileSync("manifest/icons/icon-32.png"),
    });
    await page
      .getByText(/picture/i)
      .first()
      .waitFor();
    expect(await page.getByRole("button", { name: /^Import \d/ }).count()).toBe(0);
  });

  it("keeps what was typed when the page is closed without a word", async () => {
    await pasteChart(page, "Name,Bust (mm)\nQuillon,201\n");
    await page.close({ runBeforeUnload: false });
    page = await visitor.open(inject("address"));
    await openSection(page, "Import");
    await page.getByLabel("Or paste rows, headings first").fill("Name,Bust (mm)\nQuillon,201\n");
    await page.getByRole("button", { name: "Read the pasted rows" }).click();
    await page.getByText("1 figure is in the chart already").waitFor();
  });
});

async function pasteChart(page: Page, text: string): Promise<void> {
  await openSection(page, "Import");
  await page.getByLabel("Or paste rows, headings first").fill(text);
  await page.getByRole("button", { name: "Read the pasted rows" }).click();
  await page.getByRole("button", { name: /^Import \d/ }).click();
  await page.getByText("The table Figures holds the figures now.").waitFor();
}

/** How many pixels the page is wider than its window. */
function overflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Waits until a part of the page says no longer that it is reading, looking or drawing. */
async function isAllThere(part: Locator): Promise<void> {
  const waiting = part.locator("p").filter({ hasText: / …$/, visible: true });
  await expect.poll(() => waiting.allInnerTexts()).toEqual([]);
}

/** Opens all that is folded in a part of the page, and waits until it has heard of that; how many there were. */
function unfold(part: Locator): Promise<number> {
  return part.evaluate(async (within) => {
    const folded = [...within.querySelectorAll<HTMLDetailsElement>("details:not([open])")];
    await Promise.all(
      folded.map((details) => {
        const heard = new Promise((resolve) => {
          details.addEventListener("toggle", resolve, { once: true });
        });
        details.open = true;
        details.dataset["unfolded"] = "";
        return heard;
      }),
    );
    return folded.length;
  });
}

/** Folds again what was opened for a look. */
function fold(part: Locator): Promise<void> {
  return part.evaluate((within) => {
    for (const details of within.querySelectorAll<HTMLDetailsElement>("details[data-unfolded]")) {
      details.open = false;
      delete details.dataset["unfolded"];
    }
  });
}

/**
 * Goes through a section with Tab, from its name in the list of sections on.
 *
 * @returns controls that Tab does not reach, and those that look the same with the keyboard on them as without
 */
async function withoutKeyboard(page: Page, section: Locator): Promise<readonly string[]> {
  const count = await section.evaluate((within) => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    for (const moving of document.getAnimations())
      if (moving.effect?.getComputedTiming().endTime !== Infinity) moving.finish();
    /** What shows focus: of a control itself, what stands around it and beside it, and their drawn parts. */
    const looks = (control: Element): string =>
      [control, control.parentElement, ...(control.parentElement?.children ?? [])]
        .flatMap((part) => (part ? ["", "::before", "::after"].map((drawn) => [part, drawn] as const) : []))
        .map(([part, drawn]) => {
          const style = getComputedStyle(part, drawn || undefined);
          return [
            style.outline,
            style.boxShadow,
            style.borderColor,
            style.borderWidth,
            style.transform,
            style.opacity,
          ].join();
        })
        .join("|");
    const controls = [
      ...within.querySelectorAll<HTMLElement>(
        "a[href], button, input, select, textarea, summary, [tabindex]",
      ),
    ].filter(
      (control) =>
        control.tabIndex >= 0 &&
        !control.matches(":disabled, [type=file]") &&
        control.checkVisibility({ visibilityProperty: true }) &&
        // Of choices of which one is made, Tab reaches the one; arrow keys the others.
        !(control instanceof HTMLInputElement && control.type === "radio" && !control.checked),
    );
    const waiting = new Map(controls.map((control) => [control, looks(control)]));
    const alike: string[] = [];
    const nameOf = (control: HTMLElement): string =>
      `${control.tagName} ${control.getAttribute("aria-label") ?? (control as HTMLInputElement).labels?.[0]?.textContent ?? control.innerText}`.slice(
        0,
        60,
      );
    Object.assign(window, {
      walked: {
        /** Notes what the keyboard is on; whether that is in the section. */
        step: (): boolean => {
          const now = document.activeElement;
          if (!(now instanceof HTMLElement) || !within.contains(now)) return false;
          // What moves into its look for the keyboard is asked at the end of the way.
          for (const moving of document.getAnimations())
            if (moving.effect?.getComputedTiming().endTime !== Infinity) moving.finish();
          const before = waiting.get(now);
          if (before !== undefined && before === looks(now)) alike.push(`shows no focus: ${nameOf(now)}`);
          waiting.delete(now);
          return true;
        },
        left: (): readonly string[] => [
          ...[...waiting.keys()].map((each) => `not reached: ${nameOf(each)}`),
          ...alike,
        ],
      },
    });
    const [first] = controls;
    first?.focus();
    return controls.length;
  });
  interface Walk {
    readonly walked: { step(): boolean; left(): readonly string[] };
  }
  const step = (): Promise<boolean> => page.evaluate(() => (window as unknown as Walk).walked.step());
  // To the first control by key, so that its focus is a keyboard’s.
  await page.keyboard.press("Shift+Tab");
  await page.keyboard.press("Tab");
  for (let pressed = 0; pressed < count + 5 && (await step()); pressed++) await page.keyboard.press("Tab");
  return page.evaluate(() => (window as unknown as Walk).walked.left());
}
