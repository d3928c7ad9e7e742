import fontkit from "@cantoo/fontkit";
import type { PDFFont, PDFPage, RGB } from "@cantoo/pdf-lib";
import { PDFDocument, PageSizes, rgb } from "@cantoo/pdf-lib";
import { fitKinds, groupedAnswers } from "../../addin/publish/answers.ts";
import type { Published, PublishedCell, PublishedPattern } from "../../addin/publish/published.ts";

/** The faces that the text is set in, as TrueType files. */
export interface PdfFonts {
  readonly plain: Uint8Array;
  readonly bold: Uint8Array;
}

const ink = rgb(0.15, 0.16, 0.18);
const quiet = rgb(0.36, 0.38, 0.41);
const lineColour = rgb(0.75, 0.72, 0.66);
/** In points, 72 to the inch. */
const margin = 36;
const cellPadding = 4;
const rowPadding = 2.5;
const largestLetters = 9.5;
/** Smaller is read with a magnifying glass. */
const smallestLetters = 5.5;
const leading = 1.3;

/**
 * The chart, its bodies and its patterns as a PDF: text that can be selected, fonts embedded, headings on every page.
 */
export async function chartPdf(published: Published, fonts: PdfFonts): Promise<Uint8Array> {
  const { title, publication, words, columns, rows, rounded, bodies, patterns, cautions, notJudged } =
    published;
  const document = await PDFDocument.create();
  document.registerFontkit(fontkit);
  document.setTitle(title);
  document.setLanguage(words.tag);
  document.setProducer("Measure Book");
  const plain = new Face(await document.embedFont(fonts.plain, { subset: true }));
  const bold = new Face(await document.embedFont(fonts.bold, { subset: true }));
  const isWide = columns.length * (publication.units.length > 1 ? 1.2 : 1) > 8;
  const sheet = new Sheet(document, { plain, bold }, paperSize(publication.paper, isWide));

  sheet.text(title, { font: bold, size: 18 });
  const line = [publication.maker, publication.date].filter((text) => text.trim() !== "").join(" · ");
  if (line !== "") sheet.text(line, { size: 9, colour: quiet });
  for (const note of publication.note.split(/\n+/u)) if (note.trim() !== "") sheet.text(note, { size: 9.5 });
  sheet.space(8);

  const remarks = [...new Set(rows.flatMap(({ cells }) => cells.map(({ remark }) => remark)))].filter(
    (each) => each !== "",
  );
  sheet.table(
    [
      words.page.figure,
      ...columns.map(({ term }) => `${term}\n${published.unitHeadings.join("\u00a0/\u00a0")}`),
    ],
    rows.map(({ names, cells }) => [names.join(", "), ...cells.map((cell) => cellText(cell, remarks))]),
  );
  sheet.space(4);
  for (const [at, remark] of remarks.entries())
    sheet.text(`${letterOf(at)}  ${remark}`, { size: 8, colour: quiet });
  sheet.text(rounded, { size: 8, colour: quiet });

  if (bodies.length > 0) {
    sheet.heading(words.page.bodies);
    for (const body of bodies) sheet.text(body, { size: 9, after: 2 });
  }
  if (patterns.length + notJudged.length > 0) {
    sheet.heading(words.page.patterns);
    for (const pattern of patterns) sheet.together(patternLines(pattern, published, bold));
    for (const code of notJudged) sheet.text(words.page.notJudged(code), { size: 9, colour: quiet });
  }
  if (cautions.length > 0) {
    sheet.heading(words.page.cautions);
    for (const caution of cautions) sheet.text(caution, { size: 9, after: 2 });
  }
  sheet.numberPages(title);
  return document.save();
}

function paperSize(paper: "A4" | "Letter", isWide: boolean): readonly [number, number] {
  const [width, height] = paper === "A4" ? PageSizes.A4 : PageSizes.Letter;
  return isWide ? [height, width] : [width, height];
}

function letterOf(at: number): string {
  return String.fromCharCode(97 + at);
}

function cellText({ texts, remark }: PublishedCell, remarks: readonly string[]): string {
  const mark = remark === "" ? "" : ` ${letterOf(remarks.indexOf(remark))}`;
  return texts.length === 0 ? `–${mark}` : [`${texts[0] ?? ""}${mark}`, ...texts.slice(1)].join("\n");
}

function patternLines(pattern: PublishedPattern, { words, figures }: Published, bold: Face): readonly Line[] {
  const { code, title, garment, draftedFor, answers } = pattern;
  const about = draftedFor === undefined ? garment : `${garment} · ${words.page.draftedFor} ${draftedFor}`;
  return [
    { text: title === "" ? code : `${title}  ${code}`, font: bold, size: 10, before: 6 },
    { text: about, size: 8, colour: quiet },
    ...fitKinds.flatMap((kind): Line[] => {
      const groups = groupedAnswers(kind, answers).map(
        ({ gist, members }) =>
          `${members.map((at) => figures[at] ?? "").join(", ")}${gist === "" ? "" : ` – ${gist}`}`,
      );
      return groups.length === 0
        ? []
        : [{ text: `${words.kinds[kind]}: ${groups.join(". ")}.`, size: 8.5, indent: 8 }];
    }),
  ];
}

interface Line {
  readonly text: string;
  readonly font?: Face;
  readonly size: number;
  readonly colour?: RGB;
  readonly indent?: number;
  readonly before?: number;
  readonly after?: number;
}

/** A face of the document, which remembers how wide its words are. */
class Face {
  private readonly characters: ReadonlySet<number>;
  private readonly widths = new Map<string, number>();

  constructor(readonly font: PDFFont) {
    this.characters = new Set(font.getCharacterSet());
  }

  /** Points that a text without spaces at its ends takes, as the sum of its words. */
  width(text: string, size: number): number {
    const words = text.split(" ");
    return (
      words.reduce((sum, word) => sum + this.wordWidth(word), (words.length - 1) * this.wordWidth(" ")) * size
    );
  }

  /** What the face cannot show is a box, so that the reader sees that something is missing. */
  known(text: string): string {
    return [...text.replace(directions, "").replace(/[^\S\u00a0]/gu, " ")]
      .map((character) => (this.characters.has(character.codePointAt(0) ?? 0) ? character : "□"))
      .join("");
  }

  private wordWidth(word: string): number {
    const known = this.widths.get(word);
    if (known !== undefined) return known;
    const width = this.font.widthOfTextAtSize(this.known(word), 1);
    this.widths.set(word, width);
    return width;
  }
}

/** Marks of direction, which nobody sees. */
const directions = /[\u2066-\u2069\u200e\u200f]/gu;

/** Pages that are written on from the top down. */
class Sheet {
  private page: PDFPage;
  private y: number;

  constructor(
    private readonly document: PDFDocument,
    private readonly fonts: { readonly plain: Face; readonly bold: Face },
    private readonly size: readonly [number, number],
  ) {
    this.page = this.nextPage();
    this.y = size[1] - margin;
  }

  space(points: number): void {
    this.y -= points;
  }

  heading(text: string): void {
    // A heading is not left alone at the foot of a page.
    this.need(60);
    this.space(10);
    this.text(text, { font: this.fonts.bold, size: 13, after: 2 });
  }

  text(text: string, how: Omit<Line, "text">): void {
    const { font = this.fonts.plain, size, colour = ink, indent = 0, before = 0, after = 0 } = how;
    this.space(before);
    for (const line of wrapped(text, font, size, this.width - indent)) {
      this.need(size * leading);
      this.y -= size * leading;
      this.draw(line, margin + indent, this.y, font, size, colour);
    }
    this.space(after);
  }

  /** Lines that stay on one page where they fit on one. */
  together(lines: readonly Line[]): void {
    const height = lines.reduce(
      (sum, { text, font = this.fonts.plain, size, indent = 0, before = 0, after = 0 }) => {
        return sum + before + after + wrapped(text, font, size, this.width - indent).length * size * leading;
      },
      0,
    );
    if (height < this.size[1] - 2 * margin) this.need(height);
    for (const { text, ...how } of lines) this.text(text, how);
  }

  /** A table whose headings stand on every page: names to the left, lengths to the right. */
  table(headings: readonly string[], rows: readonly (readonly string[])[]): void {
    const { letters, widths } = this.fitted(headings, rows);
    const { plain, bold } = this.fonts;
    const lineHeight = letters * leading;
    const linesOf = (cells: readonly string[], font: Face): readonly (readonly string[])[] =>
      cells.map((cell, c) =>
        wrapped(cell, c === 0 ? bold : font, letters, (widths[c] ?? 0) - 2 * cellPadding),
      );
    const head = linesOf(headings, bold);
    const heightOf = (lines: readonly (readonly string[])[]): number =>
      Math.max(...lines.map((each) => each.length)) * lineHeight + 2 * rowPadding;
    const put = (lines: readonly (readonly string[])[], font: Face, isHead: boolean): void => {
      const height = heightOf(lines);
      let x = margin;
      for (const [c, cell] of lines.entries()) {
        const width = widths[c] ?? 0;
        const own = c === 0 ? bold : font;
        const drop = isHead ? height - rowPadding - cell.length * lineHeight : rowPadding;
        for (const [at, text] of cell.entries()) {
          const from = c === 0 ? x : x + width - cellPadding - own.width(text, letters);
          const baseline = this.y - drop - (at + 1) * lineHeight + letters * 0.3;
          const isSecond = c > 0 && (isHead ? at === cell.length - 1 : at > 0);
          this.draw(text, from, baseline, isSecond && isHead ? plain : own, letters, isSecond ? quiet : ink);
        }
        x += width;
      }
      this.y -= height;
      this.page.drawLine({
        start: { x: margin, y: this.y },
        end: { x: margin + this.width, y: this.y },
        thickness: isHead ? 1 : 0.5,
        color: lineColour,
      });
    };
    put(head, bold, true);
    for (const row of rows) {
      const lines = linesOf(row, plain);
      if (this.y - heightOf(lines) < margin + footRoom) {
        this.turn();
        put(head, bold, true);
      }
      put(lines, plain, false);
    }
  }

  numberPages(title: string): void {
    const pages = this.document.getPages();
    const { plain } = this.fonts;
    const [name = ""] = wrapped(title, plain, footLetters, this.width - 60);
    for (const [at, page] of pages.entries()) {
      const number = `${String(at + 1)} / ${String(pages.length)}`;
      const how = { y: margin - 12, size: footLetters, font: plain.font, color: quiet };
      page.drawText(plain.known(name), { x: margin, ...how });
      page.drawText(number, { x: margin + this.width - plain.width(number, footLetters), ...how });
    }
  }

  private get width(): number {
    return this.size[0] - 2 * margin;
  }

  private need(height: number): void {
    if (this.y - height < margin + footRoom) this.turn();
  }

  private turn(): void {
    this.page = this.nextPage();
    this.y = this.size[1] - margin;
  }

  private nextPage(): PDFPage {
    return this.document.addPage([...this.size]);
  }

  private draw(text: string, x: number, y: number, face: Face, size: number, color: RGB): void {
    if (text !== "") this.page.drawText(face.known(text), { x, y, size, font: face.font, color });
  }

  /** The largest letters with which all columns stand side by side, and the widths of the columns. */
  private fitted(
    headings: readonly string[],
    rows: readonly (readonly string[])[],
  ): { readonly letters: number; readonly widths: readonly number[] } {
    const { bold } = this.fonts;
    for (let letters = largestLetters; ; letters -= 0.5) {
      const needs = headings.map((heading, c) => {
        const texts = c === 0 ? [] : rows.flatMap((row) => (row[c] ?? "").split("\n"));
        const parts = [...heading.split(/[ \n]/u), ...texts].map((text) => bold.width(text, letters));
        return parts.reduce((widest, each) => Math.max(widest, each), 0) + 2 * cellPadding + 1;
      });
      const lengths = needs.slice(1).reduce((sum, each) => sum + each, 0);
      const names = this.width - lengths;
      const leastNames = letters * 11;
      if (names < leastNames && letters > smallestLetters) continue;
      const spare = Math.max(0, names - letters * 22) / Math.max(1, headings.length - 1);
      const widths = needs.slice(1).map((each) => each + spare);
      const first = Math.max(leastNames, this.width - widths.reduce((sum, each) => sum + each, 0));
      return { letters, widths: [first, ...widths] };
    }
  }
}

const footLetters = 7.5;
/** Room for the number of the page. */
const footRoom = 4;

function wrapped(text: string, face: Face, size: number, width: number): readonly string[] {
  return text.split("\n").flatMap((part) => {
    const lines: string[] = [];
    let line = "";
    for (const word of part.split(" ")) {
      const longer = line === "" ? word : `${line} ${word}`;
      if (line !== "" && face.width(longer, size) > width) {
        lines.push(line);
        line = word;
      } else line = longer;
    }
    return [...lines, line];
  });
}
