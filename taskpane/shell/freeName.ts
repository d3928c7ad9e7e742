import { sameName } from "../../addin/workbook/names.ts";

/** The wanted name if it is free, else with the first number behind it that is: Fit, Fit 2, Fit 3. */
export function freeName(wanted: string, taken: readonly string[], between = " "): string {
  const names = [
    wanted,
    ...Array.from({ length: taken.length + 1 }, (_, i) => `${wanted}${between}${String(i + 2)}`),
  ];
  return names.find((name) => !taken.some((each) => sameName(each, name))) ?? wanted;
}
