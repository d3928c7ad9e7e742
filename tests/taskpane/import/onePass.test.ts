/** From a pasted text to the edits: how often each reading of it is parsed. */
import { beforeEach, describe, expect, test, vi } from "vitest";
import type { ImportPlan } from "../../../addin/chart/import/importPlan.ts";
import { survey } from "../../../addin/chart/import/survey.ts";
import { lengthIn, parseReading, readWritten } from "../../../addin/measures/parseReading.ts";
import { inSteps } from "../../../taskpane/import/inSteps.ts";
import { planEdits } from "../../../taskpane/import/planEdits.ts";
import type { LayoutSettings } from "../../../taskpane/import/prepare.ts";
import { prepare } from "../../../taskpane/import/prepare.ts";
import { readSource } from "../../../taskpane/import/readSource.ts";

vi.mock("../../../addin/measures/parseReading.ts", { spy: true });

beforeEach(() => {
  vi.clearAllMocks();
});

const usual: LayoutSettings = {
  columns: new Map(),
  twins: { inChart: "skip", inFile: "keep both" },
  keepRefused: true,
};
const { signal } = new AbortController();
const noPause = () => Promise.resolve();

const read = (text: string) =>
  readSource({ kind: "text", name: "The pasted text", text }, {}, noPause, signal);

/** Goes through all that the section Import does with a plan. */
async function useAll(plan: ImportPlan): Promise<void> {
  await inSteps(survey(plan), noPause, signal);
  plan.figures.forEach((_, f) => {
    plan.targets.forEach((_, t) => plan.cell(f, t));
  });
  await inSteps(planEdits(plan, undefined, [], { keepRefused: true }), noPause, signal);
}

/** How often each text with a digit was parsed, the most often first. */
function timesParsed(): readonly (readonly [string, number])[] {
  const counts = new Map<string, number>();
  for (const [text] of [...vi.mocked(readWritten).mock.calls, ...vi.mocked(parseReading).mock.calls])
    if (/^\d/.test(text)) counts.set(text, (counts.get(text) ?? 0) + 1);
  return [...counts].sort(([, a], [, b]) => b - a);
}

/** Three columns of readings, each with a writing of its own. */
const chart = (write: (mm: number) => string) =>
  [
    "Figure;Bust (mm);Waist;Hip",
    ...Array.from({ length: 60 }, (_, i) =>
      [`Figure ${String(i)}`, write(135 + i), write(1001 + i), write(2001 + i)].join(";"),
    ),
  ].join("\n");

describe("each reading of a file", () => {
  test("is parsed once, though delimiter, layout, roles, units, preview and edits all go by it", async () => {
    const source = await read(chart(String));
    const { plan } = prepare("The pasted text", source, usual, undefined);
    await useAll(plan);
    expect(plan.figures).toHaveLength(60);
    expect(timesParsed()).toHaveLength(180);
    expect(timesParsed()[0]).toEqual([expect.any(String), 1]);
  });

  test("is not parsed again when the user decides otherwise", async () => {
    const source = await read(chart((mm) => `${String(mm)} mm`));
    prepare("The pasted text", source, usual, undefined);
    vi.clearAllMocks();
    const changed = prepare(
      "The pasted text",
      source,
      { ...usual, columns: new Map([[2, { unit: "cm" }]]), assumedUnit: "in" },
      undefined,
    );
    await useAll(changed.plan);
    expect(timesParsed()).toEqual([]);
    await useAll(prepare("The pasted text", source, { ...usual, turned: true }, undefined).plan);
    expect(timesParsed()).toEqual([]);
  });

  test("is parsed once more where it has a decimal mark, and stood among the rows that were looked at before it was known", async () => {
    const source = await read(chart((mm) => `${String(mm)},25`));
    const { plan, decimalMark } = prepare("The pasted text", source, usual, undefined);
    await useAll(plan);
    expect(decimalMark).toBe(",");
    expect(timesParsed()[0]![1]).toBe(2);
  });
});

describe("what is written", () => {
  test.each([
    ["135", undefined],
    ["0", undefined],
    ["13,6 cm", "cm"],
    ['5 3/8"', "in"],
    ["5 3/8", undefined],
    ["1' 4\"", "in"],
    ["0 mm", "mm"],
    ["long", undefined],
    ["-", undefined],
  ] as const)("%s names its own unit or none, and is the same length as if read at once", (text, unit) => {
    const written = readWritten(text);
    const named = lengthIn(written, { unit: "none" });
    expect(named.kind === "length" && named.unitFrom === "written" ? named.unit : undefined).toBe(unit);
    for (const assumed of ["mm", "cm", "in"] as const)
      expect(lengthIn(written, { unit: assumed })).toEqual(parseReading(text, { unit: assumed }));
  });
});
