import { describe, expect, it } from "vitest";
import { cutAt, cutInto } from "../../addin/similarity/cut.ts";
import { linkage } from "../../addin/similarity/linkage.ts";
import { condensedOf } from "./condensedOf.ts";

const unknown = Number.NaN;
// Item 2 with item 4 at 1, item 1 with item 3 at 2, all at 9.
const merges = linkage(condensedOf([[9, 2, 9], [9, 1], [9]]), "complete");

describe("cutAt", () => {
  it("joins what is at most that high and numbers groups by first appearance", () => {
    expect([...cutAt(merges, 4, 0.5)]).toEqual([1, 2, 3, 4]);
    expect([...cutAt(merges, 4, 1)]).toEqual([1, 2, 3, 2]);
    expect([...cutAt(merges, 4, 2)]).toEqual([1, 2, 1, 2]);
    expect([...cutAt(merges, 4, 9)]).toEqual([1, 1, 1, 1]);
  });

  it("lets a difference of exactly one tolerance pass in inches too", () => {
    // 5 in against 4 7/8 in with a tolerance of 1/8 in: in mm a hair more than 1.
    const ofTolerance = (5 * 25.4 - 4.875 * 25.4) / (0.125 * 25.4);
    expect(ofTolerance).toBeGreaterThan(1);
    expect([...cutAt(linkage(condensedOf([[ofTolerance]]), "complete"), 2, 1)]).toEqual([1, 1]);
  });

  it("gives every item a group of its own without merges", () => {
    expect([...cutAt([], 3, 1)]).toEqual([1, 2, 3]);
  });
});

describe("cutInto", () => {
  it("undoes the highest merges", () => {
    expect([...cutInto(merges, 4, 1)]).toEqual([1, 1, 1, 1]);
    expect([...cutInto(merges, 4, 2)]).toEqual([1, 2, 1, 2]);
    expect([...cutInto(merges, 4, 4)]).toEqual([1, 2, 3, 4]);
  });

  it("gives the fewest groups there are when unknown pairs keep more apart", () => {
    const apart = linkage(condensedOf([[1, unknown], [unknown]]), "complete");
    expect([...cutInto(apart, 3, 1)]).toEqual([1, 1, 2]);
  });

  it.each([0, 5, 1.5, Number.NaN])("refuses %d groups", (k) => {
    expect(() => cutInto(merges, 4, k)).toThrow("whole number from 1 to 4");
  });
});
