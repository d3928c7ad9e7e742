import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import type { SheetContent } from "../../../addin/workbook/content.ts";
import { readXlsx } from "../../../addin/workbook/xlsx/readXlsx.ts";
import { writeXlsx } from "../../../addin/workbook/xlsx/writeXlsx.ts";
import { convert, libreOfficeTimeout } from "./libreOffice.ts";

const folder = mkdtempSync(path.join(os.tmpdir(), "measure-book-printed-"));
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const rows = 150;
const sheetOn = (paper: "A4" | "Letter"): SheetContent => ({
  name: "The chart",
  paper,
  cells: [
    [{ value: "Ottermere", style: "title" }],
    [
      { value: "Figure", style: "heading" },
      { value: "Bust", style: "heading" },
    ],
    ...Array.from({ length: rows }, (_, at) => [{ value: `Figure ${String(at + 1)}` }, { value: 180 + at }]),
  ],
  frozenRows: 2,
});

// LibreOffice prints the file, poppler reads the print: neither shares code with ours.
describe("a saved sheet on paper", () => {
  it.each([
    ["A4", /841\.\d+ x 595\.\d+ pts \(A4\)/u],
    ["Letter", /792 x 612 pts \(letter\)/u],
  ] as const)(
    "is %s laid across, with its headings and its number on every page",
    async (paper, size) => {
      const { bytes } = await writeXlsx({ sheets: [sheetOn(paper)] });
      expect((await readXlsx(bytes)).sheets[0]?.paper).toBe(paper);
      const file = path.join(folder, `${paper}.xlsx`);
      writeFileSync(file, bytes);
      const pdf = path.join(folder, `${paper}.pdf`);
      writeFileSync(pdf, (await convert([file], "pdf")).get(`${paper}.pdf`)!);
      expect(execFileSync("pdfinfo", [pdf], { encoding: "utf8" })).toMatch(size);
      const pages = execFileSync("pdftotext", ["-layout", pdf, "-"], { encoding: "utf8" })
        .split("\f")
        .filter((text) => text.trim() !== "");
      expect(pages.length).toBeGreaterThan(2);
      pages.forEach((text, at) => {
        expect(text).toMatch(/^ *Figure +Bust/mu);
        expect(text).toMatch(
          new RegExp(`The chart +${String(at + 1)} */ *${String(pages.length)}\\s*$`, "u"),
        );
      });
      expect(pages.join("\n").match(/^ *Figure \d+/gmu)).toHaveLength(rows);
    },
    libreOfficeTimeout,
  );
});
