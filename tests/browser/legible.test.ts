import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { hardToRead, notInForcedColours, smallestDrawnLetters } from "./legible.ts";
import type { Visitor } from "./page.ts";
import { newVisitor, ready } from "./page.ts";
import { goToStop, shownSection, tour } from "./tour.ts";

/**
 * What readers set for themselves, as the Web Content Accessibility Guidelines (WCAG) 2.2 have it: letters twice as large (1.4.4
 * Resize Text), and lines, paragraphs, letters and words this much farther apart (1.4.12 Text Spacing).
 */
const settings = `
  html[data-letters="large"] { font-size: 200%; }
  html[data-letters="apart"] * {
    line-height: 1.5 !important;
    letter-spacing: 0.12em !important;
    word-spacing: 0.16em !important;
  }
  html[data-letters="apart"] p { margin-bottom: 2em !important; }
`;

/** Every answer of the pane, once, in each of these. */
describe("every answer for readers with letters and colours of their own", () => {
  let visitor: Visitor;
  let page: Page;

  beforeAll(async () => {
    visitor = await newVisitor({ width: 400, height: 800 });
    page = await visitor.context.newPage();
    await page.emulateMedia({ reducedMotion: "reduce" });
    await page.goto(inject("address"));
    await ready(page);
    await page.addStyleTag({ content: settings });
    await page.getByRole("button", { name: "Pane", exact: true }).click();
  });

  afterAll(() => visitor.close());

  it.each(tour.map((stop) => [stop.name, stop] as const))("%s", async (_, stop) => {
    // As it is to be found, whatever the stop before left behind.
    await page.emulateMedia({ forcedColors: "none", colorScheme: "light" });
    await setLetters("");
    await page.setViewportSize({ width: 400, height: 800 });
    await goToStop(page, stop);
    const shown = shownSection(page, stop.section);
    await isEasyToRead(shown, "400 px wide");
    await expectDrawnLetters(shown, 12);
    await page.setViewportSize({ width: 320, height: 800 });
    await isEasyToRead(shown, "320 px wide");
    await setLetters("apart");
    await isEasyToRead(shown, "letters and lines farther apart");
    await page.setViewportSize({ width: 400, height: 800 });
    await setLetters("large");
    await isEasyToRead(shown, "letters twice as large");
    // WCAG 2.2, 1.4.4: text can be resized up to 200 percent; the letters of drawings are text too.
    await expectDrawnLetters(shown, 24);
    await page.setViewportSize({ width: 320, height: 800 });
    await isEasyToRead(shown, "letters twice as large, 320 px wide");
    await page.setViewportSize({ width: 400, height: 800 });
    await setLetters("");
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ forcedColors: "active", colorScheme });
      // The pane follows when it hears of it.
      await expect
        .poll(() => shown.evaluate(notInForcedColours), { message: `forced colours, ${colorScheme}` })
        .toEqual([]);
    }
  });

  /** Drawings are as wide as their place, and learn of another width when it is laid out. */
  async function isEasyToRead(shown: Locator, how: string): Promise<void> {
    await expect.poll(() => shown.evaluate(hardToRead), { message: how }).toEqual([]);
  }

  /** @param least in CSS pixels; a hair less is what is left of rounding */
  async function expectDrawnLetters(shown: Locator, least: number): Promise<void> {
    await expect
      .poll(() => shown.evaluate(smallestDrawnLetters), { message: "letters of drawings" })
      .toBeGreaterThan(least * 0.99);
  }

  function setLetters(letters: "apart" | "large" | ""): Promise<unknown> {
    return page.evaluate((set) => (document.documentElement.dataset["letters"] = set), letters);
  }
});
