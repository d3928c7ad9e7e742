import { descriptors } from "./all.ts";
import type { FunctionDescriptor, NamedParameter } from "./descriptor.ts";

/** `functions.json`, which tells Excel the names, arguments and results of the worksheet functions. */
export interface FunctionsJson {
  readonly allowCustomDataForDataTypeAny: boolean;
  readonly allowErrorForDataTypeAny: boolean;
  readonly functions: readonly FunctionJson[];
}

export interface FunctionJson {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly ParameterJson[];
  readonly result: { readonly type: DataType; readonly dimensionality: Dimensionality };
}

export interface ParameterJson {
  readonly name: string;
  readonly description: string;
  readonly type: DataType;
  readonly dimensionality: Dimensionality;
  readonly optional?: boolean;
}

type DataType = "any" | "number" | "string";
type Dimensionality = "scalar" | "matrix";

/** Error cells and rich values reach our own argument module, so that messages can name what was read. */
export function functionsJson(): FunctionsJson {
  return {
    allowCustomDataForDataTypeAny: true,
    allowErrorForDataTypeAny: true,
    functions: descriptors.map(functionJson),
  };
}

function functionJson({ name, summary, parameters, result }: FunctionDescriptor): FunctionJson {
  return {
    id: name,
    name,
    description: summary,
    parameters: parameters.map(parameterJson),
    // A blank result is text, so that even a function that gives a number may give text.
    result: { type: "any", dimensionality: result === "table" ? "matrix" : "scalar" },
  };
}

function parameterJson({ name, help, type, shape, optional }: NamedParameter): ParameterJson {
  return {
    name,
    description: help,
    type: type === "text" ? "string" : "any",
    dimensionality: shape === "range" ? "matrix" : "scalar",
    ...(optional && { optional }),
  };
}
