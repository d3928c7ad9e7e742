import type { ICellData, IStyleData, Nullable } from "@univerjs/core";
import * as z from "zod/mini";
import type { CellContent, CellStyle } from "../../workbook/content.ts";
import { lookOf, markedLook } from "./looks.ts";

/** What a grid cell remembers about its looks beside what is drawn. */
const memory = z.object({
  look: z.optional(z.enum(["title", "quiet", "heading", "wrap", "amount", "verdict"])),
  /** Present on a marked cell: the ground and edges from before, to come back when the mark goes. */
  marked: z.optional(z.object({ bg: z.unknown(), bd: z.unknown() })),
});

type Memory = z.infer<typeof memory>;

export function memoryOf(cell: Nullable<ICellData>): Memory {
  const read = memory.safeParse(cell?.custom ?? {});
  return read.success ? read.data : {};
}

/** The workbook’s name for how a cell looks. A mark goes before other looks. */
export function styleNameOf(cell: Nullable<ICellData>): CellStyle | undefined {
  const { look, marked } = memoryOf(cell);
  return marked ? "marked" : look;
}

/** Format and look of new content, as a change to what the cell holds: what is not named stays. */
export function lookChange(content: CellContent, now?: Nullable<ICellData>): Pick<ICellData, "s" | "custom"> {
  const style: IStyleData = {
    ...(content.style && lookOf(content.style)),
    ...(content.format !== undefined && { n: { pattern: content.format } }),
  };
  if (!content.style) return Object.keys(style).length > 0 ? { s: style } : {};
  const remembered = memoryOf(now);
  const custom: Memory =
    content.style === "marked"
      ? { ...remembered, marked: remembered.marked ?? { bg: null, bd: null } }
      : { ...remembered, look: content.style };
  return { s: style, custom };
}

/** The change that marks a cell, or takes the mark away; `undefined` when nothing is to do. */
export function markChange(
  now: Nullable<ICellData>,
  style: IStyleData | undefined,
  on: boolean,
): Pick<ICellData, "s" | "custom"> | undefined {
  const { marked, ...rest } = memoryOf(now);
  if ((marked !== undefined) === on) return undefined;
  if (on) {
    const before = { bg: style?.bg ?? null, bd: style?.bd ?? null };
    return { s: { ...markedLook }, custom: { ...rest, marked: before } };
  }
  const before = marked ?? { bg: null, bd: null };
  return {
    s: { bg: asGround(before.bg), bd: asEdges(before.bd) },
    custom: Object.keys(rest).length > 0 ? rest : null,
  };
}

const colour = z.object({ rgb: z.string() });
const edge = z.object({ s: z.number(), cl: colour });
const edges = z.partial(z.object({ t: edge, r: edge, b: edge, l: edge }));

function asGround(value: unknown): IStyleData["bg"] {
  return colour.safeParse(value).data ?? null;
}

/** Borders from before the mark. An edge that was not there has to be named to go away. */
function asEdges(value: unknown): IStyleData["bd"] {
  return { l: null, ...edges.safeParse(value).data };
}
