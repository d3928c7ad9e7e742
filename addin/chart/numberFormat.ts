/** What is left of a number format when quoted text, escaped characters, brackets and fillers are taken out. */
function codes(format: string): string {
  return format
    .replace(/"[^"]*"/g, "")
    .replace(/[\\_*]./g, "")
    .replace(/\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, "")
    .toLowerCase();
}

/** True for a number format that shows a number as a date or a time of day. */
export function isDateFormat(format: string): boolean {
  const plain = codes(format);
  return !/general|standard/.test(plain) && /[ymdhs]/.test(plain);
}

/** True for a number format that shows 0.03 as 3 %. */
export function isPercentFormat(format: string): boolean {
  return codes(format).includes("%");
}

/** A share → percent, to twelve digits: 0.07 · 100 is not quite 7 in binary. */
export function toPercent(share: number): number {
  return Number((share * 100).toPrecision(12));
}
