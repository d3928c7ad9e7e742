import type { Parameter } from "./arguments.ts";

/** What a cell can show. Never null: Excel would show 0. */
export type Value = number | string | boolean;
/** A spilled result: a rectangle, row by row. */
export type Table = readonly (readonly Value[])[];
export type Result = Value | Table;

/** One row of the function reference, also run as a test. */
export interface Example {
  /** As typed in a cell, without the leading `=`. */
  readonly formula: string;
  /** The same arguments as values; `undefined` is an omitted one. */
  readonly values: readonly unknown[];
  readonly gives: Result;
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
  /** More for the reference: conventions, what is left out, when it fails. */
  readonly details?: string;
  readonly parameters: readonly NamedParameter[];
  readonly result: "number" | "text" | "table";
  readonly examples: readonly Example[];
  /** Published source of the method, where there is one. */
  readonly source?: string;
  /** @throws {InputError} naming what was read and what to do */
  compute(raw: readonly unknown[]): Result;
}

export interface NamedParameter extends Parameter<unknown> {
  readonly name: string;
}

type Arguments<P> = { readonly [K in keyof P]: P[K] extends Parameter<infer T> ? T : never };

/** Turns a typed specification into a descriptor: `compute` gets each argument read and checked, by name. */
export function defineFunction<const P extends Record<string, Parameter<unknown>>>(
  spec: Omit<FunctionDescriptor, "parameters" | "compute"> & {
    /** In the order of the arguments. */
    readonly parameters: P;
    readonly compute: (args: Arguments<P>) => Result;
  },
): FunctionDescriptor {
  const parameters = Object.entries(spec.parameters).map(([name, parameter]) => ({ ...parameter, name }));
  return {
    ...spec,
    parameters,
    compute: (raw) =>
      spec.compute(
        Object.fromEntries(parameters.map((p, i) => [p.name, p.read(raw[i], p.name)])) as Arguments<P>,
      ),
  };
}
