import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Cells } from "../../../addin/chart/cell.ts";
import { chartPdf } from "../../../taskpane/publish/chartPdf.ts";
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

function saved(name: string, bytes: Uint8Array): string {
  const file = path.join(folder, name);
  writeFileSync(file, bytes);
  return file;
}

describe("the PDF of the demo", () => {
  let file: string;
  beforeAll(async () => {
    const { published: demo } = published({
      title: "Ottermere: who wears what",
      date: "May 2026",
      paper: "A4",
    });
    file = saved("demo.pdf", await chartPdf(demo, fonts));
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
    ].map((words) => text.indexOf(words));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(text).toContain("7 ³⁄₁₆");
    expect(text).toMatch(/6 ?⅝/u);
    expect(text).not.toContain("□");
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
  const pdfOf = async (name: string, cells: Cells, paper: "A4" | "Letter"): Promise<string> => {
    const from = { ...fromTables(cells), patterns: undefined, flags: [] };
    const measures = (cells[0] ?? []).slice(1).map((heading) => String(heading).replace(" (mm)", ""));
    const { published: work } = published({ paper, units: ["mm"], measures, sharedRows: false }, from);
    return saved(name, await chartPdf(work, fonts));
  };

  it("with 25 figures and 6 measures is one page upright", async () => {
    const file = await pdfOf("small.pdf", rows(25, 6), "Letter");
    expect(poppler("pdfinfo", file)).toMatch(/Pages: +1\n/u);
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
