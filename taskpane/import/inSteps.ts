/**
 * Runs work that comes in steps, with a pause after each, to its end.
 *
 * @param pause awaited with the share done, 0 to 1
 * @throws the signal’s reason when cancelled
 */
export async function inSteps<T>(
  steps: Generator<number, T>,
  pause: (share: number) => Promise<void>,
  signal: AbortSignal,
): Promise<T> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    await pause(step.value);
    signal.throwIfAborted();
  }
}
