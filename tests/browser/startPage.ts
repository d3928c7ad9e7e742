import { spawn } from "node:child_process";
import { createServer } from "node:net";

/** Where `npm start` has what it serves; there once it has run. */
export function builtFolder(): string {
  return "node_modules/.cache/measure-book-page";
}

/**
 * Runs what `npm start` runs, on a free port, and resolves with the address that it prints.
 *
 * @throws {Error} with all that it said, when it ends before the page is ready
 */
export async function startPage(): Promise<{ readonly address: string; stop(): void }> {
  const port = await freePort();
  const child = spawn(process.execPath, ["addin/standalone/start.mjs", "--no-open", "--port", String(port)], {
    stdio: ["ignore", "pipe", "pipe"],
  });
  const address = await new Promise<string>((resolve, reject) => {
    let output = "";
    const read = (chunk: Buffer) => {
      output += chunk.toString();
      const ready = /ready at (http:\S+)/.exec(output);
      if (ready?.[1]) resolve(ready[1]);
    };
    child.stdout.on("data", read);
    child.stderr.on("data", read);
    child.on("close", (code) => {
      reject(new Error(`npm start ended with ${String(code)} before the page was ready:\n${output}`));
    });
  });
  return {
    address,
    stop: () => {
      child.kill("SIGKILL");
      child.stdout.destroy();
      child.stderr.destroy();
    },
  };
}

export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen(0, "localhost", () => {
      const address = server.address();
      server.close(() => {
        if (address && typeof address === "object") resolve(address.port);
        else reject(new Error("No free port was found."));
      });
    });
  });
}
