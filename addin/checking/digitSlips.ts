import { isTapeFraction, plain } from "./amount.ts";

export type DigitSlip = "digits swapped" | "digit doubled" | "digit missing";

/**
 * What a number may have been before a slip of the hand: two neighbouring digits swapped, a digit typed twice, a digit
 * left out. Digits are those of the number as written in the column’s unit; in inches with a fraction, those of the
 * whole number before it.
 *
 * @param length in the unit of the column, more than 0
 * @param inches true when the column is in inches
 */
export function beforeDigitSlip(
  length: number,
  inches: boolean,
): readonly { readonly slip: DigitSlip; readonly length: number }[] {
  const fraction = inches && isTapeFraction(length) ? length % 1 : 0;
  const digits = plain(length - fraction);
  const slips = (slip: DigitSlip, texts: readonly string[]) =>
    [...new Set(texts)]
      .filter((text) => text !== digits && /^(0|[1-9]\d*)(\.\d+)?$/.test(text))
      .map((text) => ({ slip, length: Number(text) + fraction }))
      .filter((candidate) => candidate.length > 0);
  return [
    ...slips("digits swapped", swapped(digits)),
    ...slips("digit doubled", undoubled(digits)),
    ...slips("digit missing", completed(digits)),
  ];
}

/** In how many ways a slip of the hand can change a length: as many as there are digits, or neighbouring digits that differ. */
export function afterDigitSlip(length: number, slip: DigitSlip, inches: boolean): number {
  const fraction = inches && isTapeFraction(length) ? length % 1 : 0;
  const digits = plain(length - fraction);
  const ways = slip === "digits swapped" ? new Set(swapped(digits)).size : digits.replace(".", "").length;
  return Math.max(1, ways);
}

function swapped(digits: string): string[] {
  const places = [...digits].flatMap((sign, i) => (sign === "." ? [] : [i]));
  return places.slice(1).map((right, k) => {
    const left = places[k]!;
    const signs = [...digits];
    [signs[left], signs[right]] = [signs[right]!, signs[left]!];
    return signs.join("");
  });
}

function undoubled(digits: string): string[] {
  return [...digits].flatMap((sign, i) =>
    sign === digits[i + 1] ? [digits.slice(0, i) + digits.slice(i + 1)] : [],
  );
}

/** A digit put in before the decimal point: behind it, it would hardly change the length. */
function completed(digits: string): string[] {
  const point = digits.indexOf(".");
  const places = (point < 0 ? digits.length : point) + 1;
  return Array.from({ length: places }, (_, i) =>
    [..."0123456789"].map((digit) => digits.slice(0, i) + digit + digits.slice(i)),
  ).flat();
}
