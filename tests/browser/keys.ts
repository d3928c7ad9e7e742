import type { Page } from "playwright-core";

/** What the keyboard is on: its name, or what it says. */
export const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (!(element instanceof HTMLElement)) return "";
    const labels =
      element instanceof HTMLTextAreaElement || element instanceof HTMLInputElement ? element.labels : null;
    return element.getAttribute("aria-label") ?? labels?.[0]?.textContent ?? element.innerText;
  });

/** Presses a key until the keyboard is on something of that name. */
export async function keyTo(page: Page, name: string | RegExp, key = "Tab"): Promise<void> {
  const met: string[] = [];
  for (let i = 0; i < 120; i++) {
    await page.keyboard.press(key);
    const now = await focused(page);
    if (typeof name === "string" ? now === name : name.test(now)) return;
    met.push(now.slice(0, 40));
  }
  throw new Error(`${key} does not lead to ${String(name)}, only to ${met.join(" | ")}`);
}
