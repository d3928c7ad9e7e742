export type DecimalMark = "." | ",";

/** The number; where one mark can be either, as decimals, with the number that it is if it groups thousands. */
export type DecimalResult =
  { readonly value: number; readonly thousands?: number } | { readonly refused: string };

/**
 * Digits with decimal and thousands marks → a number.
 *
 * With a stated `mark` the other mark groups thousands and must stand before every third digit. Without one:
 * - both marks present: the last is the decimal mark, the other groups thousands;
 * - the same mark more than once: it groups thousands;
 * - one mark, point or comma: the decimal mark (`13,65`); but with exactly three digits behind it and no leading zero it
 *   may also group thousands, and both numbers are given: `5.375` inches are five and three eighths, `1.234` mm may be one and a
 *   bit or twelve hundred.
 */
export function readDecimal(digits: string, mark?: DecimalMark): DecimalResult {
  const decimal = mark ?? findMark(digits);
  const group = decimal === "." ? "," : ".";
  const [whole = "", part, ...more] = digits.split(decimal);
  const jumbled = "is not one number. Check its points and commas";
  if (more.length > 0 || part?.includes(group)) return { refused: jumbled };
  if (whole.includes(group) && !isGrouped(whole, group)) {
    if (mark === undefined) return { refused: jumbled };
    return { refused: `has “${group}” where “${decimal}” is the decimal mark. Write it with “${decimal}”` };
  }
  const value = Number(`${whole.replaceAll(group, "")}.${part ?? ""}0`);
  const isEither = mark === undefined && /^[1-9]\d{0,2}[.,]\d{3}$/.test(digits);
  return isEither ? { value, thousands: Number(digits.replace(/[.,]/, "")) } : { value };
}

function findMark(digits: string): DecimalMark {
  const commas = digits.split(",").length - 1;
  const points = digits.split(".").length - 1;
  if (commas > 0 && points > 0) return digits.lastIndexOf(",") > digits.lastIndexOf(".") ? "," : ".";
  if (commas > 1) return ".";
  if (points > 1) return ",";
  return commas === 1 ? "," : ".";
}

function isGrouped(whole: string, group: string): boolean {
  const [first = "", ...rest] = whole.split(group);
  return /^[1-9]\d{0,2}$/.test(first) && rest.every((three) => /^\d{3}$/.test(three));
}
