import { InputError } from "../measures/inputError.ts";
import { limits } from "./limits.ts";

/** For a workbook that asks for more than can be opened. `what` it holds, with the number and what is possible. */
export function tooLarge(what: string): InputError {
  return new InputError(
    `The workbook is too large to open here: it holds ${what}. ` +
      "In the program that it comes from, delete what is not needed, or copy the chart alone into a new workbook, and open that.",
  );
}

/** @throws {InputError} when a file of so many bytes is not even looked into */
export function checkFileSize(bytes: number): void {
  if (bytes <= limits.fileBytes) return;
  throw new InputError(
    `The file has ${megabytes(bytes)}; at most ${megabytes(limits.fileBytes)} can be opened. Copy the chart alone into a new file, and open that.`,
  );
}

/** 1000000 → “1,000,000” */
export function counted(count: number): string {
  return count.toLocaleString("en-GB");
}

/** 1500000 → “2 MB” */
export function megabytes(bytes: number): string {
  return `${counted(Math.ceil(bytes / 1024 / 1024))} MB`;
}
