/**
 * Runs in the page before all else: marks the moments that are told apart, as “measure-book …”. What it costs, a few
 * milliseconds, counts.
 */
import { firstText } from "./firstText.ts";

function mark(name: string): void {
  const full = `measure-book ${name}`;
  if (performance.getEntriesByName(full).length > 0) return;
  performance.mark(full);
  // Told to who waits, without asking the page again and again.
  console.debug(full);
}

mark("begun");
CanvasRenderingContext2D.prototype.fillText = new Proxy(CanvasRenderingContext2D.prototype.fillText, {
  apply: (draw, context, given: Parameters<CanvasRenderingContext2D["fillText"]>) => {
    if (given[0] === firstText) mark("grid drawn");
    Reflect.apply(draw, context, given);
  },
});
const seen = new MutationObserver(() => {
  if (document.querySelector("[aria-label='Sections'] button")) mark("pane seen");
  // A field or button of the section that is shown, which is enabled.
  if (document.querySelector("[id^='section-']:not([hidden]) :is(button, input, textarea):enabled"))
    mark("pane usable");
  if (document.documentElement.dataset.ready !== "true") return;
  mark("all calculated");
  seen.disconnect();
});
seen.observe(document, { subtree: true, childList: true, attributes: true });
