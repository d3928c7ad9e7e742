import { addIn } from "../addIn.ts";
import { escapeXml } from "../xml.ts";

/** A page to read: no script, one stylesheet, `pages.css` beside the built files. */
export interface ReadingPage {
  /** Heading of the page, as text. */
  readonly title: string;
  /** What stands below the heading: HTML, with every text in it made safe by `escapeHtml`. */
  readonly body: string;
  /** One sentence for the head of the page, as text. */
  readonly description?: string;
  /** How the page reaches the folder of the built files: "" where it stands in it, "../" from a folder below. */
  readonly up?: "" | "../";
}

/** The pages that every page offers at its foot, by where they stand in the built folder. */
const offered: readonly (readonly [file: string, words: string])[] = [
  ["help/index.html", "All functions"],
  ["add-to-excel.html", "Add Measure Book to Excel"],
  ["privacy.html", "Privacy"],
  ["terms.html", "Terms"],
];

/**
 * Nothing is fetched but the stylesheet and pictures of the same folder, and nothing runs: as the standard “Content Security
 * Policy Level 3” of the W3C has it, what is not named falls back to `default-src`.
 */
const policy = "default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'";

/** A whole page in the common frame. */
export function pageFrame({ title, body, description, up = "" }: ReadingPage): string {
  const links = offered.map(([file, words]) => `<a href="${up}${file}">${escapeHtml(words)}</a>`);
  return `<!doctype html>
<html lang="${addIn.locale}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
${description === undefined ? "" : `<meta name="description" content="${escapeHtml(description)}">\n`}<title>${escapeHtml(title)} – ${addIn.name}</title>
<link rel="icon" href="${up}icons/icon-32.png">
<link rel="stylesheet" href="${up}pages.css">
</head>
<body>
<header><p>${addIn.name}</p></header>
<main>
<h1>${escapeHtml(title)}</h1>
${body}
</main>
<footer><nav aria-label="More pages">${links.join(" ")}</nav></footer>
</body>
</html>
`;
}

/** Text made safe for HTML content and attribute values. */
export const escapeHtml = escapeXml;

/** `<p>…</p>` for every paragraph of a plain text; blank lines separate them. */
export function paragraphs(text: string): string {
  return text
    .split(/\n\s*\n/)
    .map((each) => `<p>${escapeHtml(each.trim())}</p>`)
    .join("\n");
}

/** A table with headings that scrolls by itself where it is wider than the page; `label` names it for screen readers. */
export function htmlTable(label: string, rows: readonly (readonly unknown[])[]): string {
  const [headings = [], ...body] = rows;
  const heading = (cell: unknown) =>
    cell === "" ? "<td></td>" : `<th scope="col">${escapeHtml(String(cell))}</th>`;
  const value = (cell: unknown) => `<td${cellClass(cell)}>${escapeHtml(String(cell))}</td>`;
  const line = (cells: readonly unknown[], element: (cell: unknown) => string) =>
    `<tr>${cells.map(element).join("")}</tr>`;
  return `<div class="wide" role="region" tabindex="0" aria-label="${escapeHtml(label)}"><table>
<thead>${line(headings, heading)}</thead>
<tbody>
${body.map((cells) => line(cells, value)).join("\n")}
</tbody>
</table></div>`;
}

/** Numbers stand below one another, long texts may wrap. */
function cellClass(cell: unknown): string {
  if (typeof cell === "number") return ' class="number"';
  return String(cell).length > 30 ? ' class="text"' : "";
}
