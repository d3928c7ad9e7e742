import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import * as library from "cjk-regex";
import { describe, expect, it } from "vitest";
import * as ours from "../../../addin/standalone/grid/leftOut/cjkRegex.ts";

const require = createRequire(import.meta.url);
const renderer = readFileSync(
  path.join(path.dirname(require.resolve("@univerjs/engine-render")), "../es/index.js"),
  "utf8",
);
const core = readFileSync(
  path.join(path.dirname(require.resolve("@univerjs/core")), "../es/index.js"),
  "utf8",
);

function count(text: string, pattern: RegExp): number {
  return text.match(pattern)?.length ?? 0;
}

describe("what the page leaves out of the grid", () => {
  it.each(["all", "letters", "punctuations"] as const)(
    "knows the same letters without cjk-regex: %s",
    (which) => {
      const mine = ours[which]().toRegExp();
      const known = library[which]().toRegExp();
      let found = 0;
      for (let code = 0; code <= 0x10_ff_ff; code++) {
        const letter = String.fromCodePoint(code);
        const isOne = known.test(letter);
        if (isOne) found++;
        if (mine.test(letter) !== isOne) throw new Error(`U+${code.toString(16)} is told otherwise.`);
      }
      expect(found).toBeGreaterThan(100);
    },
  );

  // Read in the installed grid: with another version these have to be read anew.
  it("reads no font: letters are set by a font file only where that is asked for, and nobody asks", () => {
    expect(count(renderer, /\bparse\(fontBuffer\)/gu)).toBe(1);
    expect(renderer).toContain("if (useOpenType) glyphInfos = textShape(paragraphBody);");
    expect(count(renderer, /\btextShape\(/gu)).toBe(2);
    expect(count(renderer, /\bshaping\(/gu)).toBe(2);
    expect(renderer).toContain("sectionBreakConfig, useOpenType = false)");
    expect(renderer).toContain("shaping(ctx, content, viewModel, paragraphNode, sectionBreakConfig)");
  });

  it("asks for the language of a paragraph only to hyphenate, which only new documents with pages do", () => {
    expect(count(renderer, /\bfranc\(/gu)).toBe(1);
    expect(count(renderer, /languageDetector\.detect\(/gu)).toBe(1);
    expect(renderer).toContain("const { autoHyphenation = BooleanNumber.FALSE } = sectionBreakConfig;");
    expect(count(core, /autoHyphenation: 1/gu)).toBe(1);
    // What a language has no pattern for is passed over.
    expect(renderer).toContain("if (pattern == null) return;");
  });
});
