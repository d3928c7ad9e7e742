import vm from "node:vm";
import { build } from "esbuild";

/** An error as a host’s `CustomFunctions.Error`. */
export class HostError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

export type Registered = (...args: unknown[]) => unknown;

/**
 * The worksheet functions as Excel loads them: bundled into one script, and run in a bare JavaScript context that
 * offers `CustomFunctions.associate`, `CustomFunctions.Error` and `CustomFunctions.ErrorCode`, and nothing else.
 */
export async function loadFunctions(): Promise<{ registered: Map<string, Registered>; script: string }> {
  const { outputFiles } = await build({
    entryPoints: ["functions/excel.ts"],
    bundle: true,
    minify: true,
    format: "iife",
    target: "es2022",
    write: false,
  });
  const script = outputFiles[0]?.text ?? "";
  return { registered: runBare(script), script };
}

/** Runs a built `functions.js` with nothing but what Excel’s JavaScript-only runtime offers it. */
export function runBare(script: string): Map<string, Registered> {
  const registered = new Map<string, Registered>();
  const context = vm.createContext({
    CustomFunctions: {
      associate: (id: string, compute: Registered) => registered.set(id, compute),
      Error: HostError,
      ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
    },
  });
  vm.runInContext(script, context);
  return registered;
}
