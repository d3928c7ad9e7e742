import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { demoTables } from "../publish/published.ts";
import { handsOn } from "./hands.ts";
import type { Visitor } from "./page.ts";
import { newVisitor } from "./page.ts";

const folder = mkdtempSync(path.join(os.tmpdir(), "measure-book-print-"));

describe("printing the page", () => {
  let visitor: Visitor;

  beforeAll(async () => {
    visitor = await newVisitor();
  });

  afterAll(async () => {
    await visitor.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it("prints the sheet that is shown, its headings on every page", async () => {
    const page = await visitor.open(inject("address"));
    await handsOn(page).goTo("Figures!A4");
    const file = path.join(folder, "sheet.pdf");
    await page.pdf({ path: file, format: "A4", landscape: true });
    // Read by poppler, which shares no code with the browser.
    const pages = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" })
      .split("\f")
      .filter((text) => text.trim() !== "");
    const all = pages.join("\n");
    for (const [name] of demoTables.figures.slice(1)) expect(all).toContain(String(name));
    expect(pages.length).toBeGreaterThan(1);
    for (const text of pages) expect(text).toContain("Figure");
    // The last column is there too.
    const [headings] = demoTables.figures;
    expect(all.replace(/\s/gu, "")).toContain(String(headings?.at(-1)).replace(/\s/gu, ""));
    // As the cell shows it, with its format; nothing of the pane or the bars.
    expect(all).toContain("165.0");
    expect(all).not.toContain("Save .xlsx");
    // The table goes when the printing is over.
    await page.locator(".printed-sheet").waitFor({ state: "detached" });

    // On the paper that the browser takes by itself nothing lies beyond its edge, and the names stand beside every part.
    await page.pdf({ path: file, preferCSSPageSize: true });
    const words = execFileSync("pdftotext", ["-bbox", file, "-"], { encoding: "utf8" });
    const width = Number(/<page width="([\d.]+)"/u.exec(words)?.[1]);
    const ends = [...words.matchAll(/xMax="([\d.]+)"/gu)].map(([, end]) => Number(end));
    expect(Math.max(...ends)).toBeLessThanOrEqual(width);
    const raw = execFileSync("pdftotext", ["-raw", file, "-"], { encoding: "utf8" });
    expect(raw.match(/Ardwen/gu)?.length).toBeGreaterThan(1);
    expect(await page.locator("style", { hasText: "landscape" }).count()).toBe(0);

    // Verdicts have their signs on paper too, where colours may be missing.
    await handsOn(page).goTo("Match!A1");
    await page.pdf({ path: file, format: "A4", landscape: true });
    // In the order of drawing, cell by cell: long words go on below, in the narrow columns of paper.
    const verdicts = execFileSync("pdftotext", ["-raw", file, "-"], { encoding: "utf8" }).replace(
      /\s+/g,
      " ",
    );
    for (const signed of ["● fits", "▽ too loose", "✕ will not go on"]) expect(verdicts).toContain(signed);
  });
});
