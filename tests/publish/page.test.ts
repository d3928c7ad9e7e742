import { HtmlValidate } from "html-validate";
import { describe, expect, it } from "vitest";
import type { Cells } from "../../addin/chart/cell.ts";
import { escaped } from "../../addin/publish/page/html.ts";
import { fromTables, pageOf } from "./published.ts";

const validator = new HtmlValidate({
  extends: ["html-validate:standard"],
  // The page is written by a program: how its text is broken into lines says nothing.
  rules: { "no-trailing-whitespace": "off", "long-title": "off" },
});

async function faultsIn(page: string): Promise<readonly string[]> {
  const { results } = await validator.validateString(page);
  return results.flatMap(({ messages }) =>
    messages.map(({ line, ruleId, message }) => `${String(line)}: ${ruleId}: ${message}`),
  );
}

const hostile = [
  `<img src=x onerror=alert(1)>`,
  `"Quoted" & 'so'`,
  `</script><script>alert(2)</script>`,
  `=1+1`,
  `מירה`,
  `تمارا <b>`,
  `{{7*7}}\u0000\u2028 x`,
];

describe("the published page", () => {
  it("is valid HTML in both languages", async () => {
    for (const language of ["English", "German"] as const)
      expect(await faultsIn(pageOf({ language, note: "One line.\nAnother." })), language).toEqual([]);
  });

  it("names no address, and its policy lets it ask none", () => {
    const page = pageOf();
    expect(page).not.toMatch(/https?:|\bsrc=|@import|url\(/u);
    expect(page).toMatch(
      /Content-Security-Policy" content="default-src &#39;none&#39;; script-src &#39;sha256-/u,
    );
  });

  it("shows names of every kind as text, each in a direction of its own", async () => {
    const figures: Cells = [
      ["Figure", "Bust (mm)", "Waist (mm)", "Hip (mm)"],
      ...hostile.map((name, at) => [name, 180 + 10 * at, 140, 190]),
    ];
    const patterns: Cells = [
      ["Pattern", "Title", "Garment class", "Drafted for", "Opens"],
      ...hostile.map((name, at) => [`${name}${String(at)}`, name, "Dress", name, "full length"]),
    ];
    const page = pageOf(
      { title: hostile[2]!, maker: hostile[0]!, note: hostile[1]!, cautions: [hostile[2]!] },
      fromTables(figures, patterns),
    );
    expect(await faultsIn(page)).toEqual([]);
    expect(page.match(/<script/gu)).toHaveLength(2);
    expect(page).not.toContain("<img");
    for (const name of hostile) expect(page).toContain(`<bdi>${escaped(name)}</bdi>`);
  });

  it("holds nothing of what is not published", () => {
    const secret = "kept to herself";
    const figures: Cells = [
      ["Figure", "Maker", "Bust (mm)", "Waist (mm)", "Hip (mm)", "Thigh (mm)", "Notes"],
      ["Shown", "Mill", 180.3, 140, 190, 117.77, secret],
      ["Hidden one", "Mill", 211.13, 150, 200, 119.99, secret],
    ];
    const patterns: Cells = [
      ["Pattern", "Title", "Garment class", "Drafted for", "Opens", "Notes"],
      ["P1", "Dress", "Dress", "Hidden one", "full length", secret],
      ["P2", "Unfinished", "Dress", "Shown", "full length", secret],
    ];
    const page = pageOf(
      {
        figures: ["Shown"],
        measures: ["Bust", "Waist"],
        patterns: ["P1"],
        rounding: "to 1 mm",
        units: ["mm"],
      },
      fromTables(figures, patterns),
    );
    // The hip may be asked for; what it measures is not said.
    for (const text of [secret, "Hidden", "Unfinished", "P2", "Mill", "180.3", "117.77", "119.99", "211.13"])
      expect(page.includes(text), text).toBe(false);
    expect(page).toContain("<bdi>Shown</bdi>");
  });

  it("leaves out what the garments measure where it answers for no other figures", () => {
    const page = pageOf({ fitPage: false });
    expect(page).not.toContain("garmentMm");
    expect(page).not.toContain('id="buyer"');
    expect(pageOf()).toContain("garmentMm");
  });

  it("has a dash with its reason for what is not published", () => {
    const page = pageOf({ rounding: "to 1 mm" });
    expect(page).toMatch(
      /<td class="none">–<sup><a href="#remark-[a-z]" aria-label="being checked, so not given">/u,
    );
    expect(page).toMatch(/<td class="none">–<sup><a href="#remark-[a-z]" aria-label="not measured">/u);
  });
});
