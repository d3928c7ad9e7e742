export type DecimalMark = "." | ",";

export type DecimalResult = { readonly value: number } | { readonly refused: string };

/**
 * Digits with decimal and thousands marks → a number.
 *
 * With a stated `mark` the other mark groups thousands and must stand before every third digit. Without one:
 * - both marks present: the last is the decimal mark, the other groups thousands;
 * - one point: the decimal mark, always (`5.375` is five and three eighths);
 * - one comma: the decimal mark (`13,65`), but with exactly three digits behind it and no leading zero it is
 *   refused: `1,234` may be one thousand or one and a bit;
 * - the same mark more than once: it groups thousands.
 */
export function readDecimal(digits: string, mark?: DecimalMark): DecimalResult {
  const decimal = mark ?? findMark(digits);
  if (decimal === "ambiguous") {
    const [whole = "", part = ""] = digits.split(",");
    return { refused: `can be ${whole}.${part} or ${whole}${part}. Write it without the comma` };
  }
  const group = decimal === "." ? "," : ".";
  const [whole = "", part, ...more] = digits.split(decimal);
  const jumbled = "is not one number. Check its points and commas";
  if (more.length > 0 || part?.includes(group)) return { refused: jumbled };
  if (whole.includes(group) && !isGrouped(whole, group)) {
    if (mark === undefined) return { refused: jumbled };
    return { refused: `has “${group}” where “${decimal}” is the decimal mark. Write it with “${decimal}”` };
  }
  return { value: Number(`${whole.replaceAll(group, "")}.${part ?? ""}0`) };
}

function findMark(digits: string): DecimalMark | "ambiguous" {
  const commas = digits.split(",").length - 1;
  const points = digits.split(".").length - 1;
  if (commas > 0 && points > 0) return digits.lastIndexOf(",") > digits.lastIndexOf(".") ? "," : ".";
  if (commas > 1) return ".";
  if (points > 1) return ",";
  if (commas === 1) return /^[1-9]\d{0,2},\d{3}$/.test(digits) ? "ambiguous" : ",";
  return ".";
}

function isGrouped(whole: string, group: string): boolean {
  const [first = "", ...rest] = whole.split(group);
  return /^[1-9]\d{0,2}$/.test(first) && rest.every((three) => /^\d{3}$/.test(three));
}
