import { InputError } from "../addin/measures/inputError.ts";
import { parseReading } from "../addin/measures/parseReading.ts";
import { quote } from "../addin/measures/quote.ts";
import { tidyReading } from "../addin/measures/tidyReading.ts";

/**
 * Text in a place for a plain number: `13.65`, `13,65`, `5 3/8`, `5⅜`, `-2.5`. Marks for “not taken” (`-`, `n/a`,
 * `?`) and blank text give `undefined`. Functions that take plain numbers are unit-free, so a text that names a
 * unit is refused rather than mixed with numbers in another unit.
 *
 * @throws {InputError} quoting the text
 */
export function readPlainNumber(text: string, where: string): number | undefined {
  const tidied = tidyReading(text);
  if (/^[-+]?(\d+\.?\d*|\.\d+)$/.test(tidied)) return finite(Number(tidied), text, where);

  const sign = /^-(?=[\d.,])/.test(tidied) ? -1 : 1;
  const size = sign < 0 ? tidied.slice(1) : text;
  const reading = parseReading(size, { unit: "none" });
  if (reading.kind === "missing") return undefined;
  if (reading.kind === "refused") throw new InputError(`${where}: ${reading.reason}`);
  if (reading.unitFrom === "written") {
    throw new InputError(
      `${where}: ${quote(text)} names its unit, but this function takes plain numbers, all in one unit. ` +
        "Turn it into a number with LENGTH first.",
    );
  }
  if (reading.origin === "estimated") {
    throw new InputError(
      `${where}: ${quote(text)} is an estimate, which plain numbers cannot tell from readings. Write the number alone if it is to count.`,
    );
  }
  return sign * reading.mm;
}

/** So many digits that no number holds them. */
function finite(value: number, text: string, where: string): number {
  if (Number.isFinite(value)) return value;
  throw new InputError(`${where}: ${quote(text)} is too large a number. Check it.`);
}

/** True for blank text and for marks that say that a reading was not taken. */
export function isMissingMark(text: string): boolean {
  return parseReading(text, { unit: "mm" }).kind === "missing";
}
