import { describe, expect, it } from "vitest";
import type { Cells } from "../../addin/chart/cell.ts";
import { afterPublishing, changesBetween, isUnchanged } from "../../addin/publish/changes.ts";
import type { Publication } from "../../addin/publish/publication.ts";
import { usualPublication } from "../../addin/publish/publication.ts";
import type { PublicationRecord } from "../../addin/publish/record.ts";
import {
  isTooLarge,
  mostRecordCharacters,
  publicationRecordSchema,
  recordOf,
} from "../../addin/publish/record.ts";
import { demo, demoTables, fromTables, published } from "./published.ts";

/** Two figures, two measures and a pattern, as they were published; what is expected of them is worked out by hand. */
const before: PublicationRecord = {
  day: "2026-11-12",
  publication: { ...usualPublication, units: ["mm", "inches in eighths"] },
  figures: ["Ada", "Bea"],
  measures: [
    { key: "bustGirth", term: "Bust girth", mm: [180, 200] },
    { key: "waistGirth", term: "Waist girth", mm: [140, null] },
  ],
  patterns: [{ code: "P-1", ranks: [0, 0] }],
};

const withUnits = (units: Publication["units"], rounding: Publication["rounding"]): PublicationRecord => ({
  ...before,
  publication: { ...before.publication, units, rounding },
});

const nothing = {
  ...{ figuresAdded: [], figuresGone: [], figuresRenamed: [], measuresAdded: [], measuresGone: [] },
  ...{ readings: [], verdicts: [], patternsAdded: [], patternsGone: [] },
};

describe("what changed between two publications", () => {
  it("is nothing where only order, units, rounding or the writing of a name are others", () => {
    const now: PublicationRecord = {
      ...withUnits(["cm"], "to 5 mm"),
      figures: ["bea ", "Ada"],
      measures: [
        { key: "waistGirth", term: "Taille", mm: [null, 140] },
        { key: "bustGirth", term: "Oberweite", mm: [200, 180] },
      ],
      patterns: [{ code: "p-1", ranks: [0, 0] }],
    };
    expect(changesBetween(before, now)).toEqual(nothing);
    expect(isUnchanged(changesBetween(before, now))).toBe(true);
  });

  it("is a reading in the units that buyers have, with what was not there before", () => {
    const now: PublicationRecord = {
      ...before,
      measures: [
        // 180 mm is 7.087 in, nearest eighth 7 ⅛; 184 mm is 7.244 in, nearest eighth 7 ¼.
        { key: "bustGirth", term: "Bust girth", mm: [184, null] },
        { key: "waistGirth", term: "Waist girth", mm: [140, 150] },
      ],
    };
    expect(changesBetween(before, now)).toEqual({
      ...nothing,
      readings: [
        {
          figure: "Ada",
          measure: "Bust girth",
          from: "180\u00a0mm / 7\u00a0⅛\u00a0in",
          to: "184\u00a0mm / 7\u00a0¼\u00a0in",
        },
        // 200 mm is 7.874 in, nearest eighth 7 ⅞; 150 mm is 5.906 in, nearest eighth 5 ⅞.
        { figure: "Bea", measure: "Bust girth", from: "200\u00a0mm / 7\u00a0⅞\u00a0in", to: undefined },
        { figure: "Bea", measure: "Waist girth", from: undefined, to: "150\u00a0mm / 5\u00a0⅞\u00a0in" },
      ],
    });
  });

  it("is not a reading that buyers read as before", () => {
    const finer: PublicationRecord = {
      ...before,
      measures: [{ key: "bustGirth", term: "Bust girth", mm: [182, 200] }, before.measures[1]!],
    };
    // To 5 mm, both 180 and 182 are 180.
    expect(changesBetween(withUnits(["mm"], "to 5 mm"), finer).readings).toEqual([]);
    // To 1 mm they differ.
    expect(changesBetween(withUnits(["mm"], "to 1 mm"), finer).readings).toHaveLength(1);
  });

  it("is a verdict that turned, and figures, measures and patterns that one of both has", () => {
    const now: PublicationRecord = {
      ...before,
      figures: ["Ada", "Cleo"],
      measures: [
        { key: "bustGirth", term: "Bust girth", mm: [180, 220] },
        { key: "hipGirth", term: "Hip girth", mm: [190, 230] },
      ],
      patterns: [
        { code: "P-1", ranks: [8, 9] },
        { code: "P-2", ranks: [0, 0] },
      ],
    };
    expect(changesBetween(before, now)).toEqual({
      ...nothing,
      figuresAdded: ["Cleo"],
      figuresGone: ["Bea"],
      measuresAdded: ["Hip girth"],
      measuresGone: ["Waist girth"],
      verdicts: [{ pattern: "P-1", figure: "Ada", from: "fits", to: "too tight" }],
      patternsAdded: ["P-2"],
    });
    expect(changesBetween(now, before).patternsGone).toEqual(["P-2"]);
  });

  it("is another name where the readings are the same, and two figures where they could be those of a third", () => {
    const renamed: PublicationRecord = {
      ...before,
      figures: ["Adah", "Bea"],
      patterns: [{ code: "P-1", ranks: [1, 0] }],
    };
    expect(changesBetween(before, renamed)).toEqual({
      ...nothing,
      figuresRenamed: [{ from: "Ada", to: "Adah" }],
      verdicts: [{ pattern: "P-1", figure: "Adah", from: "fits", to: "snug" }],
    });
    const twins: PublicationRecord = {
      ...before,
      figures: ["Eve", "Bea", "Fay"],
      measures: [
        { key: "bustGirth", term: "Bust girth", mm: [180, 200, 180] },
        { key: "waistGirth", term: "Waist girth", mm: [140, null, 140] },
      ],
      patterns: [{ code: "P-1", ranks: [0, 0, 0] }],
    };
    expect(changesBetween(before, twins)).toEqual({
      ...nothing,
      figuresAdded: ["Eve", "Fay"],
      figuresGone: ["Ada"],
    });
  });

  it("keeps figures of one name apart by their order", () => {
    const two: PublicationRecord = { ...before, figures: ["Ada", "Ada"] };
    expect(isUnchanged(changesBetween(two, two))).toBe(true);
    const now: PublicationRecord = { ...two, patterns: [{ code: "P-1", ranks: [0, 8] }] };
    expect(changesBetween(two, now).verdicts).toHaveLength(1);
  });
});

describe("what is kept of a publication", () => {
  it("is read back as it was written, and takes nothing but the whole of it", () => {
    const record = recordOf(published(), "2026-11-12");
    expect(publicationRecordSchema.parse(JSON.parse(JSON.stringify(record)))).toEqual(record);
    expect(isUnchanged(changesBetween(record, record))).toBe(true);
    const { success } = publicationRecordSchema.safeParse({ ...record, figures: record.figures.slice(1) });
    expect(success).toBe(false);
    expect(publicationRecordSchema.safeParse({ ...record, day: "12 November" }).success).toBe(false);
  });

  it("tells a reading of the demo that was taken again, with the verdicts that turn by it", () => {
    const then = recordOf(published(), "2026-11-12");
    const headings = demoTables.figures[0]!;
    const bust = headings.findIndex((heading) => String(heading).startsWith("Bust"));
    const cells: Cells = demoTables.figures.map((row) =>
      row[0] === "Cattrin" ? row.map((cell, at) => (at === bust ? Number(cell) * 1.1 : cell)) : row,
    );
    // What is doubted stays as it was: the test is about one reading.
    const now = recordOf(published({}, { ...fromTables(cells), flags: demo.flags }), "2026-11-26");
    const changes = changesBetween(then, now);
    expect(changes.readings.map(({ figure, measure }) => `${figure}, ${measure}`)).toEqual([
      "Cattrin, Bust girth",
    ]);
    expect(changes.figuresAdded).toEqual([]);
    expect(changes.verdicts.every(({ figure }) => figure === "Cattrin")).toBe(true);
    // No pattern is drafted for Cattrin. A tenth more is beyond what the rule for a close-fitting bodice lets pass.
    expect(changes.verdicts).toContainEqual({
      ...{ pattern: "B-1", figure: "Cattrin" },
      ...{ from: "fits", to: "too tight" },
    });
  });

  it("is bounded", () => {
    const figures = Array.from({ length: 1000 }, (_, at) => `Figure ${String(at)}`);
    const sized = (measures: number): PublicationRecord => ({
      ...before,
      figures,
      measures: Array.from({ length: measures }, (_, at) => ({
        ...{ key: `m${String(at)}`, term: `Measure ${String(at)}` },
        mm: figures.map((_, figure) => 100 + figure / 8),
      })),
      patterns: [],
    });
    expect(isTooLarge(sized(20))).toBe(false);
    expect(isTooLarge(sized(60))).toBe(true);
    expect(mostRecordCharacters).toBeLessThan(1_000_000);
  });

  it("keeps the publication before until another is made on another day", () => {
    const on = (day: string, bust: number): PublicationRecord => ({
      ...before,
      day,
      measures: [{ key: "bustGirth", term: "Bust girth", mm: [bust, 200] }, before.measures[1]!],
    });
    const days = (history: readonly PublicationRecord[]): readonly string[] => history.map(({ day }) => day);
    const first = afterPublishing([], on("2026-10-01", 180));
    expect(days(first)).toEqual(["2026-10-01"]);
    const second = afterPublishing(first, on("2026-11-12", 190));
    expect(days(second)).toEqual(["2026-11-12", "2026-10-01"]);
    expect(days(afterPublishing(second, on("2026-11-20", 190)))).toEqual(["2026-11-20", "2026-10-01"]);
    expect(days(afterPublishing(second, on("2026-11-12", 191)))).toEqual(["2026-11-12", "2026-10-01"]);
    expect(days(afterPublishing(second, on("2026-11-26", 200)))).toEqual(["2026-11-26", "2026-11-12"]);
  });
});
