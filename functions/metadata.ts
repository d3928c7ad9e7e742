import { descriptors } from "./all.ts";
import type { Choices } from "./choices.ts";
import type { FunctionDescriptor, NamedParameter } from "./descriptor.ts";

/** `functions.json`, which tells Excel the names, arguments and results of the worksheet functions. */
export interface FunctionsJson {
  readonly allowCustomDataForDataTypeAny: boolean;
  readonly allowErrorForDataTypeAny: boolean;
  readonly functions: readonly FunctionJson[];
  readonly enums: readonly EnumJson[];
}

export interface FunctionJson {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly helpUrl: string;
  readonly parameters: readonly ParameterJson[];
  readonly result: { readonly type: DataType; readonly dimensionality: Dimensionality };
}

export interface ParameterJson {
  readonly name: string;
  readonly description: string;
  readonly type: DataType;
  readonly dimensionality: Dimensionality;
  readonly optional?: boolean;
  readonly customEnumId?: string;
}

/** Words that Excel offers while an argument is typed. They are suggestions: what else the function knows may be typed too. */
export interface EnumJson {
  readonly id: string;
  readonly type: "string";
  readonly values: readonly {
    readonly name: string;
    readonly stringValue: string;
    readonly tooltip: string;
  }[];
}

type DataType = "any" | "number" | "string";
type Dimensionality = "scalar" | "matrix";

/**
 * Error cells and rich values reach our own argument module, so that messages can name what was read.
 *
 * @param helpUrl the https address of the help page of a function
 */
export function functionsJson(helpUrl: (functionName: string) => string): FunctionsJson {
  return {
    allowCustomDataForDataTypeAny: true,
    allowErrorForDataTypeAny: true,
    functions: descriptors.map((descriptor) => functionJson(descriptor, helpUrl(descriptor.name))),
    enums: offeredChoices().map(enumJson),
  };
}

/** The choices of all arguments, each once. */
function offeredChoices(): readonly Choices[] {
  const all = descriptors.flatMap(({ parameters }) => parameters.flatMap(({ choices }) => choices ?? []));
  return [...new Map(all.map((choices) => [choices.id, choices])).values()];
}

function enumJson({ id, values }: Choices): EnumJson {
  return {
    id,
    type: "string",
    values: values.map(({ word, says }) => ({ name: word, stringValue: word, tooltip: says })),
  };
}

function functionJson(
  { name, summary, parameters, result }: FunctionDescriptor,
  helpUrl: string,
): FunctionJson {
  return {
    id: name,
    name,
    description: summary,
    helpUrl,
    parameters: parameters.map(parameterJson),
    // A blank result is text, so that even a function that gives a number may give text.
    result: { type: "any", dimensionality: result === "table" ? "matrix" : "scalar" },
  };
}

function parameterJson({ name, help, type, shape, optional, choices }: NamedParameter): ParameterJson {
  return {
    name,
    description: help,
    type: type === "text" ? "string" : "any",
    dimensionality: shape === "range" ? "matrix" : "scalar",
    ...(optional && { optional }),
    ...(choices && { customEnumId: choices.id }),
  };
}
