/**
 * Something the user can mend: the message names what was read and what to do.
 *
 * `"value"` is bad input (`#VALUE!` in a cell); `"absent"` is a figure, measure or pattern
 * that is not in the chart (`#N/A` in a cell).
 */
export class InputError extends Error {
  override readonly name = "InputError";

  constructor(
    message: string,
    readonly kind: "value" | "absent" = "value",
  ) {
    super(message);
  }
}
