import { describe, expect, test } from "vitest";
import { placeOfChosen } from "../../../taskpane/ui/chosenPlace.ts";
import { cellAfterKey } from "../../../taskpane/fit/gridKeys.ts";
import { placesOf, scrollTo, spanInSight } from "../../../taskpane/fit/windowing.ts";
import { freeName } from "../../../taskpane/shell/freeName.ts";

// Keys as in “Data Grids”, ARIA Authoring Practices Guide (W3C), section Grid Pattern; from memory.
describe("keys in the matrix", () => {
  const size = { rows: 500, columns: 2000, page: 8 };
  const at = { row: 3, column: 4 };
  test.each([
    ["ArrowRight", false, { row: 3, column: 5 }],
    ["ArrowLeft", false, { row: 3, column: 3 }],
    ["ArrowDown", false, { row: 4, column: 4 }],
    ["ArrowUp", false, { row: 2, column: 4 }],
    ["PageDown", false, { row: 11, column: 4 }],
    ["PageUp", false, { row: 0, column: 4 }],
    ["Home", false, { row: 3, column: 0 }],
    ["End", false, { row: 3, column: 1999 }],
    ["Home", true, { row: 0, column: 0 }],
    ["End", true, { row: 499, column: 1999 }],
  ])("%s (with Ctrl: %s)", (key, withCtrl, to) => {
    expect(cellAfterKey(key, withCtrl, at, size)).toEqual(to);
  });

  test("stay inside, and leave other keys alone", () => {
    expect(cellAfterKey("ArrowDown", false, { row: 499, column: 0 }, size)).toEqual({ row: 499, column: 0 });
    expect(cellAfterKey("ArrowLeft", false, { row: 0, column: 0 }, size)).toEqual({ row: 0, column: 0 });
    expect(cellAfterKey("Tab", false, at, size)).toBeUndefined();
    expect(cellAfterKey("a", false, at, size)).toBeUndefined();
  });
});

describe("the part in sight", () => {
  test("is small however long the list", () => {
    const span = spanInSight(40 * 1000, 400, 40, 2000);
    expect(span).toEqual({ from: 998, to: 1012 });
    expect(spanInSight(0, 400, 40, 3)).toEqual({ from: 0, to: 3 });
    expect(spanInSight(90_000, 400, 40, 100)).toEqual({ from: 100, to: 100 });
  });

  test("keeps the row with the focus, once", () => {
    expect(placesOf({ from: 4, to: 7 }, 5)).toEqual([4, 5, 6]);
    expect(placesOf({ from: 4, to: 7 }, 1)).toEqual([1, 4, 5, 6]);
    expect(placesOf({ from: 4, to: 7 }, 9)).toEqual([4, 5, 6, 9]);
  });

  test("scrolls no further than it must", () => {
    expect(scrollTo(5, 0, 400, 40)).toBe(0);
    expect(scrollTo(10, 0, 400, 40)).toBe(40);
    expect(scrollTo(2, 200, 400, 40)).toBe(80);
  });
});

test("what was chosen is found again by name when rows have moved", () => {
  expect(placeOfChosen(["Ardmoor", "Brae"], undefined)).toBe(0);
  expect(placeOfChosen(["Ardmoor", "Brae", "Brae"], { place: 2, name: "Brae" })).toBe(2);
  expect(placeOfChosen(["New", "Ardmoor", "Brae"], { place: 1, name: "Brae" })).toBe(2);
  expect(placeOfChosen(["Ardmoor"], { place: 4, name: "Gone" })).toBe(0);
});

test("a free name does not tell case apart", () => {
  expect(freeName("Fit", ["Figures"])).toBe("Fit");
  expect(freeName("Fit", ["FIT", "fit 2"])).toBe("Fit 3");
  expect(freeName("EaseRules", ["easerules"], "_")).toBe("EaseRules_2");
});
