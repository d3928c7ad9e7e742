/** A program with its arguments. */
export type Command = readonly [program: string, given: readonly string[]];
export declare const certificateCommand: Command;
export declare function sideloadCommand(
  system: string,
  manifest: string,
  web: string | undefined,
): Command | undefined;
export declare function removeCommand(
  system: string,
  manifest: string,
  web: string | undefined,
): Command | undefined;
export declare function nextSteps(given: {
  readonly system: string;
  readonly address: string;
  readonly manifest: string;
  readonly web: string | undefined;
  readonly sideloaded: boolean;
}): string;
