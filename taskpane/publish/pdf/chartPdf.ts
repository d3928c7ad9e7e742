import fontkit from "@cantoo/fontkit";
import { PDFDocument, PageSizes } from "@cantoo/pdf-lib";
import { groupedAnswers } from "../../../addin/publish/answers.ts";
import { whereTaken } from "../../../addin/publish/drawing/whereTaken.ts";
import type { Published, PublishedCell, PublishedPattern } from "../../../addin/publish/published.ts";
import { isolated } from "../../../addin/publish/telling.ts";
import { Face } from "./face.ts";
import type { Line } from "./sheet.ts";
import { quiet, Sheet } from "./sheet.ts";
import { fitKinds } from "../../../addin/publish/words/words.ts";

/** The faces that the text is set in, as TrueType files. */
export interface PdfFonts {
  readonly plain: Uint8Array;
  readonly bold: Uint8Array;
}

/**
 * The chart, its bodies and its patterns as a PDF: text that can be selected and is tagged for screen readers, fonts embedded, headings
 * on every page.
 */
export async function chartPdf(published: Published, fonts: PdfFonts): Promise<Uint8Array> {
  const { title, publication, words, columns, rows, rounded, bodies, drawings } = published;
  const { patterns, cautions, notJudged } = published;
  const document = await PDFDocument.create();
  document.registerFontkit(fontkit);
  document.setTitle(title, { showInWindowTitleBar: true });
  if (publication.maker.trim() !== "") document.setAuthor(publication.maker.trim());
  document.setLanguage(words.tag);
  document.setProducer("Measure Book");
  const plain = new Face(await document.embedFont(fonts.plain, { subset: true }));
  const bold = new Face(await document.embedFont(fonts.bold, { subset: true }));
  const isWide = columns.length * (publication.units.length > 1 ? 1.2 : 1) > 8;
  const sheet = new Sheet(document, { plain, bold }, paperSize(publication.paper, isWide));

  sheet.text(isolated(title), { tag: "H1", font: bold, size: 18 });
  const line = [publication.maker, publication.date].filter((text) => text.trim() !== "");
  if (line.length > 0) sheet.text(line.map(isolated).join(" · "), { size: 9, colour: quiet });
  for (const note of publication.note.split(/\n+/u))
    if (note.trim() !== "") sheet.text(isolated(note), { size: 9.5 });
  sheet.space(8);

  const remarks = [...new Set(rows.flatMap(({ cells }) => cells.map(({ remark }) => remark)))].filter(
    (each) => each !== "",
  );
  sheet.table(
    [
      words.page.figure,
      ...columns.map(({ term }) => `${isolated(term)}\n${published.unitHeadings.join("\u00a0/\u00a0")}`),
    ],
    rows.map(({ body, names, cells }) => ({
      body,
      cells: [namesOf(names), ...cells.map((cell) => cellText(cell, remarks))],
    })),
  );
  sheet.space(4);
  for (const [at, remark] of remarks.entries())
    sheet.text(`${letterOf(at)}  ${remark}`, { size: 8, colour: quiet });
  sheet.text(rounded, { size: 8, colour: quiet });

  if (bodies.length > 0) {
    sheet.heading(words.page.bodies, drawings.length > 0 ? 200 : 60);
    if (drawings.length > 0) {
      sheet.outlines(drawings.map((each) => ({ ...each, names: each.names.map(isolated) })));
      sheet.text(words.page.outlines, { size: 8, colour: quiet, after: 4 });
    }
    for (const body of bodies) sheet.text(body, { size: 9, after: 2 });
  }
  if (patterns.length + notJudged.length > 0) {
    sheet.heading(words.page.patterns);
    for (const pattern of patterns) sheet.together(patternLines(pattern, published, bold));
    for (const code of notJudged)
      sheet.text(words.page.notJudged(isolated(code)), { size: 9, colour: quiet });
  }
  if (cautions.length > 0) {
    sheet.heading(words.page.cautions);
    for (const caution of cautions) sheet.text(isolated(caution), { size: 9, after: 2 });
  }
  if (publication.drawings) howToMeasure(sheet, published, bold);
  sheet.numberPages(isolated(title));
  sheet.tags.write(document);
  return document.save();
}

/** Where and how the published measures are taken. */
function howToMeasure(sheet: Sheet, { words, columns }: Published, bold: Face): void {
  const lines = columns.flatMap(({ term, howToTake }): Line[] =>
    howToTake === undefined
      ? []
      : [
          { text: term, font: bold, size: 8.5, before: 3 },
          { text: howToTake, size: 8.5 },
        ],
  );
  if (lines.length === 0) return;
  const title = words.page.allMeasures;
  const drawing = whereTaken(new Map(columns.map(({ key, term }) => [key, term])));
  sheet.heading(title, drawing ? 280 : 60);
  if (drawing) sheet.whereTaken(drawing, title, lines);
  else for (const { text, ...how } of lines) sheet.text(text, how);
}

function paperSize(paper: "A4" | "Letter", isWide: boolean): readonly [number, number] {
  const [width, height] = paper === "A4" ? PageSizes.A4 : PageSizes.Letter;
  return isWide ? [height, width] : [width, height];
}

function letterOf(at: number): string {
  return String.fromCharCode(97 + at);
}

function namesOf(names: readonly string[]): string {
  return names.map(isolated).join(", ");
}

function cellText({ texts, remark }: PublishedCell, remarks: readonly string[]): string {
  const mark = remark === "" ? "" : ` ${letterOf(remarks.indexOf(remark))}`;
  return texts.length === 0 ? `–${mark}` : [`${texts[0] ?? ""}${mark}`, ...texts.slice(1)].join("\n");
}

function patternLines(pattern: PublishedPattern, { words, figures }: Published, bold: Face): readonly Line[] {
  const { code, title, garment, draftedFor, answers } = pattern;
  const about = isolated(garment);
  const drafted =
    draftedFor === undefined ? about : `${about} · ${words.page.draftedFor} ${isolated(draftedFor)}`;
  const heading = title === "" ? isolated(code) : `${isolated(title)}  ${isolated(code)}`;
  return [
    { text: heading, tag: "H3", font: bold, size: 10, before: 6 },
    { text: drafted, size: 8, colour: quiet },
    ...fitKinds.flatMap((kind): Line[] => {
      const groups = groupedAnswers(kind, answers).map(
        ({ gist, members }) =>
          `${namesOf(members.map((at) => figures[at] ?? ""))}${gist === "" ? "" : ` – ${gist}`}`,
      );
      return groups.length === 0
        ? []
        : [{ text: `${words.kinds[kind]}: ${groups.join(". ")}.`, size: 8.5, indent: 8 }];
    }),
  ];
}
