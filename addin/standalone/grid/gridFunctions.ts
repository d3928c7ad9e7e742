import type { Nullable } from "@univerjs/core";
import type { BaseValueObject, IFunctionInfo, IFunctionNames } from "@univerjs/engine-formula";
import {
  ArrayValueObject,
  BaseFunction,
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  FunctionType,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/engine-formula";
import type { FunctionDescriptor, Result, Value } from "../../../functions/descriptor.ts";
import { isTable } from "../../../functions/descriptor.ts";
import { exampleArguments } from "../../../functions/exampleArguments.ts";
import { namespace } from "../../../functions/namespace.ts";
import type { Cell } from "../../chart/cell.ts";
import { InputError } from "../../measures/inputError.ts";
import type { FormulaErrors } from "./formulaErrors.ts";

type FunctionClass = new (name: IFunctionNames) => BaseFunction;

/** The worksheet functions as the grid’s formula engine takes them. */
export function gridFunctions(
  descriptors: readonly FunctionDescriptor[],
  errors: FormulaErrors,
): [FunctionClass, string][] {
  return descriptors.map((descriptor) => [functionClass(descriptor, errors), nameOf(descriptor)]);
}

/** What the grid shows about a function while a formula is typed. */
export function functionHelp(descriptor: FunctionDescriptor): IFunctionInfo {
  const written = exampleArguments(descriptor.examples[0]?.formula ?? "");
  return {
    functionName: nameOf(descriptor),
    functionType: FunctionType.User,
    description: descriptor.summary,
    abstract: descriptor.summary,
    functionParameter: descriptor.parameters.map((parameter, i) => ({
      name: parameter.name,
      detail: parameter.standsFor
        ? `${parameter.help} May be left out: then it is ${parameter.standsFor}.`
        : parameter.help,
      example: written[i] ?? "",
      require: parameter.optional ? 0 : 1,
      repeat: 0,
    })),
  };
}

function nameOf(descriptor: FunctionDescriptor): string {
  return `${namespace}.${descriptor.name}`;
}

function functionClass(descriptor: FunctionDescriptor, errors: FormulaErrors): FunctionClass {
  return class extends BaseFunction {
    // The engine’s own count of arguments answers with an error that says nothing, so the count is ours.
    override minParams = -1;
    override maxParams = -1;

    /** Never throws: an exception would stop the engine for good. */
    override calculate(...given: BaseValueObject[]): BaseValueObject {
      const cell = { sheetId: this.subUnitId ?? "", row: this.row, column: this.column };
      try {
        checkCount(descriptor, given.length);
        const result = toValueObject(descriptor.compute(given.map(toRaw)), this);
        errors.clear(cell, descriptor.name);
        return result;
      } catch (error) {
        const code = error instanceof InputError && error.kind === "absent" ? ErrorType.NA : ErrorType.VALUE;
        errors.set(cell, descriptor.name, { code, message: messageOf(error, descriptor) });
        return ErrorValueObject.create(code);
      }
    }
  };
}

function checkCount(descriptor: FunctionDescriptor, given: number): void {
  const { parameters } = descriptor;
  const missing = parameters.find((parameter, i) => i >= given && !parameter.optional);
  if (missing) {
    throw new InputError(`${nameOf(descriptor)} needs ${missing.name} too. ${missing.help}`);
  }
  if (given > parameters.length) {
    throw new InputError(
      `${nameOf(descriptor)} takes at most ${String(parameters.length)} arguments: ${parameters
        .map((parameter) => parameter.name)
        .join(", ")}. This formula gives ${String(given)}.`,
    );
  }
}

function messageOf(error: unknown, descriptor: FunctionDescriptor): string {
  if (error instanceof InputError) return error.message;
  const detail = error instanceof Error ? error.message : String(error);
  return `${nameOf(descriptor)} could not be calculated, through a fault in Measure Book (${detail}). Nothing in your sheet was changed.`;
}

/** A value of the formula engine → what descriptors read: a rectangle of cells, or one cell. */
function toRaw(given: BaseValueObject): Cell | Cell[][] {
  if (!(given instanceof ArrayValueObject)) return single(given);
  return Array.from({ length: given.getRowCount() }, (_, row) =>
    Array.from({ length: given.getColumnCount() }, (_, column) => single(given.get(row, column))),
  );
}

function single(given: Nullable<BaseValueObject>): Cell {
  if (!given || given.isNull()) return undefined;
  if (given instanceof ErrorValueObject) return { error: given.getErrorType() };
  if (given instanceof ArrayValueObject) return single(given.get(0, 0));
  const value = given.getValue();
  return typeof value === "object" ? undefined : value;
}

function toValueObject(result: Result, at: BaseFunction): BaseValueObject {
  if (!isTable(result)) return primitive(result);
  if (result.length === 1 && result[0]?.length === 1) return primitive(result[0][0] ?? "");
  return ArrayValueObject.create({
    calculateValueList: result.map((row) => row.map(primitive)),
    rowCount: result.length,
    columnCount: result[0]?.length ?? 0,
    unitId: at.unitId ?? "",
    sheetId: at.subUnitId ?? "",
    row: at.row,
    column: at.column,
  });
}

function primitive(value: Value): BaseValueObject {
  if (typeof value === "string") return StringValueObject.create(value);
  if (typeof value === "boolean") return BooleanValueObject.create(value);
  return Number.isFinite(value) ? NumberValueObject.create(value) : ErrorValueObject.create(ErrorType.NUM);
}
