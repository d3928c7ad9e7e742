import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import type { Html } from "../../addin/publish/page/html.ts";
import { asIs, markup, name } from "../../addin/publish/page/html.ts";
import { inOrder } from "./measuring.ts";
import { figureLines, spokenPlace, tapeOn, tapePlaces } from "./tapePlaces.ts";

const title = "How to take the measures";

/** The sizes of paper that it is set for. */
export const guidePapers = ["A4", "Letter"] as const;
export type GuidePaper = (typeof guidePapers)[number];

/**
 * Width of the drawing and of a card, so that two cards stand beside each other on both papers. A little room beside the cards, since
 * their frames are cut where they stand at the very edge of what is printed.
 */
export const guideStyle = `
  :host, body { margin: 0; color: #26292e; background: #fff; font: 10pt/1.35 system-ui, sans-serif; }
  main { max-width: 190mm; margin: 0 auto; padding: 8mm; }
  h1 { font-size: 16pt; line-height: 1.2; margin: 0 0 2mm; }
  h2 { font-size: 11.5pt; line-height: 1.2; margin: 0 0 1mm; overflow-wrap: anywhere; }
  p { margin: 0 0 1.5mm; }
  .quiet { color: #5c6068; }
  ol { list-style: none; margin: 4mm 0 0; padding: 0; display: grid; grid-template-columns: repeat(auto-fill, minmax(72mm, 1fr)); gap: 4mm; }
  li { break-inside: avoid; border: 0.3mm solid #d9d3c5; border-radius: 1.5mm; padding: 3mm; display: grid; grid-template-columns: 22mm 1fr; gap: 3mm; }
  svg { width: 22mm; height: auto; display: block; }
  .lines { display: flex; flex-wrap: wrap; align-items: flex-end; gap: 1mm 4mm; margin: 0; }
  .line { flex: 1 1 0; min-width: 14mm; display: flex; align-items: flex-end; gap: 1mm; height: 9mm; }
  .line::after { content: ""; flex: 1; border-bottom: 0.3mm solid #5c6068; }
  .who { margin-bottom: 3mm; }
  .who .line { min-width: 36mm; }
  .takes .line { min-width: 12mm; }
  .takes { gap: 1mm 2mm; }
  @media print { main { max-width: none; padding: 0 0.5mm; } ol { grid-template-columns: 1fr 1fr; } }
`;

/** Where pages are numbered: CSS Paged Media Module Level 3, “Page-Margin Boxes”; a browser without them leaves the number out. */
export function guidePageRule(paper: GuidePaper): string {
  const look = "font: 8pt system-ui, sans-serif; color: #5c6068;";
  return `@page { size: ${paper}; margin: 12mm 12mm 14mm; @bottom-left { content: "${title}"; ${look} } @bottom-right { content: counter(page) " / " counter(pages); ${look} } }`;
}

/** The measures of a chart that have a drawing or a description, from head to foot. */
export function guideMeasures(chart: Chart): readonly MeasureColumn[] {
  return inOrder(chart, undefined, "body").filter(({ measure }) => measure !== undefined);
}

/**
 * What is printed: each measure with its drawing, how it is taken, and room for three readings.
 *
 * @param book what the maker calls her book, where that is known
 */
export function guideContent(columns: readonly MeasureColumn[], book?: string): Html {
  return markup`<main>
      <h1>${title}</h1>
      ${book !== undefined && markup`<p>${name(book)}</p>`}
      <p class="lines who">${["Figure", "Date", "Measured by"].map(lineAfter)}</p>
      <p>The tape lies close and does not press in. It is level around the body, and straight along it. A dashed line goes behind.</p>
      <p class="quiet">Take each measure twice, the second time without a look at the first; where both differ, a third time. Drawings show places, not sizes.</p>
      <ol>${columns.map(cardOf)}</ol>
    </main>`;
}

function cardOf({ heading, measure, unit }: MeasureColumn): Html {
  return markup`<li>
      ${drawingOf(measure?.id, heading)}
      <div>
        <h2>${name(heading)}</h2>
        <p>${measure?.definition ?? ""}</p>
        <p class="quiet">${measure?.onFigures ?? ""}</p>
        <p class="lines takes">${["1", "2", "3"].map(lineAfter)} ${unit}</p>
      </div>
    </li>`;
}

/** A word, and a line to write on. */
function lineAfter(word: string): Html {
  return markup`<span class="line">${word}</span> `;
}

function drawingOf(measureId: string | undefined, heading: string): Html {
  const place = measureId === undefined ? undefined : tapePlaces[measureId];
  if (!place) return markup`<span></span>`;
  const { strokes, ends, transform } = tapeOn(place);
  return markup`<svg viewBox="0 0 100 212" role="img" aria-label="${spokenPlace(heading, place)}">
      ${figureLines.map((path) => markup`<path d="${path}" fill="#fff" stroke="#5c6068" stroke-width="0.8"/>`)}
      <g${transform === undefined ? "" : markup` transform="${transform}"`} fill="none" stroke="#1f5fa8" stroke-linecap="round" stroke-linejoin="round">
        ${strokes.map(({ path, isBehind }) =>
          isBehind
            ? markup`<path d="${path}" stroke-width="1.2" stroke-dasharray="2 2.4"/>`
            : markup`<path d="${path}" stroke-width="1.8"/>`,
        )}
      </g>
      ${ends.map(([x, y]) => markup`<circle cx="${x}" cy="${y}" r="1.6" fill="#1f5fa8"/>`)}
    </svg>`;
}

/**
 * The guide as a file of its own: one HTML page without a script, which asks no address for anything.
 *
 * @param styleHash base64 of the SHA-256 of {@link guideStyles} for that paper
 */
export function guideFile(
  columns: readonly MeasureColumn[],
  paper: GuidePaper,
  styleHash: string,
  book?: string,
): string {
  const policy = `default-src 'none'; style-src 'sha256-${styleHash}'; base-uri 'none'; form-action 'none'`;
  return markup`<!DOCTYPE html>
    <html lang="en-GB">
      <head>
        <meta charset="utf-8">
        <meta http-equiv="Content-Security-Policy" content="${policy}">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <meta name="referrer" content="no-referrer">
        <title>${title}</title>
        <style>${asIs(guideStyles(paper))}</style>
      </head>
      <body>${guideContent(columns, book)}</body>
    </html>
  `.html;
}

export function guideStyles(paper: GuidePaper): string {
  return `${guidePageRule(paper)}${guideStyle}`;
}
