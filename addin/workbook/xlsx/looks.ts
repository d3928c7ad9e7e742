import type { CellStyle as StoredStyle } from "hucre/xlsx";
import type { CellStyle } from "../content.ts";

const text = { rgb: "26292E" };
const quiet = { rgb: "5C6068" };
const line = { rgb: "D9D3C5" };
const brass = { rgb: "8A6100" };
const muslin = "F1ECE0";
const paleBrass = "FBEFCF";

/** The font of every cell without a style of its own. Widths in pixels rest on it. */
export const plainFont = { name: "Calibri", size: 11, color: text };

const solid = (rgb: string) => ({ type: "pattern", pattern: "solid", fgColor: { rgb } }) as const;
const allRound = (side: { readonly style: "thin"; readonly color: { rgb: string } }) => ({
  top: side,
  right: side,
  bottom: side,
  left: side,
});

/** Our few styles in the file’s terms. Contrast of text to ground is at least 6:1, of the brass frame 4.8:1. */
const looks: Readonly<Record<Exclude<CellStyle, "verdict">, StoredStyle>> = {
  title: { font: { ...plainFont, size: 16, bold: true } },
  quiet: { font: { ...plainFont, color: quiet } },
  heading: {
    font: { ...plainFont, bold: true },
    fill: solid(muslin),
    border: { bottom: { style: "thin", color: line } },
    alignment: { vertical: "top", wrapText: true },
  },
  wrap: { alignment: { vertical: "top", wrapText: true } },
  amount: { alignment: { horizontal: "right" } },
  marked: { font: plainFont, fill: solid(paleBrass), border: allRound({ style: "thin", color: brass }) },
};

/** Style and number format of a cell as the file keeps them; `undefined` for a plain cell. */
export function storedStyle(
  style: CellStyle | undefined,
  format: string | undefined,
): StoredStyle | undefined {
  // Verdicts are shown by rules over their cells.
  const look = style === "verdict" ? undefined : style;
  if (look === undefined && format === undefined) return undefined;
  return { ...(look && looks[look]), ...(format !== undefined && { numFmt: format }) };
}

/** Which of our styles a cell shows, told by what sets each apart; spreadsheet programs keep that when they save. */
export function recognisedStyle(stored: StoredStyle): CellStyle | undefined {
  const fill = stored.fill?.type === "pattern" ? stored.fill.fgColor?.rgb : undefined;
  if (fill === paleBrass) return "marked";
  if (fill === muslin && stored.font?.bold) return "heading";
  if (fill !== undefined) return undefined;
  if (stored.font?.bold && stored.font.size === 16) return "title";
  if (stored.font?.color?.rgb === quiet.rgb) return "quiet";
  if (stored.alignment?.wrapText) return "wrap";
  return stored.alignment?.horizontal === "right" ? "amount" : undefined;
}

/** True when a cell has colours, letters or lines of its own that our few styles cannot show. */
export function isDecorated(stored: StoredStyle): boolean {
  return [stored.fill, stored.font?.color?.rgb, stored.font?.bold, stored.font?.italic, stored.border].some(
    Boolean,
  );
}
