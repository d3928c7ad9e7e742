import { openBrowserStore } from "./browserStore.ts";
import { createMemoryStore } from "./memoryStore.ts";
import type { WorkbookStore } from "./store.ts";

/** The browser’s own store, or one that lasts as long as the page where there is none. */
export async function openStore(): Promise<WorkbookStore> {
  try {
    return await openBrowserStore();
  } catch {
    return createMemoryStore();
  }
}
