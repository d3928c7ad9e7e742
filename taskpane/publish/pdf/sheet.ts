import type { PDFDocument, PDFPage, RGB } from "@cantoo/pdf-lib";
import { rgb } from "@cantoo/pdf-lib";
import { sum } from "simple-statistics";
import type { BodyDrawing } from "../../../addin/publish/drawing/bodyDrawings.ts";
import type { WhereTaken } from "../../../addin/publish/drawing/whereTaken.ts";
import type { Face } from "./face.ts";
import type { Element, Tag } from "./tags.ts";
import { Tags } from "./tags.ts";

const ink = rgb(0.15, 0.16, 0.18);
export const quiet = rgb(0.36, 0.38, 0.41);
const chalk = rgb(0.12, 0.37, 0.66);
const lineColour = rgb(0.75, 0.72, 0.66);
/** In points, 72 to the inch. */
const margin = 36;
const cellPadding = 4;
const rowPadding = 2.5;
const largestLetters = 9.5;
/** Smaller is read with a magnifying glass. */
const smallestLetters = 5.5;
/** Those of a table that has to be divided. */
const lettersInParts = 7.5;
/** Letters beside each other in the column of names, at least. */
const leastNames = 11;
const leading = 1.3;
const footLetters = 7.5;
/** Room for the number of the page. */
const footRoom = 4;

export interface Line {
  readonly text: string;
  readonly tag?: Tag;
  readonly font?: Face;
  readonly size: number;
  readonly colour?: RGB;
  readonly indent?: number;
  readonly before?: number;
  readonly after?: number;
}

/** A row of a table; rows of one body stay on one page. */
interface TableRow {
  readonly body: number;
  readonly cells: readonly string[];
}

/** Pages that are written on from the top down, each thing with its place in the structure of the document. */
export class Sheet {
  readonly tags = new Tags();
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

  heading(text: string, room = 60): void {
    // A heading is not left alone at the foot of a page.
    this.need(room);
    this.space(10);
    this.text(text, { tag: "H2", font: this.fonts.bold, size: 13, after: 2 });
  }

  text(text: string, how: Omit<Line, "text">): void {
    const { font = this.fonts.plain, size, colour = ink, indent = 0, before = 0, after = 0 } = how;
    this.space(before);
    const element = this.tags.root.add(how.tag ?? "P");
    const lines = font.wrapped(text, size, this.width - indent);
    for (const [at, line] of lines.entries()) {
      this.need(size * leading);
      this.y -= size * leading;
      this.tags.as(element, this.page, () => {
        this.draw(line, margin + indent, this.y, {
          face: font,
          size,
          colour,
          isLast: at === lines.length - 1,
        });
      });
    }
    this.space(after);
  }

  /** Lines that stay on one page where they fit on one. */
  together(lines: readonly Line[]): void {
    const height = lines.reduce((sum, line) => sum + this.heightOf(line), 0);
    if (height < this.size[1] - 2 * margin) this.need(height);
    for (const { text, ...how } of lines) this.text(text, how);
  }

  /**
   * A table whose headings stand on every page: names to the left, lengths to the right. Columns that have no room beside each other
   * go on in a further table below, beside the same names.
   */
  table(headings: readonly string[], rows: readonly TableRow[]): void {
    for (const [at, part] of this.parts(headings, rows).entries()) {
      if (at > 0) this.space(14);
      const of = (cells: readonly string[]): readonly string[] => [0, ...part].map((c) => cells[c] ?? "");
      this.tableOf(
        of(headings),
        rows.map(({ body, cells }) => ({ body, cells: of(cells) })),
      );
    }
  }

  /** Which columns stand beside the names: all of them, unless that takes letters that nobody reads. */
  private parts(headings: readonly string[], rows: readonly TableRow[]): readonly (readonly number[])[] {
    const cells = rows.map((row) => row.cells);
    const all = headings.map((_, c) => c).slice(1);
    const widthsAt = (letters: number): readonly number[] => this.needs(headings, cells, letters).slice(1);
    const small = sum(widthsAt(smallestLetters));
    if (small <= this.width - leastNames * smallestLetters) return [all];
    const widths = widthsAt(lettersInParts);
    const room = this.width - leastNames * lettersInParts;
    // Of about the same width each.
    const even = sum(widths) / Math.ceil(sum(widths) / room) + Math.max(...widths);
    const parts: number[][] = [];
    let left = 0;
    for (const [at, width] of widths.entries()) {
      if (width > left) {
        parts.push([]);
        left = Math.min(room, even);
      }
      parts.at(-1)?.push(at + 1);
      left -= width;
    }
    return parts;
  }

  private tableOf(headings: readonly string[], rows: readonly TableRow[]): void {
    const { letters, widths } = this.fitted(
      headings,
      rows.map(({ cells }) => cells),
    );
    const { plain, bold } = this.fonts;
    const lineHeight = letters * leading;
    const linesOf = (cells: readonly string[], font: Face): readonly (readonly string[])[] =>
      cells.map((cell, c) =>
        (c === 0 ? bold : font).wrapped(cell, letters, (widths[c] ?? 0) - 2 * cellPadding),
      );
    const heightOf = (lines: readonly (readonly string[])[]): number =>
      Math.max(...lines.map((each) => each.length)) * lineHeight + 2 * rowPadding;
    const table = this.tags.root.add("Table");

    const put = (
      lines: readonly (readonly string[])[],
      { font, isHead, isLast, row }: { font: Face; isHead: boolean; isLast: boolean; row?: Element },
    ): void => {
      const height = heightOf(lines);
      let x = margin;
      for (const [c, cell] of lines.entries()) {
        const width = widths[c] ?? 0;
        const own = c === 0 ? bold : font;
        const drop = isHead ? height - rowPadding - cell.length * lineHeight : rowPadding;
        const from = x;
        const write = (): void => {
          for (const [at, text] of cell.entries()) {
            const baseline = this.y - drop - (at + 1) * lineHeight + letters * 0.3;
            const isSecond = c > 0 && (isHead ? at === cell.length - 1 : at > 0);
            const face = isSecond && isHead ? plain : own;
            const left = c === 0 ? from : from + width - cellPadding - face.width(text, letters);
            const colour = isSecond ? quiet : ink;
            this.draw(text, left, baseline, { face, size: letters, colour, isLast: at === cell.length - 1 });
          }
        };
        if (row) this.tags.as(cellElement(row, isHead, c), this.page, write);
        else this.tags.asDecoration(this.page, write);
        x += width;
      }
      this.y -= height;
      this.rule(isHead ? 1 : isLast ? 0.5 : 0.2);
    };

    const prepared = rows.map(({ body, cells }) => ({ body, lines: linesOf(cells, plain) }));
    const head = linesOf(headings, bold);
    // Headings are not left alone at the foot of a page.
    this.need(heightOf(head) + (prepared[0] ? heightOf(prepared[0].lines) : 0));
    put(head, { font: bold, isHead: true, isLast: true, row: table.add("TR") });
    const room = this.size[1] - 2 * margin - heightOf(head) - footRoom;
    for (const [at, { body, lines }] of prepared.entries()) {
      const isFirst = prepared[at - 1]?.body !== body;
      const rest = prepared.slice(at).findIndex((each) => each.body !== body);
      const own = isFirst ? prepared.slice(at, rest < 0 ? undefined : at + rest) : [];
      const together = own.reduce((sum, each) => sum + heightOf(each.lines), 0);
      const needed = isFirst && together <= room ? together : heightOf(lines);
      if (this.y - needed < margin + footRoom) {
        this.turn();
        // Read out once, at the top of the table.
        put(head, { font: bold, isHead: true, isLast: true });
      }
      const isLast = prepared[at + 1]?.body !== body;
      put(lines, { font: plain, isHead: false, isLast, row: table.add("TR") });
    }
  }

  /** Outlines of bodies side by side, all at one scale, their names below. */
  outlines(drawings: readonly BodyDrawing[]): void {
    const { plain } = this.fonts;
    const letters = 7.5;
    const cell = 92;
    const across = Math.floor(this.width / cell);
    const perMm = Math.min(
      118 / Math.max(...drawings.map(({ heightMm }) => heightMm)),
      (cell - 16) / (2 * Math.max(...drawings.map(({ halfWidthMm }) => halfWidthMm))),
    );
    for (let from = 0; from < drawings.length; from += across) {
      const row = drawings.slice(from, from + across);
      const captions = row.map(({ names }) => plain.wrapped(names.join(", "), letters, cell - 10));
      const up = Math.max(...row.map(({ heightMm }) => heightMm)) * perMm;
      const below = Math.max(...captions.map(({ length }) => length)) * letters * leading + 4;
      this.need(up + below + 8);
      const floor = this.y - up - 6;
      for (const [at, { names, path, halfWidthMm, heightMm }] of row.entries()) {
        const middle = margin + (at + 0.5) * cell;
        const half = halfWidthMm * perMm;
        const figure = this.tags.root.add("Figure", {
          alt: names.join(", "),
          box: [middle - half, floor, middle + half, floor + heightMm * perMm],
        });
        this.tags.as(figure, this.page, () => {
          this.page.drawSvgPath(path, {
            ...{ x: middle, y: floor, scale: perMm },
            ...{ borderColor: quiet, borderWidth: 0.8 / perMm, color: rgb(0.98, 0.97, 0.95) },
          });
          const caption = captions[at] ?? [];
          for (const [i, line] of caption.entries()) {
            const left = middle - plain.width(line, letters) / 2;
            const how = { face: plain, size: letters, colour: ink, isLast: i === caption.length - 1 };
            this.draw(line, left, floor - 3 - (i + 1) * letters * leading, how);
          }
        });
      }
      this.y = floor - below - 4;
    }
  }

  /** Where measures are taken, with how to take them beside it and below it. */
  whereTaken({ width, height, body, tapes }: WhereTaken, title: string, lines: readonly Line[]): void {
    const { plain } = this.fonts;
    const scale = 0.62;
    this.need(height * scale);
    const [left, top] = [margin, this.y - 4];
    const [page, foot] = [this.page, top - height * scale];
    const figure = this.tags.root.add("Figure", {
      alt: `${title}: ${tapes.map(({ term }) => term).join(", ")}`,
      box: [left, foot, left + width * scale, top],
    });
    this.tags.as(figure, page, () => {
      const path = (d: string, how: object): void => {
        page.drawSvgPath(d, { x: left, y: top, scale, ...how });
      };
      path(body, { borderColor: quiet, borderWidth: 1.2, color: rgb(0.98, 0.97, 0.95) });
      for (const { tape, lead, term, x, y } of tapes) {
        path(tape, { borderColor: chalk, borderWidth: 2.2 });
        path(lead, { borderColor: lineColour, borderWidth: 1 });
        this.draw(term, left + x * scale, top - y * scale, {
          face: plain,
          size: 8,
          colour: ink,
          isLast: false,
        });
      }
    });
    const beside = width * scale + 12;
    const isBeside = this.width - beside > 150;
    if (!isBeside) this.y = foot - 8;
    for (const { text, ...how } of lines) {
      const isLow = this.page !== page || this.y < foot;
      this.text(text, isBeside && !isLow ? { ...how, indent: beside } : how);
    }
    if (this.page === page) this.y = Math.min(this.y, foot - 4);
  }

  numberPages(title: string): void {
    const pages = this.document.getPages();
    const { plain } = this.fonts;
    const [name = ""] = plain.wrapped(title, footLetters, this.width - 60);
    for (const [at, page] of pages.entries()) {
      const number = `${String(at + 1)} / ${String(pages.length)}`;
      this.page = page;
      this.tags.asDecoration(page, () => {
        const how = { face: plain, size: footLetters, colour: quiet, isLast: true };
        this.draw(name, margin, margin - 12, how);
        const left = margin + this.width - plain.width(number, footLetters);
        this.draw(number, left, margin - 12, how);
      });
    }
  }

  private get width(): number {
    return this.size[0] - 2 * margin;
  }

  private heightOf({ text, font = this.fonts.plain, size, indent = 0, before = 0, after = 0 }: Line): number {
    return before + after + font.wrapped(text, size, this.width - indent).length * size * leading;
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

  private rule(thickness: number): void {
    this.tags.asDecoration(this.page, () => {
      this.page.drawLine({
        start: { x: margin, y: this.y },
        end: { x: margin + this.width, y: this.y },
        ...{ thickness, color: lineColour },
      });
    });
  }

  /** Writes a line from x on. One that goes on in a next line ends with a space, so that no words are read as one. */
  private draw(
    line: string,
    x: number,
    y: number,
    how: { readonly face: Face; readonly size: number; readonly colour: RGB; readonly isLast: boolean },
  ): void {
    const { face, size, colour, isLast } = how;
    let left = x;
    const put = (text: string): void => {
      this.page.drawText(text, { x: left, y, size, font: face.font, color: colour });
    };
    for (const { text, width } of face.pieces(line)) {
      put(text);
      left += width(size);
    }
    if (!isLast) put(" ");
  }

  /** The largest letters with which all columns stand side by side, and the widths of the columns. */
  private fitted(
    headings: readonly string[],
    rows: readonly (readonly string[])[],
  ): { readonly letters: number; readonly widths: readonly number[] } {
    for (let letters = largestLetters; ; letters -= 0.5) {
      const needs = this.needs(headings, rows, letters).slice(1);
      const names = this.width - sum(needs);
      if (names < letters * leastNames && letters > smallestLetters) continue;
      const spare = Math.max(0, names - letters * 22) / Math.max(1, needs.length);
      const widths = needs.map((each) => each + spare);
      const first = Math.max(letters * leastNames, this.width - sum(widths));
      return { letters, widths: [first, ...widths] };
    }
  }

  /** How wide each column has to be for its lengths, and for the words of its heading. */
  private needs(
    headings: readonly string[],
    rows: readonly (readonly string[])[],
    letters: number,
  ): readonly number[] {
    const { bold } = this.fonts;
    return headings.map((heading, c) => {
      const texts = c === 0 ? [] : rows.flatMap((row) => (row[c] ?? "").split("\n"));
      const parts = [...heading.split(/[ \n]/u), ...texts].map((text) => bold.width(text, letters));
      return parts.reduce((widest, each) => Math.max(widest, each), 0) + 2 * cellPadding + 1;
    });
  }
}

function cellElement(row: Element, isHead: boolean, column: number): Element {
  if (isHead) return row.add("TH", { scope: "Column" });
  return column === 0 ? row.add("TH", { scope: "Row" }) : row.add("TD");
}
