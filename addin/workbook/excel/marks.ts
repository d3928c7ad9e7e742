import type { CellAddress } from "../port.ts";
import { cellOf } from "./ranges.ts";

/**
 * A mark is a conditional format that is always on. It lies over the cell’s own fill and type without changing
 * them, moves with the cell, is kept in the file, and is known again by its rule.
 */
const rule = '=LEN("Measure Book mark")>0';

/** Light brass under graphite. */
const markedLook = { fill: "#F5E3B3", text: "#26292E" } as const;

export interface MarkPlace {
  readonly at: CellAddress;
  /** As it was found. */
  readonly marked: boolean;
  /** Queue what gives the cell that mark, or takes it away. */
  put(on: boolean): void;
}

/** Which cells are marked. Takes two requests. */
export async function findMarks(
  context: Excel.RequestContext,
  cells: readonly CellAddress[],
): Promise<MarkPlace[]> {
  if (cells.length === 0) return [];
  const places = cells.map((at) => ({ at, formats: cellOf(context, at).conditionalFormats }));
  for (const { formats } of places) formats.load("items/type");
  await context.sync();
  const withRules = places.map(({ at, formats }) => ({
    at,
    rules: formats.items.flatMap((format) => {
      if (format.type !== "Custom") return [];
      const found = format.custom.rule;
      found.load("formula");
      return [{ format, found }];
    }),
  }));
  await context.sync();
  return withRules.map(({ at, rules }) => {
    const found = rules.filter(({ found }) => isOurs(found.formula)).map(({ format }) => format);
    return markPlace(context, at, found);
  });
}

function markPlace(
  context: Excel.RequestContext,
  at: CellAddress,
  found: readonly Excel.ConditionalFormat[],
): MarkPlace {
  let ours = found;
  return {
    at,
    marked: found.length > 0,
    put: (on) => {
      if (on === ours.length > 0) return;
      for (const format of ours) format.delete();
      ours = on ? [putMark(cellOf(context, at))] : [];
    },
  };
}

export function putMark(range: Excel.Range): Excel.ConditionalFormat {
  const format = range.conditionalFormats.add("Custom");
  const { custom } = format;
  custom.rule.formula = rule;
  custom.format.fill.color = markedLook.fill;
  custom.format.font.color = markedLook.text;
  custom.format.font.bold = true;
  return format;
}

/** A rule without a formula does nothing: it was left behind when Excel broke off while we made a mark. */
function isOurs(formula: string): boolean {
  if (formula === "") return true;
  return formula.replace(/\s/g, "").toLowerCase() === rule.replace(/\s/g, "").toLowerCase();
}
