import { describe, expect, it } from "vitest";
import { demoWorkbook } from "../../addin/demo/demoWorkbook.ts";
import { tableCells } from "../../addin/standalone/workbooks/calculate.ts";
import { reasonsFunction } from "../../functions/reasons.ts";

describe("REASONS", () => {
  it("has in every row what it has less what it needs as the difference, too small and too large", () => {
    const workbook = demoWorkbook();
    const [patterns, figures] = ["Patterns", "Figures"].map((name) => tableCells(workbook, name));
    const codes = (patterns ?? []).slice(1).map(([code]) => code);
    const names = (figures ?? []).slice(1, 9).map(([name]) => name);
    const counted = { small: 0, large: 0 };
    for (const code of codes) {
      for (const name of names) {
        const table = reasonsFunction.compute([patterns, figures, code, name]);
        if (!Array.isArray(table)) throw new Error("REASONS gives a table");
        for (const [, needs, has, difference, says] of table.slice(1)) {
          if (typeof needs !== "number" || typeof has !== "number" || typeof difference !== "number")
            continue;
          expect(has - needs).toBeCloseTo(difference, 6);
          counted[difference < 0 ? "small" : "large"]++;
          if (/^too loose/.test(String(says))) expect(difference).toBeGreaterThan(0);
        }
      }
    }
    expect(Math.min(counted.small, counted.large)).toBeGreaterThan(20);
  });
});
