import { describe, expect, test } from "vitest";
import { demoWorkbook } from "../../../addin/demo/demoWorkbook.ts";
import { descriptors } from "../../../functions/all.ts";
import type { Given, Tables } from "../../../taskpane/help/liveExample.ts";
import { argumentFields, workOut } from "../../../taskpane/help/liveExample.ts";
import { createMemoryWorkbook } from "../../workbook/memoryWorkbook.ts";
import { figures, patterns, sheetOf } from "../fit/wardrobe.ts";

async function tablesOf(content: Parameters<typeof createMemoryWorkbook>[0]): Promise<Tables> {
  const workbook = createMemoryWorkbook(content);
  const tables = await workbook.tables();
  const cells = new Map<string, Tables["cells"] extends ReadonlyMap<string, infer C> ? C : never>();
  for (const { name } of tables) cells.set(name, (await workbook.readTable(name)).values);
  return { tables, cells };
}

function ask(tables: Tables, name: string, given: Given = {}) {
  const descriptor = descriptors.find((each) => each.name === name);
  if (!descriptor) throw new Error(`There is no ${name}.`);
  const fields = argumentFields(descriptor, tables, given);
  return { fields, answer: workOut(descriptor, fields, tables, given) };
}

describe("the live example of a function", () => {
  test("gives a result for every function on the demo, before anything is chosen", async () => {
    const tables = await tablesOf(demoWorkbook());
    for (const { name } of descriptors) {
      const { answer } = ask(tables, name);
      expect(answer.failure, name).toBeUndefined();
      expect(answer.result?.length, name).toBeGreaterThan(0);
      expect(answer.formula, name).toMatch(new RegExp(`^=FIT\\.${name}\\(`));
    }
  });

  const own = () => tablesOf({ sheets: [sheetOf("Bodies", figures), sheetOf("Garments", patterns)] });

  test("goes by the tables of this workbook, whatever they are called", async () => {
    const { fields, answer } = ask(await own(), "WEARERS");
    expect(answer.formula).toBe('=FIT.WEARERS(Garments[#All], Bodies[#All], "P1")');
    expect(answer.result?.slice(1).map(([figure]) => figure)).toEqual(
      expect.arrayContaining(["Ardmoor", "Dell"]),
    );
    expect(fields.find(({ name }) => name === "pattern")?.choices?.map(([code]) => code)).toEqual([
      "P1",
      "P2",
      "P3",
      "P4",
    ]);
  });

  test("follows what is chosen, and leaves out what is left out", async () => {
    const tables = await own();
    expect(ask(tables, "COMPARE", { base: "Brae", target: "Dell" }).answer.formula).toBe(
      '=FIT.COMPARE(Bodies[#All], "Brae", "Dell")',
    );
    expect(ask(tables, "GROUPS", { zone: "torso" }).answer.formula).toBe(
      '=FIT.GROUPS(Bodies[#All], , "torso")',
    );
    const column = ask(tables, "SCORE", { values: "Bodies[Bust]" }).answer;
    expect(column.formula).toBe("=FIT.SCORE(Bodies[Bust])");
    expect(column.result).toHaveLength(4);
  });

  test("says in words what a cell would not", async () => {
    const { answer } = ask(await own(), "DELTA", { base: "12 bananas", target: "13" });
    expect(answer.result).toBeUndefined();
    expect(answer.failure).toContain("12 bananas");
    const none = ask(await tablesOf({ sheets: [{ name: "Sheet1", cells: [] }] }), "GROUPS").answer;
    expect(none.failure).toMatch(/^chart is needed/);
  });
});
