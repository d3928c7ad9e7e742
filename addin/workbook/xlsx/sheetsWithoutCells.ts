import type { PackageParts } from "./packageParts.ts";
import { attributeOf, eachTag } from "./xmlTags.ts";

/** Places, from 0, of the sheets that hold a chart or a dialogue and no cells. */
export function sheetsWithoutCells(parts: PackageParts): ReadonlySet<number> {
  const ids = new Set<string | undefined>();
  eachTag(parts.relationships, (tag) => {
    const type = attributeOf(parts.relationships, tag, "Type") ?? "";
    if (/\/(chartsheet|dialogsheet)$/.test(type)) ids.add(attributeOf(parts.relationships, tag, "Id"));
  });
  const sheets: (string | undefined)[] = [];
  eachTag(parts.workbook, (tag) => {
    if (tag.name === "sheet") sheets.push(attributeOf(parts.workbook, tag, "r:id"));
  });
  return new Set([...sheets.keys()].filter((i) => sheets[i] !== undefined && ids.has(sheets[i])));
}
