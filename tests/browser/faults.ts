import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What axe finds wrong with a part of the page as it is shown now, in words. */
export async function faults(page: Page, part = ".pane"): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async (within) => {
    // axe-core puts itself on the window.
    const { axe: tester } = window as unknown as {
      axe: {
        run(
          context: string,
        ): Promise<{ violations: { id: string; help: string; nodes: { html: string }[] }[] }>;
      };
    };
    // What fades in has its colour at the end.
    for (const moving of document.getAnimations())
      if (moving.effect?.getComputedTiming().endTime !== Infinity) moving.finish();
    const { violations } = await tester.run(within);
    return violations.map(({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ html }) => html).join()}`);
  }, part);
}
