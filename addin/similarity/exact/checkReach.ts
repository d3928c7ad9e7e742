import { InputError } from "../../measures/inputError.ts";
import { quote } from "../../measures/quote.ts";

/** @throws {InputError} when it is not above 0 */
export function checkReach(reach: number): void {
  if (reach > 0 && Number.isFinite(reach)) return;
  throw new InputError(
    `A reach of ${quote(String(reach))} cannot be used. Write how many tolerances a base figure may be altered by: a number above 0, for example 1.`,
  );
}
