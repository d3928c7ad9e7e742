import { useSyncExternalStore } from "react";
import type { HostServices } from "./hostServices.ts";
import type { Appearance } from "./theme.ts";

const query = "(prefers-color-scheme: dark)";

function subscribe(listener: () => void): () => void {
  const media = window.matchMedia(query);
  media.addEventListener("change", listener);
  return () => {
    media.removeEventListener("change", listener);
  };
}

function neverChanges(): () => void {
  return () => undefined;
}

/** What the program around the pane says, else what the system prefers; followed while it changes. */
export function useAppearance({ appearance, watchAppearance }: HostServices): Appearance {
  const system = useSyncExternalStore<Appearance>(subscribe, () =>
    window.matchMedia(query).matches ? "dark" : "light",
  );
  const fromHost = useSyncExternalStore(watchAppearance ?? neverChanges, () => appearance?.());
  return fromHost ?? system;
}
