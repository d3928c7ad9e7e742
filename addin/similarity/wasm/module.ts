import type { Code } from "./instructions.ts";
import { unsigned } from "./instructions.ts";

/** Types of parameters and variables: an address or other whole number of 32 bits, a number, a vector of two numbers. */
export const address = 0x7f;
export const number = 0x7c;
export const vector = 0x7b;
type Type = typeof address | typeof number | typeof vector;
type Names<Name extends string> = Readonly<Record<Name, Type>>;

/** A function of a WebAssembly module. */
export interface WasmFunction {
  readonly name: string;
  readonly parameters: readonly Type[];
  readonly gives: Type | undefined;
  readonly variables: readonly Type[];
  readonly code: Code;
}

/** Reads and writes parameters and variables by their names. */
export interface Variables<Name extends string> {
  get(name: Name): Code;
  set(name: Name, value: Code): Code;
}

/** @param gives type of what the code leaves at its end */
export function wasmFunction<Parameter extends string, Variable extends string>(
  name: string,
  parameters: Names<Parameter>,
  variables: Names<Variable>,
  gives: Type | undefined,
  code: (variables: Variables<Parameter | Variable>) => readonly Code[],
): WasmFunction {
  // They are numbered in order, parameters first.
  const names = [...Object.keys(parameters), ...Object.keys(variables)];
  return {
    name,
    parameters: Object.values(parameters),
    gives,
    variables: Object.values(variables),
    code: code({
      get: (of) => [0x20, names.indexOf(of)],
      set: (of, value) => [...value, 0x21, names.indexOf(of)],
    }).flat(),
  };
}

const end = 0x0b;

/** The bytes of a module that takes its memory as `scratch.memory` and gives the functions by their names. */
export function moduleOf(functions: readonly WasmFunction[]): Uint8Array<ArrayBuffer> {
  return Uint8Array.from([
    ...[0, 0x61, 0x73, 0x6d, 1, 0, 0, 0],
    ...section(
      1,
      functions.map(({ parameters, gives }) => [
        0x60,
        ...list(parameters.map((type) => [type])),
        ...list(gives ? [[gives]] : []),
      ]),
    ),
    ...section(2, [[...text("scratch"), ...text("memory"), 2, 0, 0]]),
    ...section(
      3,
      functions.map((_, i) => [i]),
    ),
    ...section(
      7,
      functions.map(({ name }, i) => [...text(name), 0, i]),
    ),
    ...section(
      10,
      functions.map(({ variables, code }) =>
        sized([...list(variables.map((type) => [1, type])), ...code, end]),
      ),
    ),
  ]);
}

function section(id: number, items: readonly Code[]): Code {
  return [id, ...sized(list(items))];
}

function list(items: readonly Code[]): Code {
  return [...unsigned(items.length), ...items.flat()];
}

function sized(code: Code): Code {
  return [...unsigned(code.length), ...code];
}

/** Of plain letters: the runtime of worksheet functions has no TextEncoder. */
function text(letters: string): Code {
  return sized(Array.from(letters, (letter) => letter.charCodeAt(0)));
}
