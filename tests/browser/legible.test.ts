import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { hardToRead, notInForcedColours } from "./legible.ts";
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
    await goToStop(page, stop);
    const shown = shownSection(page, stop.section);
    expect(await shown.evaluate(hardToRead), "400 px wide").toEqual([]);
    await page.setViewportSize({ width: 320, height: 800 });
    expect(await shown.evaluate(hardToRead), "320 px wide").toEqual([]);
    expect(await withLetters(shown, "apart"), "letters and lines farther apart").toEqual([]);
    await page.setViewportSize({ width: 400, height: 800 });
    expect(await withLetters(shown, "large"), "letters twice as large").toEqual([]);
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ forcedColors: "active", colorScheme });
      expect(await shown.evaluate(notInForcedColours), `forced colours, ${colorScheme}`).toEqual([]);
    }
    await page.emulateMedia({ forcedColors: "none", colorScheme: "light" });
  });

  async function withLetters(shown: Locator, letters: "apart" | "large"): Promise<readonly string[]> {
    await page.evaluate((set) => (document.documentElement.dataset["letters"] = set), letters);
    // Drawings are as wide as their place, which is looked at once a frame.
    await page.evaluate(
      () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
    );
    const found = await shown.evaluate(hardToRead);
    await page.evaluate(() => delete document.documentElement.dataset["letters"]);
    return found;
  }
});
