import { describe, expect, it } from "vitest";
import { demoWorkbook } from "../../addin/demo/demoWorkbook.ts";
import { figures } from "../../addin/demo/figures.ts";
import { calculate } from "../../addin/standalone/workbooks/calculate.ts";

const calculated = calculate(demoWorkbook());
const result = (sheet: string, name: string) =>
  calculated.find((one) => one.sheet === sheet && one.formula.startsWith(`=FIT.${name}(`))?.result ?? [];
const column = (rows: readonly (readonly unknown[])[], at: number) =>
  new Map(rows.slice(1).map((row) => [row[0], row[at]]));
const ofBody = (body: string) => figures.filter((figure) => figure.body === body).map(({ name }) => name);

describe("the questions that the demo answers", () => {
  it("who only shares loose clothes: two editions of one line, each a body of its own", () => {
    const body = column(result("Groups", "GROUPS"), 1);
    const loose = column(result("Loose clothes", "GROUPS"), 1);
    const [larch, first] = [ofBody("larch"), ofBody("larchFirst")];
    expect(first.some((name) => larch.some((other) => body.get(name) === body.get(other)))).toBe(false);
    // Cattrin’s hip stands in the chart with a planted mistake.
    const read = [...larch.filter((name) => name !== "Cattrin"), ...first];
    expect(new Set(read.map((name) => loose.get(name))).size).toBe(1);
  });

  it("what two figures share and why not, in the words of a fitting", () => {
    const answers = column(result("Sharing", "SHARES"), 1);
    expect([answers.get("Fitted clothes"), answers.get("Loose clothes")]).toEqual(["no", "yes"]);
    const why = column(result("Sharing", "SHARES"), 2);
    expect(why.get("Hats")).toBe("On Garlow: Head 7 mm smaller.");
  });

  it("what to measure next: the reading without which most pairs stay open", () => {
    // Bryndle has the body of three figures, Rushen of one whose readings can all be used.
    expect(result("Measure next", "MEASURENEXT").slice(1)).toEqual([
      ["Bryndle", "Hip", 3, 3, ""],
      ["Rushen", "Bust", 1, 1, "If doubtful readings were mended or left out: Settles 3, Needed by 3."],
    ]);
  });

  it("which figures to keep as house models: so few that every other is near one, proved", () => {
    const [proof, , ...bases] = result("House models", "BASES");
    expect(proof?.[0]).toMatch(/^\d+ base figures reach every figure, and no fewer can\./);
    const served = bases.flatMap((row) => [row[0], ...String(row[2]).split(", ")]);
    const read = figures.map(({ name }) => name).filter((name) => !["Bryndle", "Rushen"].includes(name));
    expect(read.filter((name) => !served.includes(name))).toEqual([]);
    expect(bases.every((row) => Number(row[6]) <= 2)).toBe(true);
  });

  it("what a missing reading may be expected to be: near that of the figures with the same body", () => {
    const [, row] = result("Expected", "EXPECTED");
    expect(row?.slice(0, 2)).toEqual(["Bryndle", "Hip (mm)"]);
    const [expected, low, high] = (row ?? []).slice(2, 5).map(Number);
    // The mould of the body has a hip of 124 mm.
    expect(Math.abs(expected! - 124)).toBeLessThan(1);
    expect(low!).toBeLessThan(124);
    expect(high!).toBeGreaterThan(124);
  });
});
