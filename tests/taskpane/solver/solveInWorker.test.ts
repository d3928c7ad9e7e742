import { describe, expect, it } from "vitest";
import { InputError } from "../../../addin/measures/inputError.ts";
import type { ExactAnswer } from "../../../addin/similarity/fewest/fewestShared.ts";
import type { SolverMessage } from "../../../taskpane/solver/message.ts";
import { solveInWorker } from "../../../taskpane/solver/solveInWorker.ts";
import { solveTask } from "../../../taskpane/solver/solveTask.ts";
import type { ExactTask } from "../../../taskpane/solver/task.ts";
import { comparedOf } from "../../similarity/chartOf.ts";
import { highs } from "../../similarity/highs.ts";

const task = {
  kind: "groups",
  figures: ["A", "B", "C", "D"],
  columns: comparedOf([[0], [1], [2], [9]]),
} as const satisfies ExactTask;

const answer: ExactAnswer = {
  kind: "groups",
  groupOf: Int32Array.of(1, 1, 2, 3),
  count: 3,
  atLeast: 2,
  isProved: false,
};

/** A worker that answers with the messages given. */
function standIn(messages: readonly SolverMessage[]): { worker: Worker; ended: () => number } {
  let ended = 0;
  const worker = Object.assign(new EventTarget(), {
    onmessage: null as Worker["onmessage"],
    onmessageerror: null,
    onerror: null,
    terminate: () => {
      ended++;
    },
    postMessage: () => {
      queueMicrotask(() => {
        for (const data of messages) worker.onmessage?.call(worker, new MessageEvent("message", { data }));
      });
    },
  });
  return { worker, ended: () => ended };
}

describe("solveInWorker", () => {
  it("tells of progress, gives the answer and ends the worker", async () => {
    const solved = { answer: { ...answer, atLeast: 3, isProved: true }, ended: "proved" } as const;
    const { worker, ended } = standIn([
      { kind: "progress", answer },
      { kind: "done", solved },
    ]);
    const told: number[] = [];
    const onProgress = ({ atLeast }: ExactAnswer) => told.push(atLeast);
    expect(await solveInWorker(task, { begin: () => worker, onProgress })).toEqual(solved);
    expect(told).toEqual([2]);
    expect(ended()).toBe(1);
  });

  it("keeps the best answer so far when cancelled, and ends the worker at once", async () => {
    const { worker, ended } = standIn([{ kind: "progress", answer }]);
    const stop = new AbortController();
    const solved = await solveInWorker(task, {
      begin: () => worker,
      signal: stop.signal,
      onProgress: () => {
        stop.abort();
      },
    });
    expect(solved).toEqual({ answer, ended: "cancelled" });
    expect(ended()).toBeGreaterThan(0);
  });

  it("has nothing to keep when cancelled before there was an answer", async () => {
    const { worker } = standIn([]);
    const stop = new AbortController();
    const solving = solveInWorker(task, { begin: () => worker, signal: stop.signal });
    stop.abort();
    await expect(solving).rejects.toThrow(/before there was any answer/);
  });

  it("passes on what the user can mend", async () => {
    const message = "A reach of “0” cannot be used.";
    const { worker } = standIn([{ kind: "failed", message, isInput: true }]);
    await expect(solveInWorker(task, { begin: () => worker })).rejects.toThrow(new InputError(message));
  });

  it("answers on the page where there are no workers", async () => {
    const { answer: found, ended } = await solveInWorker(task, { begin: () => undefined });
    expect(found).toMatchObject({ count: 3, atLeast: 3 });
    expect(ended).toBe("proved");
  });
});

describe("solveTask", () => {
  it("answers both questions with the solver", () => {
    expect(solveTask(task, highs, () => undefined).answer).toMatchObject({ count: 3, isProved: true });
    const bases = solveTask({ ...task, kind: "bases" }, highs, () => undefined);
    expect(bases).toMatchObject({ ended: "proved", answer: { kind: "bases", count: 2, alteration: 2 } });
  });
});
