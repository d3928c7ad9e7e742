import type { Highs, HighsCallbackMap, Model } from "highs";
import type { NewVariables, OpenModel, Relaxed, SolveWhole, Whole } from "./solver.ts";
import type { ProvingSolver } from "./provingSolver.ts";
import { proving } from "./provingSolver.ts";

/** HiGHS as a solver of linear models (Huangfu & Hall 2018). The caller loads it, and says where its files lie. */
export function highsSolver(highs: Highs): ProvingSolver {
  return proving({ open: (rows) => openModel(highs, rows) });
}

function openModel(highs: Highs, rows: number): OpenModel {
  const { infinity, constants } = highs;
  const model = highs.createModel();
  const wholeNumbers: number[] = [];
  let variableCount = 0;
  let isRelaxed = true;
  model.options.set({ output_flag: false, random_seed: 0 });
  model.addRows({
    lower: new Float64Array(rows).fill(1),
    upper: new Float64Array(rows).fill(infinity),
    matrix: {
      format: "csr",
      numRows: rows,
      numCols: 0,
      starts: new Int32Array(rows + 1),
      indices: new Int32Array(0),
      values: new Float64Array(0),
    },
  });

  const setWhole = (wanted: boolean): void => {
    if (isRelaxed !== wanted) return;
    const { continuous, integer } = constants.variableType;
    for (const variable of wholeNumbers) model.changeColIntegrality(variable, wanted ? integer : continuous);
    isRelaxed = !wanted;
  };

  const limit = (timeLimitMs: number): void => {
    model.zeroAllClocks();
    model.options.set({ time_limit: Math.min(1e9, Math.max(0.01, timeLimitMs / 1000)) });
  };

  return {
    addVariables({ cost, most, isWhole, rows: by }: NewVariables): void {
      if (by.length === 0) return;
      const starts = new Int32Array(by.length + 1);
      by.forEach((each, i) => (starts[i + 1] = starts[i]! + each.length));
      setWhole(false);
      model.addCols({
        cost: new Float64Array(by.length).fill(cost),
        lower: new Float64Array(by.length),
        upper: new Float64Array(by.length).fill(Math.min(most, infinity)),
        matrix: {
          format: "csc",
          numRows: model.getDimensions().numRows,
          numCols: by.length,
          starts,
          indices: Int32Array.from(by.flat()),
          values: new Float64Array(starts.at(-1)!).fill(1),
        },
      });
      if (isWhole) by.forEach((_, i) => wholeNumbers.push(variableCount + i));
      variableCount += by.length;
    },
    addRow: (least, variables, values) => {
      model.addRow(least, infinity, {
        indices: Int32Array.from(variables),
        values: Float64Array.from(values),
      });
    },
    fix: (variable, value) => {
      model.changeColBounds(variable, value, value);
    },
    relax(timeLimitMs): Relaxed | undefined {
      setWhole(false);
      limit(timeLimitMs);
      model.run();
      if (model.getModelStatus() !== constants.modelStatus.optimal) return undefined;
      const { colValue, colDual, rowDual } = model.getSolution();
      return {
        objective: model.getObjectiveValue(),
        values: colValue,
        rowPrices: rowDual,
        variablePrices: colDual,
      };
    },
    solve: (options) => {
      setWhole(true);
      limit(options.timeLimitMs);
      return solveWhole(highs, model, options);
    },
    close: () => {
      model.dispose();
    },
  };
}

function solveWhole(highs: Highs, model: Model, { start, gap, onBound, onAnswer }: SolveWhole): Whole {
  const { modelStatus, callbackType } = highs.constants;
  model.options.set({ mip_abs_gap: gap, mip_rel_gap: 0 });
  if (start) model.setSolution({ colValue: start });
  let atLeast = -Infinity;
  const note = (bound: unknown): undefined => {
    if (typeof bound !== "number" || bound <= atLeast) return;
    atLeast = bound;
    onBound?.(bound);
  };
  const callbacks: HighsCallbackMap = {
    [callbackType.mipLogging]: (event) => note(event.data.mip_dual_bound),
    [callbackType.mipInterrupt]: (event) => note(event.data.mip_dual_bound),
    [callbackType.mipImprovingSolution]: (event) => {
      if (event.data.mip_solution) onAnswer?.(event.data.mip_solution);
      return undefined;
    },
  };
  model.run(callbacks);
  const status = model.getModelStatus();
  if (status === modelStatus.infeasible) return { outcome: "none", atLeast: Infinity };
  const bound = model.info.get("mip_dual_bound");
  const hasValues = model.info.get("primal_solution_status") === highs.constants.solutionStatus.feasible;
  return {
    outcome: status === modelStatus.optimal ? "proved" : "limit",
    ...(hasValues && { values: model.getSolution().colValue }),
    atLeast: typeof bound === "number" ? Math.max(bound, atLeast) : atLeast,
  };
}
