import { expect, test } from "vitest";
import { isWearable, verdicts } from "../../../addin/fit/verdict.ts";
import { verdictCells } from "../../../addin/workbook/verdictCells.ts";
import { verdictLooks } from "../../../taskpane/fit/verdictLooks.ts";

test("every verdict has a shape of its own, so that colour alone tells nothing", () => {
  const signs = verdicts.map((verdict) => verdictLooks[verdict].sign);
  expect(new Set(signs).size).toBe(verdicts.length);
});

test("what can be worn, and nothing else, has the colour of what is in order", () => {
  for (const verdict of verdicts) expect(verdictLooks[verdict].tone === "leaf").toBe(isWearable(verdict));
});

test("cells of a sheet show the sign and the meaning that the pane shows", () => {
  expect(verdictCells).toEqual(verdicts.map((word) => ({ word, ...verdictLooks[word] })));
});
