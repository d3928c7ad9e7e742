import { describe, expect, test } from "vitest";
import { reasonsFunction } from "../../../functions/reasons.ts";
import { wardrobeFunction } from "../../../functions/wardrobe.ts";
import { wearersFunction } from "../../../functions/wearers.ts";
import { wardrobeOf, wearersOf } from "../../../taskpane/fit/ranking.ts";
import type { Asked } from "../../../taskpane/fit/writeAnswer.ts";
import { planAnswer } from "../../../taskpane/fit/writeAnswer.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { figures, patterns, ready, wardrobe } from "./wardrobe.ts";

const pair = { pattern: 1, figure: 0 };

describe("an answer on a sheet of its own", () => {
  test.each([
    ["wearers", wearersFunction, ["P2"], 'FIT.WEARERS(Patterns[#All], Figures[#All], "P2")'],
    ["wardrobe", wardrobeFunction, ["Ardmoor"], 'FIT.WARDROBE(Patterns[#All], Figures[#All], "Ardmoor")'],
    [
      "why",
      reasonsFunction,
      ["P2", "Ardmoor"],
      'FIT.REASONS(Patterns[#All], Figures[#All], "P2", "Ardmoor")',
    ],
  ] as const)(
    "of “%s” is what the worksheet function gives, in either form",
    async (kind, fn, asked, formula) => {
      const fit = await ready();
      const { fitting } = fit;
      const question: Asked =
        kind === "why"
          ? { kind, pair }
          : { kind, pair, shown: kind === "wearers" ? wearersOf(fitting, 1) : wardrobeOf(fitting, 0) };
      const workbook = createMemoryWorkbook(wardrobe());

      const values = planAnswer("values", question, fit, fitting);
      await workbook.apply(values.label, values.edits());
      const area = await workbook.usedArea(values.at.sheet);
      const written = await workbook.readArea({
        ...area!,
        row: values.at.row,
        rows: area!.rows - values.at.row,
      });
      const given = fn.compute([patterns, figures, ...asked]);
      const rows = Array.isArray(given) ? given : [];
      expect(rows.length).toBeGreaterThan(3);
      expect(written.values).toEqual(
        rows.map((row) =>
          Array.isArray(row) ? row.map((value) => (value === "" ? undefined : value)) : row,
        ),
      );

      const following = planAnswer("formulas", question, fit, fitting);
      expect(following.preview).toContain(`=${formula} into A4`);
      await workbook.undo();
      await workbook.apply(following.label, following.edits());
      const sheet = workbook.content().sheets.find(({ name }) => name === following.at.sheet);
      expect(sheet?.cells[following.at.row]?.[0]?.formula).toBe(`=${formula}`);
    },
  );

  test("keeps to what the filters leave on the screen", async () => {
    const fit = await ready();
    const shown = wearersOf(fit.fitting, 1).filter(({ explanation }) => explanation.verdict === "too tight");
    const plan = planAnswer("values", { kind: "wearers", pair, shown }, fit, fit.fitting);
    expect(plan.preview).toContain(`A4:E${String(4 + shown.length)} of the new sheet “Wearers”`);
  });
});
