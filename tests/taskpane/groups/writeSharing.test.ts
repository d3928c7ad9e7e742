import { describe, expect, test } from "vitest";
import { sharesFunction } from "../../../functions/shares.ts";
import { planSharing, sharingSheet } from "../../../taskpane/groups/writeSharing.ts";
import { planValues } from "../../../taskpane/groups/writeSheet.ts";
import { figures as cells, grouped, tolerances } from "./grouped.ts";

/** What the worksheet function gives for the same question. */
const given = (figure: string, other: string) => sharesFunction.compute([cells, figure, other, tolerances]);

describe("who only shares loose clothes, on a sheet", () => {
  test("is what the worksheet function gives, for all others and for two", async () => {
    const { figures } = await grouped();
    const { chart } = figures;
    const at = (name: string) => chart.figures.indexOf(name);
    const blank = (rows: unknown) => JSON.parse(JSON.stringify(rows)) as unknown;
    for (const name of ["Linnet", "Wren"])
      expect(blank(sharingSheet(figures, at(name), undefined).values)).toEqual(blank(given(name, "")));
    expect(blank(sharingSheet(figures, at("Linnet"), at("Dipper")).values)).toEqual(
      blank(given("Linnet", "Dipper")),
    );
  });

  test("is one formula that follows, or words that stay, each one step to undo", async () => {
    const { input, figures, workbook } = await grouped();
    const before = workbook.content();
    const linnet = figures.chart.figures.indexOf("Linnet");
    const dipper = figures.chart.figures.indexOf("Dipper");
    expect(planSharing(figures, linnet, undefined, input).preview).toContain(
      '=FIT.SHARES(Figures[#All], "Linnet", , Tolerances[#All]) into A4 of the new sheet “Loose clothes”',
    );
    const two = planSharing(figures, linnet, dipper, input);
    expect(two.preview).toContain('=FIT.SHARES(Figures[#All], "Linnet", "Dipper", Tolerances[#All])');
    await workbook.apply(two.label, two.edits());
    expect(await workbook.sheets()).toContain("Sharing of two");
    await workbook.undo();
    const plain = planValues(sharingSheet(figures, linnet, undefined), input);
    await workbook.apply(plain.label, plain.edits());
    const sheet = workbook.content().sheets.at(-1);
    expect(sheet?.cells.slice(3).map((row) => row[0]?.value)).toEqual([
      ...["Figure", "Dipper", "Pipit", "Dunnock", "Siskin", "Teal", "Wren"],
    ]);
    await workbook.undo();
    expect(workbook.content()).toEqual(before);
  });

  test("is no formula where estimates count, since it leaves them out", async () => {
    const { input, figures } = await grouped();
    const counted = { ...figures, estimates: { ...figures.estimates, areCounted: true } };
    expect(() => planSharing(counted, 0, 1, input)).toThrow("The formula leaves estimates out");
  });
});
