import { InputError } from "../addin/measures/inputError.ts";
import { descriptors } from "./all.ts";
import type { FunctionDescriptor, Result } from "./descriptor.ts";

/**
 * The entry of `functions.js`: registers every worksheet function with Excel. It needs nothing of its host but
 * `CustomFunctions.associate`, `CustomFunctions.Error` and `CustomFunctions.ErrorCode`, so that it also loads in a
 * JavaScript-only runtime without a page. Where Office.js could not be fetched there is nobody to register with: the page
 * of the pane says so.
 */
if (typeof CustomFunctions !== "undefined") {
  for (const descriptor of descriptors) {
    CustomFunctions.associate(descriptor.name, (...raw: unknown[]) => answer(descriptor, raw));
  }
}

/** Excel passes an object about the call after the last argument; a function reads its own arguments only. */
function answer(descriptor: FunctionDescriptor, raw: readonly unknown[]): Result {
  try {
    return descriptor.compute(raw.slice(0, descriptor.parameters.length));
  } catch (failure) {
    throw excelError(descriptor.name, failure);
  }
}

function excelError(name: string, failure: unknown): CustomFunctions.Error {
  const { invalidValue, notAvailable } = CustomFunctions.ErrorCode;
  if (!(failure instanceof InputError)) {
    return new CustomFunctions.Error(
      invalidValue,
      `${name} could not work this out. Check the ranges that it is given; nothing in the workbook was changed.`,
    );
  }
  return new CustomFunctions.Error(failure.kind === "absent" ? notAvailable : invalidValue, failure.message);
}
