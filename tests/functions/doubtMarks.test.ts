import { describe, expect, it } from "vitest";
import { descriptors } from "../../functions/all.ts";
import { apartFunction } from "../../functions/apart.ts";
import { basesFunction } from "../../functions/bases.ts";
import { groupsFunction } from "../../functions/groups.ts";
import { mostDoubted } from "../../functions/listed.ts";
import { nearestFunction } from "../../functions/nearest.ts";
import { sharesFunction } from "../../functions/shares.ts";
import { stepsFunction } from "../../functions/steps.ts";
import type { Result } from "../../functions/descriptor.ts";

const headings = ["Bust", "Under-bust", "Waist", "Hip", "Thigh", "Knee", "Ankle", "Back waist length"];
const body = [182, 152, 134, 194, 108, 72, 44, 88];
/** Invented: one shape in six sizes, of which Figure 4 and Figure 5 can share a body; the waist of Figure 4 may be a slip. */
const chartOf = (waist: number | string): unknown[][] => [
  ["Figure", ...headings.map((name) => `${name} (mm)`)],
  ...[0.7, 0.8, 0.9, 1, 1.01, 1.2].map((size, i) => [
    `Figure ${String(i + 1)}`,
    ...body.map((mm, j) => (size === 1 && j === 2 ? waist : Math.round(mm * size * 2) / 2)),
  ]),
];
const slip = "Rests on a doubtful reading: Figure 4, Waist 13.4 mm (wrong unit).";
const estimate = "Rests on a doubtful reading: Figure 4, Waist 134 mm (an estimate).";

/** Each with its arguments after the chart, and how many first cells tell a row from others. */
const calls: readonly (readonly [name: string, args: readonly unknown[], keys: number])[] = [
  ["GRADE", ["Figure 3", "Figure 4", "Skirt front"], 2],
  ["GRADE", ["Figure 4", "Figure 2, Figure 3", "Skirt front, Bodice"], 2],
  ["RESIZE", ["Figure 3", "Figure 4"], 1],
  ["RESIZE", ["Figure 4", "Figure 2", "Bust, Waist", 6], 1],
  ["STEPS", ["Bust, Waist"], 2],
  ["STEPS", [null, "yes"], 2],
  ["SHARES", ["Figure 4", "Figure 5"], 1],
  ["SHARES", ["Figure 5"], 1],
  ["NEAREST", ["Figure 4", 9], 1],
];

describe("an answer in cells that rests on a slip", () => {
  it.each(calls)("%s %j says so beside it, and nothing else does", (name, args, keys) => {
    const [asRead, right] = [
      rowsOf(call(name, [chartOf(13.4), ...args])),
      rowsOf(call(name, [chartOf(134), ...args])),
    ];
    expect(right[0]).not.toContain("Doubtful");
    const width = right[0]!.length;
    expect(asRead[0]).toEqual([...right[0]!, "Doubtful"]);
    let marked = 0;
    for (const row of asRead.slice(1)) {
      const key = JSON.stringify(row.slice(0, keys));
      const before = JSON.stringify(row.slice(0, width));
      const same = right.filter((each) => JSON.stringify(each.slice(0, keys)) === key);
      const isOther = !same.some((each) => JSON.stringify(each) === before);
      const mark = String(row[width]);
      // The one that has its reading typed right is the measure: what changes there is marked.
      if (isOther) expect([key, mark]).toEqual([key, expect.stringMatching(/Figure 4.* Mended: /)]);
      if (mark === "") continue;
      marked++;
      for (const [what, answer] of told(mark)) {
        const at = right[0]!.indexOf(what);
        // NEAREST tells the place too.
        if (at < 0) expect(what).toBe("Place");
        else
          expect(
            same.map((each) => shortly(each[at])),
            mark,
          ).toContain(answer);
      }
    }
    expect(marked).toBeGreaterThan(0);
    expect(marked).toBeLessThanOrEqual(asRead.length - 1);
  });

  it("names it, and tells what the answer would be", () => {
    const steps = rowsOf(stepsFunction.compute([chartOf(13.4), "Bust, Waist"]));
    expect(steps.map((row) => row.at(-1))).toEqual([
      ...["Doubtful", "", "", `${slip} Mended: Waist 13.5.`, `${slip} Mended: Waist 1.5.`, ""],
    ]);
    const [, bodyRow] = rowsOf(sharesFunction.compute([chartOf(13.4), "Figure 4", "Figure 5"]));
    expect(bodyRow?.[1]).toBe("no");
    expect(bodyRow?.at(-1)).toContain(`${slip} Mended: Share yes`);
  });

  it("says in NEAREST who would come nearer", () => {
    const rows = rowsOf(nearestFunction.compute([chartOf(13.4), "Figure 5", 2]));
    expect(rows.map((row) => [row[0], row.at(-1)])).toEqual([
      ["Figure", "Doubtful"],
      ["Figure 3", "With doubtful readings mended this one would come behind Figure 4."],
      // Told once, where it comes in.
      [expect.any(String), ""],
    ]);
    const own = rowsOf(nearestFunction.compute([chartOf(13.4), "Figure 4", 9]));
    const fifth = own.find(([figure]) => figure === "Figure 5");
    const right = rowsOf(nearestFunction.compute([chartOf(134), "Figure 4", 1]))[1]!;
    expect(right[0]).toBe("Figure 5");
    expect(fifth?.at(-1)).toBe(`${slip} Mended: Distance ${shortly(right[1])}, Place 1.`);
  });

  it("says without an estimate what would be blank", () => {
    const steps = rowsOf(stepsFunction.compute([chartOf("~ 134"), "Bust, Waist"]));
    expect(steps[3]?.at(-1)).toBe(`${estimate} Without: Waist blank, Missing Waist.`);
    // Who shares a body is asked without estimates.
    expect(rowsOf(sharesFunction.compute([chartOf("~ 134"), "Figure 4", "Figure 5"]))[0]).not.toContain(
      "Doubtful",
    );
  });

  it("leaves APART a number", () => {
    expect(apartFunction.compute([chartOf(13.4), "Figure 4", "Figure 5"])).toBeTypeOf("number");
  });

  it("names the reading that decides, not another one of the same figure", () => {
    const two = chartOf(13.4);
    two[4]![4] = 1940;
    const steps = rowsOf(stepsFunction.compute([two, "Bust, Waist"]));
    expect(steps[3]?.at(-1)).toBe(`${slip} Mended: Waist 13.5.`);
    const grade = rowsOf(call("GRADE", [two, "Figure 3", "Figure 4", "Skirt front"]));
    expect(grade.find(([, point]) => point === "Waist at side")?.at(-1)).toBe(
      `${slip} Mended: Across 3.375.`,
    );
    expect(grade.find(([, point]) => point === "Hip at side")?.at(-1)).toContain("Hip 1940 mm");
  });

  it("tells of estimates only in a chart that is too large to be checked beside", () => {
    const large = [
      ...chartOf(13.4),
      ...Array.from({ length: mostDoubted }, (_, i) => [`More ${String(i)}`, ...body]),
    ];
    expect(rowsOf(stepsFunction.compute([large, "Waist"]))[0]).not.toContain("Doubtful");
    large[2]![3] = "~ 107";
    expect(rowsOf(stepsFunction.compute([large, "Waist"]))[0]).toContain("Doubtful");
  });
});

describe("answers about the whole chart", () => {
  it("TREE says where a figure would join", () => {
    const rows = rowsOf(call("TREE", [chartOf(13.4)]));
    const right = rowsOf(call("TREE", [chartOf(134)]));
    expect(right[0]).not.toContain("Doubtful");
    const joins = right.find((row) => row.slice(1, 3).includes("Figure 4"))!;
    expect(rows.slice(1).flatMap((row) => (row[5] === "" ? [] : [[row[1], row[5]]]))).toEqual([
      ["Figure 4", `${slip} Mended: Times the limit ${shortly(joins[3])}, Figures ${shortly(joins[4])}.`],
    ]);
  });

  it("MEASURENEXT says what a reading would settle", () => {
    const gap = (waist: number) => chartOf(waist).map((row, i) => (i === 5 ? row.with(1, "") : row));
    const [rows, right] = [13.4, 134].map((waist) => rowsOf(call("MEASURENEXT", [gap(waist)])));
    expect(right?.slice(1)).toEqual([["Figure 5", "Bust", 1, 1]]);
    // With the slip the two differ at the waist, and nobody waits for the bust.
    expect(rows?.slice(1)).toEqual([]);
  });
});

describe("house models and the fewest groups", () => {
  it("are looked for anew with the readings mended", () => {
    const bases = rowsOf(basesFunction.compute([chartOf(13.4), null, null]));
    const right = rowsOf(basesFunction.compute([chartOf(134), null, null]));
    expect(right[1]).not.toContain("Doubtful");
    expect(bases[0]?.[0]).toBe(
      `6 base figures reach every figure, and no fewer can. No other 6 need less alteration in all. With doubtful readings mended: ${String(right[0]?.[0])}`,
    );
    expect(String(right[0]?.[0])).toMatch(/^5 base figures reach every figure, and no fewer can\./);
    const served = right.find(([, , serves]) => /^Figure [45]$/.test(String(serves)));
    const mark = served?.[0] === "Figure 4" ? "serves itself" : "Figure 5 serves it";
    const marks = Object.fromEntries(bases.slice(2).map((row) => [row[0], row.at(-1)]));
    if (mark === "Figure 5 serves it") expect(marks["Figure 4"]).toBe(`${slip} Mended: Figure 5 serves it.`);
    else {
      expect(marks["Figure 4"]).toBe(`${slip} Mended: the same.`);
      expect(marks["Figure 5"]).toBe("If doubtful readings were mended: Figure 4 serves Figure 5.");
    }
    expect(marks["Figure 1"]).toBe("");
    expect(bases.every((row) => row.length === bases[1]!.length)).toBe(true);
  });

  it("in groups by the method fewest too", () => {
    const rows = rowsOf(groupsFunction.compute([chartOf(13.4), null, null, "fewest"]));
    expect(rows[0]?.at(-1)).toBe("Doubtful");
    expect(rows.find(([figure]) => figure === "Figure 4")?.at(-1)).toBe(
      "Rests on a doubtful reading: Waist 13.4 mm (wrong unit). Mended, it would share a body with Figure 5.",
    );
  });
});

function call(name: string, args: readonly unknown[]): Result {
  return descriptors.find((each) => each.name === name)!.compute(args);
}

/** What a mark says that the answers would be; those that it leaves out are not there. */
function told(mark: string): readonly (readonly [what: string, answer: string])[] {
  const after = / (?:Mended|left out): (.*)\.$/s.exec(mark)?.[1] ?? "";
  const items = after.replace(/ and \d+ more$/, "").match(/(?:“[^”]*”|[^,])+/g) ?? [];
  return items.flatMap((item) => {
    const [, what, answer] = /^ ?(.+?) (“[^”]*”|\S+)$/.exec(item) ?? [];
    return what === undefined || answer === undefined || item.includes("the same")
      ? []
      : [[what, answer] as const];
  });
}

/** A cell as a mark writes it. */
function shortly(value: unknown): string {
  if (typeof value === "number") return String(Math.round(value * 1000) / 1000);
  const text = String(value).replace(/\.$/, "");
  return text === "" ? "blank" : /\W/.test(text) ? `“${text}”` : text;
}

function rowsOf(result: Result): readonly (readonly unknown[])[] {
  if (!Array.isArray(result)) throw new Error("No table came out.");
  return result;
}
