import type { IDisposable } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import type { BaseFunction, BaseValueObject } from "@univerjs/engine-formula";
import {
  ErrorType,
  ErrorValueObject,
  IFormulaRuntimeService,
  IFunctionService,
  Interpreter,
  SetFormulaCalculationStartMutation,
} from "@univerjs/engine-formula";
import { askingFunctions } from "../../workbook/keptFormula.ts";
import { limits } from "../../workbook/limits.ts";
import type { FormulaErrors } from "./formulaErrors.ts";
import { eachIn, tooMuchFor } from "./functionLimits.ts";
import type { GridUnit } from "./gridSheets.ts";

/** Under this name the message behind an error is kept that is no function’s own. */
const guard = "calculation";

/** Ends the formula that is being calculated; the message says why. */
class Stopped extends Error {}

/**
 * Keeps the page alive whatever formulas ask for. A function that would give or go through too much gives an error
 * before it begins; once all formulas together have taken `limits.calculatingMs`, the rest give an error at once; a
 * fault in a function of the grid ends its formula and not the engine. Functions that ask another computer are
 * taken out.
 */
export function guardCalculation({ injector }: GridUnit, errors: FormulaErrors): IDisposable {
  const functions = injector.get(IFunctionService);
  functions.unregisterExecutors(...askingFunctions);
  const time = new Timer();
  for (const executor of functions.getExecutors().values()) limit(executor, time);

  const runtime = injector.get(IFormulaRuntimeService);
  const interpreter = injector.get(Interpreter);
  const execute = interpreter.execute.bind(interpreter);
  const executeLater = interpreter.executeAsync.bind(interpreter);
  const cell = () => ({
    sheetId: runtime.currentSubUnitId,
    row: runtime.currentRow,
    column: runtime.currentColumn,
  });
  const failed = (at: ReturnType<typeof cell>, error: unknown): ErrorValueObject => {
    errors.set(at, guard, { code: ErrorType.VALUE, message: messageOf(error) });
    return ErrorValueObject.create(ErrorType.VALUE);
  };
  interpreter.execute = (node) => {
    // A lambda is executed within a formula: what stops it stops the formula.
    if (time.isRunning) return time.checked(() => execute(node));
    const at = cell();
    try {
      const value = time.run(() => execute(node));
      errors.clear(at, guard);
      return value;
    } catch (error) {
      return failed(at, error);
    }
  };
  interpreter.executeAsync = (node) => {
    if (time.isRunning) return time.checked(() => executeLater(node));
    const at = cell();
    return time
      .runLater(() => executeLater(node))
      .then(
        (value) => {
          errors.clear(at, guard);
          return value;
        },
        (error: unknown) => failed(at, error),
      );
  };
  return injector.get(ICommandService).beforeCommandExecuted(({ id }) => {
    if (id === SetFormulaCalculationStartMutation.id) time.restart();
  });
}

/** Adds up the time that formulas take. Every way to run one throws `Stopped` when the time is over. */
class Timer {
  #spent = 0;
  #since: number | undefined;

  get isRunning(): boolean {
    return this.#since !== undefined;
  }

  restart(): void {
    this.#spent = 0;
  }

  run<T>(work: () => T): T {
    this.check();
    this.#since = performance.now();
    try {
      return work();
    } finally {
      this.#stop();
    }
  }

  async runLater<T>(work: () => Promise<T>): Promise<T> {
    this.check();
    this.#since = performance.now();
    try {
      return await work();
    } finally {
      this.#stop();
    }
  }

  checked<T>(work: () => T): T {
    this.check();
    return work();
  }

  check(): void {
    const now = this.#since === undefined ? 0 : performance.now() - this.#since;
    if (this.#spent + now <= limits.calculatingMs) return;
    throw new Stopped(
      `This was not calculated: all formulas together took more than ${String(limits.calculatingMs / 1000)} seconds. Delete formulas that are not needed, or let them read fewer cells.`,
    );
  }

  #stop(): void {
    this.#spent += performance.now() - (this.#since ?? 0);
    this.#since = undefined;
  }
}

function limit(executor: BaseFunction, time: Timer): void {
  const name = String(executor.name);
  const calculate = executor.calculate.bind(executor);
  executor.calculate = (...given) => {
    time.check();
    const before = tooMuchFor(name, given);
    if (before !== undefined) throw new Stopped(before);
    const result = calculate(...given);
    const after = result.isReferenceObject() ? undefined : tooLong(name, result as BaseValueObject);
    if (after !== undefined) throw new Stopped(after);
    return result;
  };
}

/** A cell holds no longer text, and texts that double from cell to cell soon fill the memory. */
function tooLong(name: string, result: BaseValueObject | undefined): string | undefined {
  if (!result) return undefined;
  let most = 0;
  let total = 0;
  const see = (value: BaseValueObject): void => {
    if (!value.isString()) return;
    const { length } = String(value.getValue());
    most = Math.max(most, length);
    total += length;
  };
  eachIn(result, see);
  if (most <= limits.text && total <= limits.totalText) return undefined;
  return most > limits.text
    ? `${name} gives a text of ${most.toLocaleString("en-GB")} characters; a cell holds ${limits.text.toLocaleString("en-GB")}.`
    : `${name} gives texts of ${total.toLocaleString("en-GB")} characters in all; at most ${limits.totalText.toLocaleString("en-GB")} can be held.`;
}

function messageOf(error: unknown): string {
  if (error instanceof Stopped) return error.message;
  const detail = error instanceof Error ? error.message : String(error);
  return `This formula could not be calculated (${detail.slice(0, 100)}). Write it in another way.`;
}
