import { createHash } from "node:crypto";
import type { Cells } from "../../addin/chart/cell.ts";
import type { Chart } from "../../addin/chart/chart.ts";
import { readChart } from "../../addin/chart/readChart.ts";
import { readEaseRules } from "../../addin/chart/readEaseRules.ts";
import { readPatternTable } from "../../addin/chart/readPatterns.ts";
import { readTolerances } from "../../addin/chart/tolerances.ts";
import { checkChart } from "../../addin/checking/checkChart.ts";
import { demoWorkbook } from "../../addin/demo/demoWorkbook.ts";
import type { BuyersFile } from "../../addin/publish/buyersFile.ts";
import { buyersFile } from "../../addin/publish/buyersFile.ts";
import { pageStyleOf, publishedPage } from "../../addin/publish/page/publishedPage.ts";
import type { Publication } from "../../addin/publish/publication.ts";
import { usualPublication } from "../../addin/publish/publication.ts";
import type { PublicationAtWork, PublishedFrom } from "../../addin/publish/published.ts";
import { publish } from "../../addin/publish/published.ts";
import { tableCells } from "../../addin/standalone/workbooks/calculate.ts";

const workbook = demoWorkbook();

/** The tables of the demo, headings first. */
export const demoTables = {
  figures: tableCells(workbook, "Figures"),
  patterns: tableCells(workbook, "Patterns"),
  easeRules: tableCells(workbook, "EaseRules"),
  garmentClasses: tableCells(workbook, "GarmentClasses"),
  tolerances: tableCells(workbook, "Tolerances"),
} as const;

/** What the demo, or a chart with its patterns, is published from. */
export function fromTables(
  figures: Cells = demoTables.figures,
  patterns: Cells = demoTables.patterns,
): PublishedFrom {
  const chart = readChart(figures);
  return {
    chart,
    patterns: readPatternTable(patterns, chart),
    rules: readEaseRules(demoTables.easeRules),
    tolerances: readTolerances(demoTables.tolerances, chart),
    flags: checkChart(chart),
  };
}

export const demo = fromTables();

export function published(options: Partial<Publication> = {}, from: PublishedFrom = demo): PublicationAtWork {
  return publish(from, { ...usualPublication, ...options });
}

export function fileOf(options: Partial<Publication> = {}, from: PublishedFrom = demo): BuyersFile {
  return buyersFile(published(options, from), from.tolerances);
}

/** The page with a script of no consequence, for tests of what stands in it. */
export function pageOf(options: Partial<Publication> = {}, from: PublishedFrom = demo): string {
  const work = published(options, from);
  const code = "void 0";
  return publishedPage(work.published, {
    code,
    hash: sha256(code),
    styleHash: sha256(pageStyleOf(work.published)),
    file: (options.fitPage ?? true) ? buyersFile(work, from.tolerances) : undefined,
  });
}

export function sha256(text: string): string {
  return createHash("sha256").update(text).digest("base64");
}

export function chartOf(rows: Cells): Chart {
  return readChart(rows);
}
