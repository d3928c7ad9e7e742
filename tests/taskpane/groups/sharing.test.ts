import { describe, expect, test } from "vitest";
import { shares } from "../../../addin/similarity/shares.ts";
import { sharingOf, sharingWords } from "../../../taskpane/groups/sharing.ts";
import { grouped } from "./grouped.ts";

describe("what a figure shares with all others", () => {
  test("is sorted: the body, only some clothes, nothing", async () => {
    const { figures } = await grouped();
    const { chart } = figures;
    const linnet = chart.figures.indexOf("Linnet");
    const { body, looser, nothing, classes } = sharingOf(figures, linnet);
    const names = (found: typeof body): readonly string[] =>
      found.map(({ place }) => chart.figures[place] ?? "");
    expect(classes).toEqual(["Fitted clothes", "Loose clothes", "Hats"]);
    expect(names(body)).toEqual(["Pipit", "Dunnock"]);
    expect(names(looser)).toEqual(["Dipper"]);
    expect(names(nothing)).toEqual(["Siskin", "Teal", "Wren"]);
  });

  test("is said in words, with what speaks against it", async () => {
    const { figures } = await grouped();
    const linnet = figures.chart.figures.indexOf("Linnet");
    const dunnock = figures.chart.figures.indexOf("Dunnock");
    const { body, classes } = sharingOf(figures, linnet);
    const found = body.find(({ place }) => place === dunnock);
    expect(sharingWords(classes, found?.classes ?? [])).toBe(
      "Fitted clothes yes; Loose clothes yes; Hats no, Head 6 mm larger",
    );
  });

  test("agrees with the worksheet function SHARES for every pair", async () => {
    const { figures } = await grouped();
    const { chart, tolerances, garments } = figures;
    for (const place of chart.figures.keys()) {
      const { body, looser, nothing } = sharingOf(figures, place);
      for (const each of [...body, ...looser, ...nothing]) {
        const told = shares(chart, place, each.place, { tolerances, garments });
        expect(each.body.answer).toBe(told[0]?.answer);
        expect(each.classes.map(({ answer }) => answer)).toEqual(
          told.slice(told.length - garments.length).map(({ answer }) => answer),
        );
      }
    }
  });
});
