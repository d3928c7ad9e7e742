import type { PackageParts } from "./packageParts.ts";

/** Places, from 0, of the sheets that hold a chart or a dialogue and no cells. */
export function sheetsWithoutCells(parts: PackageParts): ReadonlySet<number> {
  const ids = new Set(
    elements(parts.relationships, "Relationship")
      .filter((element) => /\/(chartsheet|dialogsheet)$/.test(attribute(element, "Type")))
      .map((element) => attribute(element, "Id")),
  );
  const sheets = elements(parts.workbook, "sheet");
  return new Set([...sheets.keys()].filter((i) => ids.has(attribute(sheets[i] ?? "", "r:id"))));
}

/** The opening tags of an element, with or without a namespace prefix. */
function elements(xml: string, name: string): readonly string[] {
  return xml.match(new RegExp(`<(\\w+:)?${name}\\s[^>]*>`, "g")) ?? [];
}

function attribute(element: string, name: string): string {
  return new RegExp(`\\s${name}\\s*=\\s*["']([^"']*)["']`).exec(element)?.[1] ?? "";
}
