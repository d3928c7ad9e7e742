import type { IStyleData } from "@univerjs/core";
import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import type { CellStyle } from "../../workbook/content.ts";

const brass = "#8A6100";
const brassGround = "#FBF3DF";

/** “Look here”: a brass ground, and a thick brass edge for eyes that do not see the colour. */
export const markedLook = {
  bg: { rgb: brassGround },
  bd: { l: { s: BorderStyleTypes.THICK, cl: { rgb: brass } } },
} satisfies IStyleData;

const looks: Readonly<Record<Exclude<CellStyle, "marked">, IStyleData>> = {
  title: { fs: 16, bl: BooleanNumber.TRUE, cl: { rgb: "#26292E" } },
  quiet: { cl: { rgb: "#5C6068" } },
  heading: {
    bl: BooleanNumber.TRUE,
    bg: { rgb: "#F4F0E6" },
    cl: { rgb: "#26292E" },
    tb: WrapStrategy.WRAP,
    vt: VerticalAlign.TOP,
  },
  wrap: { tb: WrapStrategy.WRAP, vt: VerticalAlign.TOP },
  amount: { ht: HorizontalAlign.RIGHT },
  // Its colours follow what the cell shows.
  verdict: {},
};

/** How the grid draws one of the workbook’s looks. */
export function lookOf(style: CellStyle): IStyleData {
  return style === "marked" ? markedLook : looks[style];
}
