import { figureKey } from "../../../addin/chart/find.ts";
import type { Words } from "../../../addin/publish/words/words.ts";
import { make, part } from "./elements.ts";

/** Lets the chart be searched by name and sorted by its headings. */
export function chartTools({ page, tag }: Words): void {
  const table = document.querySelector("table.chart");
  const body = table?.querySelector("tbody");
  if (!table || !body) return;
  const rows = [...body.rows];
  const found = part("found", HTMLElement);
  const find = part("find", HTMLInputElement);
  const show = (): void => {
    const wanted = figureKey(find.value);
    for (const row of rows) row.hidden = !figureKey(row.cells[0]?.textContent ?? "").includes(wanted);
    const shown = rows.filter((row) => !row.hidden).length;
    found.textContent = wanted === "" ? page.sortHint : page.shown(shown, rows.length);
    part("none", HTMLElement).hidden = shown > 0;
  };
  find.addEventListener("input", show);
  part("tools", HTMLElement).hidden = false;
  show();

  const headings = [...table.querySelectorAll<HTMLTableCellElement>("thead th")];
  const compare = new Intl.Collator(tag, { numeric: true }).compare;
  headings.forEach((heading, column) => {
    const [label] = heading.childNodes;
    if (!label) return;
    const button = make("button", { type: "button" });
    label.replaceWith(button);
    button.append(label);
    button.addEventListener("click", () => {
      const isDown = heading.ariaSort === "ascending";
      for (const each of headings) each.ariaSort = null;
      heading.ariaSort = isDown ? "descending" : "ascending";
      const sign = isDown ? -1 : 1;
      rows.sort((a, b) => sign * compareRows(a, b, column, compare) || rows.indexOf(a) - rows.indexOf(b));
      body.append(...rows);
      found.textContent = isDown ? page.sortedDown : page.sortedUp;
    });
  });
}

/** By name in the first column, by length in the others; rows without a reading come last when sorted upwards. */
function compareRows(
  a: HTMLTableRowElement,
  b: HTMLTableRowElement,
  column: number,
  compareNames: (a: string, b: string) => number,
): number {
  const [one, other] = [a.cells[column], b.cells[column]];
  if (column === 0) return compareNames(one?.textContent ?? "", other?.textContent ?? "");
  const mm = (cell: HTMLTableCellElement | undefined): number => Number(cell?.dataset.mm ?? 1e9);
  return mm(one) - mm(other);
}
