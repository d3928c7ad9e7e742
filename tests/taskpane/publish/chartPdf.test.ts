import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import fontkit from "@cantoo/fontkit";
import { PDFDocument, PDFName } from "@cantoo/pdf-lib";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Cells } from "../../../addin/chart/cell.ts";
import type { Publication } from "../../../addin/publish/publication.ts";
import { chartPdf } from "../../../taskpane/publish/pdf/chartPdf.ts";
import { measures } from "../../../addin/measures/dictionary.ts";
import { Face, visualPieces } from "../../../taskpane/publish/pdf/face.ts";
import { fromTables, published } from "../../publish/published.ts";

const folder = mkdtempSync(path.join(os.tmpdir(), "measure-book-pdf-"));
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const face = (name: string): Uint8Array => readFileSync(`node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`);
const fonts = { plain: face("DejaVuSansCondensed"), bold: face("DejaVuSansCondensed-Bold") };

/** What poppler says of a PDF: the reader of most Linux desktops, which shares no code with ours. */
function poppler(tool: "pdftotext" | "pdffonts" | "pdfinfo", file: string, ...options: string[]): string {
  const said = execFileSync(tool, [...options, file, ...(tool === "pdftotext" ? ["-"] : [])], {
    encoding: "utf8",
  });
  return said.replaceAll("\u00a0", " ");
}

/** What the catalogue says that poppler does not print. */
async function catalogOf(file: string) {
  const { catalog } = await PDFDocument.load(readFileSync(file));
  return {
    showsTitle: catalog.getViewerPreferences()?.getDisplayDocTitle(),
    language: catalog.get(PDFName.of("Lang"))?.toString(),
  };
}

function saved(name: string, bytes: Uint8Array): string {
  const file = path.join(folder, name);
  writeFileSync(file, bytes);
  return file;
}

describe("the PDF of the demo", () => {
  let file: string;
  const { published: work } = published({
    title: "Ottermere: who wears what",
    date: "May 2026",
    paper: "A4",
  });
  beforeAll(async () => {
    file = saved("demo.pdf", await chartPdf(work, fonts));
  });

  it("is read as text, in its order, with fractions", () => {
    const text = poppler("pdftotext", file);
    const places = [
      "Ottermere: who wears what",
      "Ardwen, Dovelle",
      "Who wears the same body",
      "Which pattern fits whom",
      "Sedge bodice",
      "Please note",
      "How each measure is taken",
    ].map((words) => text.indexOf(words));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(text).toContain("7 ³⁄₁₆");
    expect(text).toMatch(/6 ?⅝/u);
    expect(text).not.toContain("□");
  });

  it("is tagged: headings, a table with headings of rows and columns, and drawings with their words", async () => {
    expect(poppler("pdfinfo", file)).toMatch(/^Title: +Ottermere: who wears what$/mu);
    expect(poppler("pdfinfo", file)).toMatch(/^Tagged: +yes$/mu);
    const tree = poppler("pdfinfo", file, "-struct-text");
    const { rows, columns, patterns, drawings, bodies } = work;
    const count = (pattern: RegExp): number => tree.match(pattern)?.length ?? 0;
    expect(tree).toMatch(/^Document\n {2}H1 \(block\)\n {4}"Ottermere: who wears what"/u);
    expect(count(/^ {2}Table /gmu)).toBe(1);
    // A heading for the names and one for each measure, once, whatever the pages.
    expect(count(/\/Scope \/Column/gu)).toBe(columns.length + 1);
    expect(count(/\/Scope \/Row/gu)).toBe(rows.length);
    expect(count(/^ {4}TR/gmu)).toBe(rows.length + 1);
    expect(count(/^ {6}TD/gmu)).toBe(rows.length * columns.length);
    expect(count(/^ {2}H3 /gmu)).toBe(patterns.length);
    expect(drawings.length).toBe(bodies.length);
    expect(count(/^ {2}Figure:/gmu)).toBe(drawings.length + 1);
    expect(tree).toMatch(/TH:\n[^"]*\/Scope \/Row\n +"Ardwen, Dovelle, Elmory, Fennick"/u);
    // The second unit is not read as the digits of the first.
    expect(tree).toMatch(/^ +"406\.4 16"$/mu);
    // Page numbers and repeated headings are no part of it.
    expect(tree).not.toMatch(/"1 \/ \d+"/u);
    expect(await catalogOf(file)).toEqual({ showsTitle: true, language: "(en)" });
  });

  it("has its fonts embedded, as parts of them", () => {
    const [, , ...lines] = poppler("pdffonts", file).trim().split("\n");
    expect(lines.length).toBe(2);
    for (const line of lines) expect(line).toMatch(/DejaVuSansCondensed.* Identity-H +yes (yes|no) +yes/u);
    expect(readFileSync(file).length).toBeLessThan(200_000);
  });

  it("repeats the headings on every page of the chart, on A4 laid across", () => {
    expect(poppler("pdfinfo", file)).toMatch(/Page size: +841\.89 x 595\.28 pts \(A4\)/u);
    for (const page of ["1", "2"])
      expect(poppler("pdftotext", file, "-f", page, "-l", page)).toMatch(
        /Figure[\s\S]*Bust girth|Bust girth[\s\S]*Figure|Bust\s+girth/u,
      );
    expect(poppler("pdftotext", file, "-f", "2", "-l", "2")).toMatch(/^2 ?\/ ?\d+$/mu);
  });
});

describe("the PDF of other charts", () => {
  const rows = (figures: number, measures: number): Cells => {
    const headings = [
      ...[
        "Height",
        "Head",
        "Neck",
        "Bust",
        "Under-bust",
        "Waist",
        "Hip",
        "Upper arm",
        "Wrist",
        "Hand",
        "Arm length",
      ],
      ...[
        "Back waist",
        "Thigh",
        "Knee",
        "Calf",
        "Ankle",
        "Inside leg",
        "Foot length",
        "Heel",
        "Shoulder width",
      ],
    ].slice(0, measures);
    return [
      ["Figure", ...headings.map((heading) => `${heading} (mm)`)],
      ...Array.from({ length: figures }, (_, i) => [
        `Figure ${String(i + 1)}`,
        ...headings.map((_, m) => 40 + 7 * m + ((i * 13) % 29) + 9 * i),
      ]),
    ];
  };
  const pdfOf = async (
    name: string,
    cells: Cells,
    paper: "A4" | "Letter",
    options: Partial<Publication> = {},
  ): Promise<string> => {
    const from = { ...fromTables(cells), patterns: undefined, flags: [] };
    const taken = (cells[0] ?? []).slice(1).map((heading) => String(heading).replace(" (mm)", ""));
    const { published: work } = published(
      { paper, units: ["mm"], measures: taken, sharedRows: false, ...options },
      from,
    );
    return saved(name, await chartPdf(work, fonts));
  };

  it("with 25 figures and 6 measures is one page upright, and how to measure on the next", async () => {
    const file = await pdfOf("small.pdf", rows(25, 6), "Letter", { drawings: false });
    expect(poppler("pdfinfo", file)).toMatch(/Pages: +1\n/u);
    const drawn = await pdfOf("drawn.pdf", rows(25, 6), "Letter");
    expect(poppler("pdfinfo", drawn)).toMatch(/Pages: +2\n/u);
    expect(poppler("pdftotext", drawn, "-l", "1")).toContain("Figure 25");
    expect(poppler("pdftotext", drawn, "-f", "2")).toContain("How each measure is taken");
    expect(poppler("pdfinfo", file)).toMatch(/Page size: +612 x 792 pts \(letter\)/u);
  });

  it("with 200 figures and 20 measures has every name once, and headings on every page", async () => {
    const file = await pdfOf("large.pdf", rows(200, 20), "A4");
    const text = poppler("pdftotext", file, "-layout");
    for (let i = 1; i <= 200; i++)
      expect(text.match(new RegExp(`^ *Figure ${String(i)}\\b`, "gmu")), String(i)).toHaveLength(1);
    const pages = text.split("\f").filter((page) => page.trim() !== "");
    for (const page of pages.filter((each) => /^ *Figure \d+ +\d/mu.test(each)))
      expect(page).toMatch(/Waist/u);
  });

  it("with more measures than have room in two units divides the table, all of it on the paper", async () => {
    const known = measures.slice(0, 26).map(({ name }) => `${name} (in)`);
    const names = [
      "Ämilie Pennywhistle-Featherstonehaugh (jointed, first edition)",
      "Fenja",
      "Gwendolinchenlein",
    ];
    const cells: Cells = [
      ["Figure", ...known],
      ...names.map((name, i) => [name, ...known.map((_, m) => 1.0625 + m / 2 + i)]),
    ];
    for (const paper of ["A4", "Letter"] as const) {
      const file = await pdfOf("wide.pdf", cells, paper, {
        ...{ units: ["inches in sixteenths", "mm"], drawings: false },
        measures: known.map((heading) => heading.replace(" (in)", "")),
      });
      const words = poppler("pdftotext", file, "-bbox");
      const [, width] = /<page width="([\d.]+)"/u.exec(words) ?? [];
      const ends = [...words.matchAll(/xMax="([\d.]+)"/gu)].map(([, end]) => Number(end));
      // Half an inch is left free at the edge, which printers do not reach.
      expect(Math.max(...ends)).toBeLessThanOrEqual(Number(width) - 35);
      // The names stand beside each part of the table, its headings above them.
      const text = poppler("pdftotext", file, "-raw");
      const parts = text.match(/^Figure\b/gmu)?.length ?? 0;
      expect(parts).toBeGreaterThan(1);
      expect(text.match(/^Fenja\b/gmu)).toHaveLength(parts);
    }
  });

  it("leaves no headings of a further part alone at the foot of a page", async () => {
    const known = measures.slice(0, 26).map(({ name }) => `${name} (mm)`);
    for (const figures of [14, 17, 20, 23, 26]) {
      const cells: Cells = [
        ["Figure", ...known],
        ...Array.from({ length: figures }, (_, i) => [
          `Name ${String(i + 1)}`,
          ...known.map((_, m) => 27 + m * 12.5 + i * 40),
        ]),
      ];
      const file = await pdfOf("foot.pdf", cells, "A4", {
        ...{ units: ["inches in sixteenths", "mm"], drawings: false },
        measures: known.map((heading) => heading.replace(" (mm)", "")),
      });
      const pages = poppler("pdftotext", file, "-raw").split("\f");
      // Behind the last headings of a page stands a name.
      for (const page of pages.filter((text) => /^Figure\b/mu.test(text)))
        expect(page.slice(Math.max(0, page.lastIndexOf("\nFigure"))), String(figures)).toMatch(/^Name \d+/mu);
    }
  });

  it("breaks a word that is wider than its column, behind its hyphen where it has one", async () => {
    const document = await PDFDocument.create();
    document.registerFontkit(fontkit);
    const bold = new Face(await document.embedFont(fonts.bold));
    const lines = bold.wrapped("Eirlys Pennywhistle-Featherstonehaugh Donaudampfschifffahrt", 8, 85);
    for (const line of lines) expect(bold.width(line, 8)).toBeLessThanOrEqual(85);
    expect(lines.slice(0, 2)).toEqual(["Eirlys Pennywhistle-", "Featherstonehaugh"]);
    expect(lines.slice(2).join("")).toBe("Donaudampfschifffahrt");
  });

  it("keeps the figures of a body on one page, one after the other", async () => {
    // Bodies of seven, whose figures stand far from one another in the chart.
    const cells: Cells = [
      ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
      ...Array.from({ length: 98 }, (_, i) => {
        const body = i % 14;
        return [`B${String(body)}-${String(i)}`, 150 + 20 * body, 120 + 20 * body, 160 + 20 * body];
      }),
    ];
    const text = poppler("pdftotext", await pdfOf("bodies.pdf", cells, "A4"), "-layout");
    const pages = text
      .split("\f")
      .map((page) => [...page.matchAll(/^ *B(\d+)-\d+ {2}/gmu)].map(([, n]) => n));
    expect(pages.flat()).toHaveLength(98);
    expect(pages.filter(({ length }) => length > 0).length).toBeGreaterThan(1);
    for (let body = 0; body < 14; body++) {
      const on = pages.filter((page) => page.includes(String(body)));
      expect(on).toHaveLength(1);
      const first = on[0]!.indexOf(String(body));
      expect(on[0]!.slice(first, first + 7)).toEqual(Array.from({ length: 7 }, () => String(body)));
    }
  });

  it("shows names that are written from right to left, whole and in their order", async () => {
    const names = ["מירה", "תמר של הים", "تمارا", "Mira מירה 7"];
    const cells: Cells = [
      ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
      ...names.map((name, at) => [name, 180 + 20 * at, 140 + 20 * at, 190 + 20 * at]),
      ["שני", 180.5, 140, 190],
    ];
    const file = await pdfOf("right.pdf", cells, "A4", { title: "מידות", sharedRows: true });
    // Poppler brings what it finds back into the order in which it is read, with marks of direction.
    const text = poppler("pdftotext", file).replace(/[\u202a-\u202e\u2066-\u2069\u200e\u200f]/gu, "");
    for (const name of ["מידות", ...names.slice(0, 3), "שני"]) expect(text).toContain(name);
    // Two names of a body stand side by side from the left, as on the page.
    expect(text).toMatch(/מירה *, *שני|שני *, *מירה/u);
    expect(text).not.toContain("□");
    expect(poppler("pdffonts", file)).not.toMatch(/ no +(yes|no) +yes/u);
  });

  it("shows names of other scripts that its face has, and a box for what it has not", async () => {
    const cells: Cells = [
      ["Figure", "Bust (mm)"],
      ["Żółw Ø Ğ", 180],
      ["Мира", 190],
      ["Ελένη", 195],
      ["ミラ", 200],
    ];
    const text = poppler("pdftotext", await pdfOf("names.pdf", cells, "A4"));
    for (const name of ["Żółw Ø Ğ", "Мира", "Ελένη", "□□"]) expect(text).toContain(name);
  });
});

describe("a line with letters from both sides", () => {
  /** As it is seen from left to right, א for A and so on: the font turns what it gets in the order of reading. */
  const seen = (line: string): string =>
    visualPieces(line)
      .map((piece) => (/\p{Script=Hebrew}/u.test(piece) ? [...piece].reverse().join("") : piece))
      .join("");

  // The examples of Unicode Standard Annex #9 for rule L2, capitals as Hebrew letters; quoted from memory.
  it("is ordered as the examples of the standard", () => {
    expect(seen("car means אבג.")).toBe("car means גבא.");
    expect(seen("he said “\u2067car אבגדה וזח=\u2069.” “\u2067טי כלמ=\u2069,” she agreed.")).toBe(
      "he said “=חזו הדגבא car.” “=מלכ יט,” she agreed.",
    );
    expect(seen("\u2068אבג (דה) 12\u2069, \u2068וז\u2069")).toBe("12 (הד) גבא, זו");
  });

  it("is left alone where all is from the left", () => {
    expect(visualPieces("5 ⅜ in, “Żółw”")).toEqual(["5 ⅜ in, “Żółw”"]);
  });
});
