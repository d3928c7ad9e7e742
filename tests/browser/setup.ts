import type {} from "vitest";
import type { TestProject } from "vitest/node";
import { startPage } from "./startPage.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Where `npm start` serves the page. */
    address: string;
  }
}

/** Serves the page once for all browser tests. */
export default async function setup(project: TestProject): Promise<() => void> {
  const { address, stop } = await startPage();
  project.provide("address", address);
  return stop;
}
