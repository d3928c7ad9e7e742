import { spawn } from "node:child_process";
import { createServer } from "node:net";
import type {} from "vitest";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  interface ProvidedContext {
    /** Where `npm start` serves the page. */
    address: string;
  }
}

/** Runs what `npm start` runs, once for all browser tests, and tells them the address that it prints. */
export default async function setup(project: TestProject): Promise<() => void> {
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
      reject(new Error(`npm start ended with ${code} before the page was ready:\n${output}`));
    });
  });
  project.provide("address", address);
  return () => {
    child.kill();
  };
}

function freePort(): Promise<number> {
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
