import type { Code } from "./instructions.ts";
import { unsigned } from "./instructions.ts";

/* Types of parameters and variables. An address can be another whole number of 32 bits; a vector is of two numbers. */
export const address = 0x7f; // i32
export const number = 0x7c; // f64
export const vector = 0x7b; // v128
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
      get: (of) => [0x20, names.indexOf(of)], // local.get
      set: (of, value) => [...value, 0x21, names.indexOf(of)], // local.set
    }).flat(),
  };
}

/** The bytes of a module that takes its memory as `scratch.memory` and gives the functions by their names. */
export function moduleOf(functions: readonly WasmFunction[]): Uint8Array<ArrayBuffer> {
  const types = functions.map(({ parameters, gives }) => [
    ...[0x60, ...list(parameters.map((type) => [type]))],
    ...list(gives ? [[gives]] : []),
  ]);
  const memory = [...text("scratch"), ...text("memory"), ...[2, 0, 0]]; // a memory, of at least 0 pages
  const names = functions.map(({ name }, i) => [...text(name), ...[0, i]]); // a function, by its number
  const end = 0x0b;
  const bodies = functions.map(({ variables, code }) =>
    sized([...list(variables.map((type) => [1, type])), ...code, end]),
  );
  return Uint8Array.from([
    ...[0, ...letters("asm")],
    ...[1, 0, 0, 0], // version
    ...section(1, types),
    ...section(2, [memory]), // imports
    ...section(
      3,
      [...functions.keys()].map((type) => [type]),
    ), // type of each function
    ...section(7, names), // exports
    ...section(10, bodies),
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

function text(plain: string): Code {
  return sized(letters(plain));
}

/** By their codes: the runtime of worksheet functions has no TextEncoder. */
function letters(plain: string): Code {
  return Array.from(plain, (letter) => letter.charCodeAt(0));
}
