import type { Chart, MeasureColumn } from "../../addin/chart/chart.ts";
import type { Html } from "../../addin/publish/page/html.ts";
import { asIs, markup, name } from "../../addin/publish/page/html.ts";
import { inOrder } from "./measuring.ts";
import { figureLines, spokenPlace, tapeOn, tapePlaces } from "./tapePlaces.ts";

/** The sizes of paper that it is set for. */
export const guidePapers = ["A4", "Letter"] as const;
export type GuidePaper = (typeof guidePapers)[number];

/** Width of the drawing and of a card, so that two cards stand beside each other on both papers. */
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
  .takes { color: #26292e; border-top: 0.2mm solid #d9d3c5; padding-top: 2mm; margin-top: 2mm; }
  @media print { main { max-width: none; padding: 0; } }
`;

export function guidePageRule(paper: GuidePaper): string {
  return `@page { size: ${paper}; margin: 12mm; }`;
}

/** The measures of a chart that have a drawing or a description, from head to foot. */
export function guideMeasures(chart: Chart): readonly MeasureColumn[] {
  return inOrder(chart, undefined, "body").filter(({ measure }) => measure !== undefined);
}

/** What is printed: each measure with its drawing, how it is taken, and room for three readings. */
export function guideContent(columns: readonly MeasureColumn[]): Html {
  return markup`<main>
      <h1>How to take the measures</h1>
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
        <p class="takes">1 ________ 2 ________ 3 ________ ${unit}</p>
      </div>
    </li>`;
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
export function guideFile(columns: readonly MeasureColumn[], paper: GuidePaper, styleHash: string): string {
  const policy = `default-src 'none'; style-src 'sha256-${styleHash}'; base-uri 'none'; form-action 'none'`;
  return markup`<!DOCTYPE html>
    <html lang="en-GB">
      <head>
        <meta charset="utf-8">
        <meta http-equiv="Content-Security-Policy" content="${policy}">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <meta name="referrer" content="no-referrer">
        <title>How to take the measures</title>
        <style>${asIs(guideStyles(paper))}</style>
      </head>
      <body>${guideContent(columns)}</body>
    </html>
  `.html;
}

export function guideStyles(paper: GuidePaper): string {
  return `${guidePageRule(paper)}${guideStyle}`;
}
