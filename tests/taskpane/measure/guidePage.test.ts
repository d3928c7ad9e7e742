import { createHash } from "node:crypto";
import { HtmlValidate } from "html-validate";
import { describe, expect, it } from "vitest";
import { readChart } from "../../../addin/chart/readChart.ts";
import { measures } from "../../../addin/measures/dictionary.ts";
import { escaped } from "../../../addin/publish/page/html.ts";
import { guideFile, guideMeasures, guidePapers, guideStyles } from "../../../taskpane/measure/guidePage.ts";

const validator = new HtmlValidate({
  extends: ["html-validate:standard"],
  rules: { "no-trailing-whitespace": "off" },
});

function fileOf(headings: readonly string[], paper: (typeof guidePapers)[number] = "A4"): string {
  const chart = readChart([
    ["Figure", ...headings],
    ["Ashby", ...headings.map(() => 100)],
  ]);
  const hash = createHash("sha256").update(guideStyles(paper)).digest("base64");
  return guideFile(guideMeasures(chart), paper, hash);
}

describe("the measuring guide", () => {
  const all = measures.map(({ name }) => `${name} (mm)`);

  it("has every measure of the chart that is known, with its drawing and how to take it", () => {
    const page = fileOf([...all, "Tail (mm)"]);
    expect(page.match(/<svg/gu)).toHaveLength(measures.length);
    for (const { name, definition } of measures) {
      expect(page).toContain(`<bdi>${escaped(name)}</bdi>`);
      expect(page).toContain(escaped(definition));
    }
    expect(page).not.toContain("Tail");
  });

  it("is valid HTML without a script, asks no address for anything, and is set for the paper", async () => {
    for (const paper of guidePapers) {
      const page = fileOf(all, paper);
      const { results } = await validator.validateString(page);
      expect(results.flatMap(({ messages }) => messages.map(({ message }) => message))).toEqual([]);
      expect(page).not.toMatch(/<script|https?:|\bsrc=|@import|url\(/u);
      expect(page).toContain("default-src &#39;none&#39;");
      expect(page).toContain(`@page { size: ${paper};`);
    }
  });

  it("shows headings of every kind as text", () => {
    const page = fileOf([`Bust "<img src=x>" (mm)`, "Bust <b> (mm)", "Waist (mm)"]);
    expect(page).not.toMatch(/<img|<b>/u);
  });
});
