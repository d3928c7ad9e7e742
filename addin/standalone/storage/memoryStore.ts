import type { Generation } from "./generation.ts";
import { newGeneration, randomName } from "./generation.ts";
import type { WorkbookStore } from "./store.ts";

/** Stands in where the browser keeps nothing: the way back works as long as the page is open. */
export function createMemoryStore(): WorkbookStore {
  const kept = new Map<"current" | "before", Generation>();
  const session = randomName();
  const put = (key: "current" | "before", text: string): Generation => {
    const next = newGeneration(text, session);
    kept.set(key, next);
    return next;
  };
  const open = () =>
    Promise.resolve({
      kept: kept.get("current"),
      from: kept.has("current") ? ("current" as const) : undefined,
      setAside: [],
    });
  return {
    keeps: false,
    open,
    refuse: () => {
      kept.delete("current");
      return open();
    },
    save: (text) => Promise.resolve(put("current", text)),
    saveAtOnce: () => undefined,
    keepBefore: (text) => {
      put("before", text);
      return Promise.resolve();
    },
    before: () => Promise.resolve(kept.get("before")),
  };
}
