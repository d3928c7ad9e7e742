import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { errorsUnmarked } from "./errorValues.ts";

/**
 * Finishes what the writer leaves open: error values as results of formulas, spaces at the ends of notes, and
 * whether the spreadsheet program has to calculate everything when it opens the file.
 *
 * Where all is calculated it need not: somebody without our functions then sees their last values instead of
 * `#NAME?`. The number of the calculation engine is that of current Excel, from memory; for an older one it
 * would calculate all the same.
 */
export function finishParts(bytes: Uint8Array, { calculated }: { readonly calculated: boolean }): Uint8Array {
  const parts = unzipSync(bytes);
  const finished = Object.entries(parts).map(([name, part]) => {
    const finish = finishing(name, calculated);
    return [name, finish ? strToU8(finish(strFromU8(part))) : part] as const;
  });
  return zipSync(Object.fromEntries(finished));
}

function finishing(name: string, calculated: boolean): ((xml: string) => string) | undefined {
  if (name.startsWith("xl/worksheets/sheet")) return errorsUnmarked;
  if (name.startsWith("xl/comments")) return (xml) => xml.replaceAll("<t>", '<t xml:space="preserve">');
  if (name === "xl/workbook.xml" && calculated)
    return (xml) => xml.replace(/<calcPr[^>]*\/>/, '<calcPr calcId="191029"/>');
  return undefined;
}
