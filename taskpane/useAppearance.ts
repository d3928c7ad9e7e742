import { useSyncExternalStore } from "react";
import type { Appearance } from "./theme.ts";

const query = "(prefers-color-scheme: dark)";

function subscribe(listener: () => void): () => void {
  const media = window.matchMedia(query);
  media.addEventListener("change", listener);
  return () => {
    media.removeEventListener("change", listener);
  };
}

/** What the host says, else what the system prefers. */
export function useAppearance(fromHost: Appearance | undefined): Appearance {
  const system = useSyncExternalStore<Appearance>(subscribe, () =>
    window.matchMedia(query).matches ? "dark" : "light",
  );
  return fromHost ?? system;
}
