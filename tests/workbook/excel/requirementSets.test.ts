import { describe, expect, it } from "vitest";
import { manifestJson } from "../../../manifest/manifestJson.ts";
import { manifestXml } from "../../../manifest/manifestXml.ts";
import { newerMembers } from "../excelDouble/context.ts";
import { usedMembers } from "./usedMembers.ts";

/** The least version of each requirement set that Excel must have for the add-in to be offered there at all. */
const asked = new Map(
  [...manifestXml("https://localhost:3000/").matchAll(/<Set Name="(\w+)" MinVersion="1\.(\d+)"/g)].map(
    ([, name = "", minor]) => [name, Number(minor)] as const,
  ),
);

// The sets are those that Microsoft’s typings (@types/office-js) state at each member: “[Api set: ExcelApi 1.13]”.
describe("requirement sets", () => {
  const used = usedMembers(["addin/workbook/excel", "functions", "taskpane"]);
  const excel = used.filter(({ set }) => set?.name === "ExcelApi");
  const names = [...new Set(excel.map(({ name }) => name))].sort();

  it("are stated for every member of Excel that is used", () => {
    const without = used.filter(({ set, where }) => set === undefined && where.startsWith("addin/"));
    // Those that belong to no set: how requests are made, and the classes that hold others together.
    expect([...new Set(without.map(({ name }) => name))].sort()).toEqual([
      "ClientObject.isNullObject",
      "ClientRequestContext.sync",
      "ClientResult.value",
      "Context.requirements",
      "EventHandlerResult.context",
      "EventHandlerResult.remove",
      "EventHandlers.add",
      "Excel.run",
      "Office.context",
      "RequestContext.application",
      "RequestContext.workbook",
      "RequirementSetSupport.isSetSupported",
      "RunOptions.delayForCellEdit",
    ]);
    console.info(`${String(names.length)} members of Excel’s interface`);
    expect(names.length).toBeGreaterThan(100);
  });

  it("are met by what the manifest asks for, or asked for at run time", () => {
    const least = asked.get("ExcelApi") ?? 0;
    const unmet = excel.filter(({ set, asked: minor }) => (set?.minor ?? 0) > Math.max(least, minor));
    expect(unmet).toEqual([]);
    const guarded = excel.filter(({ set }) => (set?.minor ?? 0) > least);
    expect(Object.fromEntries(guarded.map(({ name, set }) => [name, set?.minor]))).toEqual({
      "Note.content": 18,
      "Note.load": 18,
      "NoteCollection.add": 18,
      "NoteCollection.getItemOrNullObject": 18,
      "Range.getSpillParentOrNullObject": 12,
      "RunOptions.mergeUndoGroup": 20,
      "Table.resize": 13,
      "Worksheet.notes": 18,
    });
  });

  it("are what the double goes by", () => {
    const least = asked.get("ExcelApi") ?? 0;
    const newer = excel.filter(({ set }) => (set?.minor ?? 0) > least);
    expect(newer.length).toBeGreaterThan(0);
    for (const { name, set } of newer) if (name in newerMembers) expect(newerMembers[name]).toBe(set?.minor);
    for (const name of Object.keys(newerMembers)) expect(names).toContain(name);
  });

  it("are the same in both manifests", () => {
    const json = JSON.stringify(manifestJson("https://localhost:3000/"));
    for (const [name, minor] of asked)
      expect(json).toContain(JSON.stringify({ name, minVersion: `1.${String(minor)}` }));
    expect(asked.size).toBe(3);
  });
});
