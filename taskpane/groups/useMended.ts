import { useMemo } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import type { Doubt } from "../../addin/chart/doubt.ts";
import { comparedDoubts, mendedColumns } from "../../addin/similarity/doubtfulGroups.ts";
import { useSession } from "../shell/session.ts";
import type { ExactTask } from "../solver/task.ts";
import type { Solving } from "./useSolve.ts";
import { useSolve } from "./useSolve.ts";

/**
 * The same search anew with all doubtful readings mended, as soon as the first one has ended by itself; nothing where no reading that is
 * compared is doubtful.
 *
 * @param task of the chart and its columns
 * @param doubtful the doubts about the chart; `undefined` while it is being checked
 */
export function useMended<T extends ExactTask>(
  task: T | undefined,
  { ended }: Solving<T>,
  chart: Chart,
  doubtful: readonly Doubt[] | undefined,
): Solving<T> | undefined {
  const { book } = useSession();
  const concerned = task && doubtful && book.once(comparedDoubts, chart, task.columns, doubtful);
  const columns =
    concerned && concerned.length > 0 ? book.once(mendedColumns, chart, task.columns, concerned) : undefined;
  const isDone = ended !== undefined && ended !== "cancelled";
  const mended = useMemo(
    () => (task && columns && isDone ? { ...task, columns } : undefined),
    [task, columns, isDone],
  );
  const solving = useSolve(mended);
  return mended && solving;
}
