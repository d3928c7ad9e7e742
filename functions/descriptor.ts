import { InputError } from "../addin/measures/inputError.ts";
import type { Parameter } from "./arguments.ts";

/** What a cell can show. Never null: Excel would show 0. */
export type Value = number | string | boolean;
/** A spilled result: a rectangle, row by row. */
export type Table = readonly (readonly Value[])[];
export type Result = Value | Table;

/** One example of the function reference, also run as a test. */
export interface Example {
  /** As typed in a cell, without the leading `=`. */
  readonly formula: string;
  /** The same arguments as values; `undefined` is an omitted one. */
  readonly values: readonly unknown[];
  readonly gives: Result;
}

/** What goes wrong and what then stands in the cell, for the reference. */
export interface Failure {
  readonly when: string;
  readonly shows: "#VALUE!" | "#N/A";
}

/**
 * A worksheet function: the one source for `functions.json`, the registration in both hosts, the help in the
 * pane and the function reference. Arguments arrive raw, as hosts pass them; `compute` reads them through the
 * parameters, and throws `InputError` only.
 */
export interface FunctionDescriptor {
  /** Upper case, without the namespace; equals the id; never changes once released. */
  readonly name: string;
  /** One sentence: what it gives. */
  readonly summary: string;
  /** More for the reference: conventions, what is left out. Paragraphs are separated by blank lines. */
  readonly details?: string;
  readonly parameters: readonly NamedParameter[];
  /** A `table` result is always a rectangle, if only of one cell. */
  readonly result: "number" | "text" | "table";
  readonly examples: readonly Example[];
  readonly failures: readonly Failure[];
  /** Published source of the method, where there is one. */
  readonly source?: string;
  /**
   * An empty cell for a required argument gives a blank result.
   *
   * @throws {InputError} naming what was read and what to do
   */
  compute(raw: readonly unknown[]): Result;
}

export interface NamedParameter extends Parameter<unknown> {
  readonly name: string;
}

/** The argument values that a specification of parameters gives, by name. */
export type Arguments<P> = { readonly [K in keyof P]: P[K] extends Parameter<infer T> ? T : never };

type Specification<P> = Omit<FunctionDescriptor, "parameters" | "compute" | "name"> & {
  readonly name: Uppercase<string>;
  /** In the order of the arguments, optional ones last. */
  readonly parameters: P;
  readonly compute: (args: Arguments<P>) => Result;
};

/** Turns a typed specification into a descriptor: `compute` gets each argument read and checked, by name. */
export function defineFunction<const P extends Readonly<Record<string, Parameter<unknown>>>>(
  specification: Specification<P>,
): FunctionDescriptor {
  const parameters = Object.entries(specification.parameters).map(([name, parameter]) => ({
    ...parameter,
    name,
  }));
  const shaped = (result: Result): Result => {
    if (isTable(result)) return result.some(isTooLong) ? result.map((row) => row.map(cut)) : result;
    return specification.result === "table" ? [[cut(result)]] : cut(result);
  };

  return {
    ...specification,
    parameters,
    compute: (raw) => {
      if (parameters.some((parameter, i) => parameter.isBlank(raw[i]))) return shaped("");
      const values = parameters.map((parameter, i) => [
        parameter.name,
        naming(parameter.name, () => parameter.read(raw[i], parameter.name)),
      ]);
      // Object.fromEntries forgets which value belongs to which name; each was read by its own parameter.
      return shaped(specification.compute(Object.fromEntries(values) as Arguments<P>));
    },
  };
}

/**
 * Does what is given; what cannot be used of an argument is told with the name of the argument in front, unless the message
 * has it.
 *
 * @throws {InputError} as `read` does
 */
export function naming<T>(name: string, read: () => T): T {
  try {
    return read();
  } catch (failure) {
    if (!(failure instanceof InputError) || failure.message.includes(name)) throw failure;
    throw new InputError(`${name}: ${failure.message}`, failure.kind);
  }
}

/** The most characters that a cell holds (Microsoft’s page “Excel specifications and limits”). */
const longestText = 32_767;

function isTooLong(row: readonly Value[]): boolean {
  return row.some((value) => typeof value === "string" && value.length > longestText);
}

function cut(value: Value): Value {
  return typeof value === "string" && value.length > longestText
    ? `${value.slice(0, longestText - 2)} …`
    : value;
}

export function isTable(result: Result): result is Table {
  return Array.isArray(result);
}
