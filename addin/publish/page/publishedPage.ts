import type { PairAnswer } from "../answers.ts";
import { groupedAnswers } from "../answers.ts";
import type { BuyersFile } from "../buyersFile.ts";
import type {
  Published,
  PublishedCell,
  PublishedColumn,
  PublishedPattern,
  PublishedRow,
} from "../published.ts";
import type { Words, FitKind } from "../words/words.ts";
import type { Html } from "./html.ts";
import { asIs, dataBlock, markup, name } from "./html.ts";
import { kindSigns } from "./kindSigns.ts";
import { pageStyle } from "./pageStyle.ts";
import type { BodyDrawing } from "../drawing/bodyDrawings.ts";
import { whereTaken } from "../drawing/whereTaken.ts";
import { fitKinds } from "../words/words.ts";

/** What the page runs: our own script and its hash, and what it works with. */
export interface PageScript {
  readonly code: string;
  /** Base64 of the SHA-256 of the code. */
  readonly hash: string;
  /** Base64 of the SHA-256 of `pageStyleOf`. */
  readonly styleHash: string;
  /** Undefined for a page that answers for no other figures. */
  readonly file: BuyersFile | undefined;
}

/** The style sheet of a page, whose hash its policy names. */
export function pageStyleOf({ columns, publication }: Published): string {
  return pageStyle(columns.length * (publication.units.length > 1 ? 1.3 : 1), publication.paper);
}

/**
 * A publication as one HTML file. It is read without a script and asks no other address for anything: its own policy
 * forbids it (W3C, Content Security Policy Level 3).
 */
export function publishedPage(published: Published, script: PageScript): string {
  const { words, title, publication, bodies, patterns, notJudged, cautions, columns } = published;
  const { page } = words;
  const policy = [
    "default-src 'none'",
    `script-src 'sha256-${script.hash}'`,
    `style-src 'sha256-${script.styleHash}'`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  const hasPatterns = patterns.length + notJudged.length > 0;
  const takes = publication.drawings ? columns.filter(({ howToTake }) => howToTake !== undefined) : [];
  const links: readonly (readonly [string, string])[] = [
    ["chart", page.chart],
    ...(script.file && hasPatterns ? ([["buyer", words.buyer.title]] as const) : []),
    ...(bodies.length > 0 ? ([["bodies", page.bodies]] as const) : []),
    ...(hasPatterns ? ([["patterns", page.patterns]] as const) : []),
    ...(takes.length > 0 ? ([["takes", page.allMeasures]] as const) : []),
    ...(cautions.length > 0 ? ([["cautions", page.cautions]] as const) : []),
  ];
  const document = markup`<!DOCTYPE html>
    <html lang="${words.tag}" dir="ltr">
      <head>
        <meta charset="utf-8">
        <meta http-equiv="Content-Security-Policy" content="${policy}">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <meta name="referrer" content="no-referrer">
        <meta name="color-scheme" content="light dark">
        <title>${title}</title>
        <style>${asIs(pageStyleOf(published))}</style>
      </head>
      <body>
        <header>
          <h1>${name(title)}</h1>
          ${lineOf([publication.maker, publication.date])}
          ${
            publication.note.trim() !== "" &&
            publication.note
              .trim()
              .split(/\n+/u)
              .map((line) => markup`<p>${name(line)}</p>`)
          }
          <nav aria-label="${page.contents}">
            <ul>
              ${links.map(([id, words_]) => markup`<li><a href="${`#${id}`}">${words_}</a></li>`)}
            </ul>
          </nav>
        </header>
        <main>
          ${chartSection(published)} ${script.file && hasPatterns && buyerSection(published)}
          ${
            bodies.length > 0 &&
            markup`<section id="bodies" aria-labelledby="bodies-title">
              <h2 id="bodies-title">${page.bodies}</h2>
              ${published.drawings.length > 0 && outlines(published.drawings, page.outlines)}
              <ul class="bodies">
                ${bodies.map((line) => markup`<li>${line}</li>`)}
              </ul>
            </section>`
          }
          ${
            hasPatterns &&
            markup`<section id="patterns" aria-labelledby="patterns-title">
              <h2 id="patterns-title">${page.patterns}</h2>
              <div class="patterns">${patterns.map((pattern) => patternCard(pattern, published))}</div>
              ${notJudged.map((code) => markup`<p class="quiet">${page.notJudged(code)}</p>`)}
            </section>`
          }
          ${takes.length > 0 && takesSection(words, takes)}
          ${
            cautions.length > 0 &&
            markup`<section id="cautions" aria-labelledby="cautions-title">
              <h2 id="cautions-title">${page.cautions}</h2>
              <ul class="notes">
                ${cautions.map((line) => markup`<li>${line}</li>`)}
              </ul>
            </section>`
          }
        </main>
        <footer>${page.madeWith}</footer>
        ${script.file && markup`<script type="application/json" id="data">${dataBlock(script.file)}</script>`}
        <script>${asIs(script.code)}</script>
      </body>
    </html>
`;
  return document.html;
}

function lineOf(parts: readonly string[]): Html | false {
  const said = parts.map((part) => part.trim()).filter((part) => part !== "");
  return (
    said.length > 0 &&
    markup`<p class="maker">${said.map((part, i) => markup`${i > 0 && " · "}${name(part)}`)}</p>`
  );
}

function chartSection({ words, columns, rows, unitHeadings, rounded }: Published): Html {
  const { page } = words;
  const units = unitHeadings.join(" / ");
  const letters = remarksOf(rows);
  return markup`<section id="chart" aria-labelledby="chart-title">
    <h2 id="chart-title">${page.chart}</h2>
    <div class="tools" id="tools" hidden>
      <div>
        <label for="find">${page.find}</label><input id="find" type="search" placeholder="${page.findHint}" autocomplete="off">
      </div>
      <p class="quiet" id="found" role="status"></p>
    </div>
    <div class="scroll" tabindex="0" role="group" aria-labelledby="chart-title">
      <table class="chart">
        <thead>
          <tr>
            <th scope="col">${page.figure}</th>
            ${columns.map(({ term }) => markup`<th scope="col">${name(term)}<span class="unit">${units}</span></th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map((row) => chartRow(row, letters))}
        </tbody>
      </table>
    </div>
    <p class="quiet" id="none" hidden>${page.noneFound}</p>
    ${
      letters.size > 0 &&
      markup`<ul class="remarks">
        ${[...letters].map(([remark, letter]) => markup`<li id="${`remark-${letter}`}"><sup>${letter}</sup> ${remark}</li>`)}
      </ul>`
    }
    <p class="quiet">${rounded}</p>
  </section>`;
}

/** Remarks stand once below the chart, under a letter each. */
function remarksOf(rows: readonly PublishedRow[]): ReadonlyMap<string, string> {
  const remarks = new Set(rows.flatMap(({ cells }) => cells.map(({ remark }) => remark)));
  remarks.delete("");
  return new Map([...remarks].map((remark, at) => [remark, String.fromCharCode(97 + at)]));
}

function chartRow({ names, cells }: PublishedRow, letters: ReadonlyMap<string, string>): Html {
  const label = names.map((each, i) => markup`${i > 0 && ", "}${name(each)}`);
  return markup`<tr>
    <th scope="row">${label}</th>
    ${cells.map((cell) => chartCell(cell, letters))}
  </tr>`;
}

function chartCell({ texts, sortMm, remark }: PublishedCell, letters: ReadonlyMap<string, string>): Html {
  const [first, second] = texts;
  const letter = letters.get(remark);
  const mark =
    letter !== undefined &&
    markup`<sup><a href="${`#remark-${letter}`}" aria-label="${remark}">${letter}</a></sup>`;
  if (first === undefined) return markup`<td class="none">–${mark}</td>`;
  const more = second !== undefined && markup` <span class="second">${second}</span>`;
  return markup`<td data-mm="${String(Math.round(sortMm * 1000) / 1000)}">${first}${mark}${more}</td>`;
}

function buyerSection({ words, columns, publication }: Published): Html {
  const { buyer, page } = words;
  const drawing =
    publication.drawings &&
    whereDrawing(new Map(columns.map(({ key, term }) => [key, term])), page.allMeasures);
  return markup`<section id="buyer" aria-labelledby="buyer-title">
    <h2 id="buyer-title">${buyer.title}</h2>
    <p class="needs-script" id="needs-script">${buyer.needsScript}</p>
    <div class="buyer" id="form" hidden>
      <p>${buyer.intro}</p>
      <div class="${drawing ? "with-drawing" : "plain"}">
        <div class="card" id="asked"></div>
        ${drawing}
      </div>
      <div class="result" id="result" role="status"></div>
    </div>
  </section>`;
}

function whereDrawing(terms: ReadonlyMap<string, string>, title: string): Html | false {
  const drawing = whereTaken(terms);
  if (!drawing) return false;
  const { width, height, body, tapes } = drawing;
  return markup`<figure class="drawing">
    <svg
      viewBox="${`0 0 ${String(width)} ${String(height)}`}"
      role="img"
      aria-label="${`${title}: ${tapes.map(({ term }) => term).join(", ")}`}"
    >
      <path class="body" d="${asIs(body)}" />
      ${tapes.map(({ term, tape, lead, x, y }) => markup`<path class="tape" d="${tape}" /><path class="lead" fill="none" d="${lead}" /><text x="${x}" y="${y}">${term}</text>`)}
    </svg>
  </figure>`;
}

/** Pixels of the tallest body. */
const tallest = 200;

/** Bodies side by side, all at one scale. */
function outlines(drawings: readonly BodyDrawing[], note: string): Html {
  const perMm = tallest / Math.max(...drawings.map(({ heightMm }) => heightMm));
  return markup`<div class="outlines">
    ${drawings.map(({ names, path, halfWidthMm, heightMm }) => {
      const [half, up] = [Math.ceil(halfWidthMm) + 2, Math.ceil(heightMm) + 2];
      const box = `${String(-half)} ${String(-up)} ${String(2 * half)} ${String(up + 2)}`;
      return markup`<figure>
        <svg
          viewBox="${box}"
          width="${Math.round(2 * half * perMm)}"
          height="${Math.round((up + 2) * perMm)}"
          aria-hidden="true"
        >
          <path class="body" vector-effect="non-scaling-stroke" d="${asIs(path)}" />
        </svg>
        <figcaption>${names.map((each, i) => markup`${i > 0 && ", "}${name(each)}`)}</figcaption>
      </figure>`;
    })}
  </div>
  <p class="quiet">${note}</p>`;
}

function takesSection(words: Words, takes: readonly PublishedColumn[]): Html {
  return markup`<section id="takes" aria-labelledby="takes-title">
    <h2 id="takes-title">${words.page.allMeasures}</h2>
    <dl class="takes">
      ${takes.map(({ term, howToTake }) => markup`<div><dt>${term}</dt><dd>${howToTake}</dd></div>`)}
    </dl>
  </section>`;
}

function patternCard(
  { code, title, garment, draftedFor, answers }: PublishedPattern,
  published: Published,
): Html {
  const { words, figures } = published;
  const about = [
    markup`${garment}`,
    ...(draftedFor === undefined ? [] : [markup`${words.page.draftedFor} ${name(draftedFor)}`]),
  ];
  return markup`<article class="card">
    <h3>${title !== "" && markup`${name(title)} `}<span class="code">${name(code)}</span></h3>
    <p class="about">${about.map((part, i) => markup`${i > 0 && " · "}${part}`)}</p>
    <ul class="answers">
      ${fitKinds.map((kind) => kindItem(kind, answers, figures, published))}
    </ul>
  </article>`;
}

function kindItem(
  kind: FitKind,
  answers: readonly PairAnswer[],
  figures: readonly string[],
  { words }: Published,
): Html | false {
  const groups = groupedAnswers(kind, answers);
  if (groups.length === 0) return false;
  const namesOf = (members: readonly number[]): readonly Html[] =>
    members.map((at, i) => markup`${i > 0 && ", "}${name(figures[at] ?? "")}`);
  const [only] = groups;
  const body =
    groups.length === 1 && only?.gist === ""
      ? markup` ${namesOf(only.members)}`
      : markup`<ul>
          ${groups.map(({ gist, members }) => markup`<li>${namesOf(members)}${gist !== "" && markup` <span class="why">– ${gist}</span>`}</li>`)}
        </ul>`;
  return markup`<li class="${kind}">
    <span class="sign" aria-hidden="true">${kindSigns[kind]}</span><span class="kind">${words.kinds[kind]}:</span>${body}
  </li>`;
}
