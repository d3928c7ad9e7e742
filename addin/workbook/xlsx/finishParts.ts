import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { errorsUnmarked } from "./errorValues.ts";

/**
 * Finishes what the writer leaves open: error values as results of formulas, spaces at the ends of notes and room to
 * read them, heights of rows, the order of what describes a font, and whether the spreadsheet program has to calculate everything when it
 * opens the file.
 *
 * Where all is calculated it need not: somebody without our functions then sees their last values instead of
 * `#NAME?`. The number of the calculation engine is that of current Excel, from memory; for an older one it
 * would calculate all the same.
 */
export function finishParts(bytes: Uint8Array, { calculated }: { readonly calculated: boolean }): Uint8Array {
  const parts = unzipSync(bytes);
  const text = (name: string) => strFromU8(parts[name] ?? new Uint8Array());
  const finishing = (name: string): ((xml: string) => string) | undefined => {
    if (name.startsWith("xl/worksheets/sheet")) return (xml) => heightsToFit(errorsUnmarked(xml));
    if (name === "xl/styles.xml") return fontsInOrder;
    if (name.startsWith("xl/comments")) return (xml) => xml.replaceAll("<t>", '<t xml:space="preserve">');
    const boxes = /^xl\/drawings\/vmlDrawing(\d+)\.vml$/.exec(name);
    if (boxes) return (xml) => roomForNotes(xml, text(`xl/comments${boxes[1] ?? ""}.xml`));
    if (name === "xl/workbook.xml" && calculated)
      return (xml) => xml.replace(/<calcPr[^>]*\/>/, '<calcPr calcId="191029"/>');
    return undefined;
  };
  const finished = Object.entries(parts).map(([name, part]) => {
    const finish = finishing(name);
    return [name, finish ? strToU8(finish(strFromU8(part))) : part] as const;
  });
  return zipSync(Object.fromEntries(finished));
}

/** Rows keep growing and shrinking with their text: their heights are no choice of anybody. */
function heightsToFit(sheet: string): string {
  return sheet.replace(/(<row [^>]*?) customHeight="1"/g, "$1");
}

/** As Excel writes them. ECMA-376 allows any order; the schemas of the Open XML SDK, which follow Excel, do not. */
const fontOrder =
  "b i strike condense extend outline shadow u vertAlign sz color name family charset scheme".split(" ");

function fontsInOrder(styles: string): string {
  return styles.replace(/<font>(.*?)<\/font>/gs, (_, inner: string) => {
    const parts = [...inner.matchAll(/<(\w+)[^>]*\/>/g)].map(([xml, name = ""]) => ({ xml, name }));
    const sorted = parts.toSorted((a, b) => fontOrder.indexOf(a.name) - fontOrder.indexOf(b.name));
    return `<font>${sorted.map(({ xml }) => xml).join("")}</font>`;
  });
}

const lettersInALine = 26;
const linesInABox = 4;

/** Boxes are two columns wide and as high as four rows; more text makes them higher. The n-th box is that of the n-th note. */
function roomForNotes(boxes: string, comments: string): string {
  const lines = [...comments.matchAll(/<comment [^>]*>(.*?)<\/comment>/gs)].map(([, inner = ""]) =>
    inner
      .replace(/<[^>]*>/g, "")
      .split("\n")
      .reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / lettersInALine)), 0),
  );
  let note = 0;
  return boxes.replace(/<v:shape .*?<\/v:shape>/gs, (box) => {
    const more = Math.max(0, (lines[note++] ?? 0) - linesInABox);
    return box
      .replace(/height:59\.25pt/, `height:${String(59.25 + more * 15)}pt`)
      .replace(
        /(<x:Anchor>(?:[^,]*,){6})(\d+)/,
        (_, before: string, row: string) => before + String(Number(row) + more),
      );
  });
}
