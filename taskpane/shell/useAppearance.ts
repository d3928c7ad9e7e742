import { useSyncExternalStore } from "react";
import type { HostServices } from "./hostServices.ts";
import type { Appearance } from "../ui/theme.ts";

const dark = "(prefers-color-scheme: dark)";
const forced = "(forced-colors: active)";

function subscribe(listener: () => void): () => void {
  const media = [dark, forced].map((query) => window.matchMedia(query));
  for (const each of media) each.addEventListener("change", listener);
  return () => {
    for (const each of media) each.removeEventListener("change", listener);
  };
}

function neverChanges(): () => void {
  return () => undefined;
}

/**
 * Colours that the user has forced, else what the program around the pane says, else what the system prefers; followed
 * while it changes.
 */
export function useAppearance({ appearance, watchAppearance }: HostServices): Appearance {
  const isForced = useSyncExternalStore(subscribe, () => window.matchMedia(forced).matches);
  const isDark = useSyncExternalStore(subscribe, () => window.matchMedia(dark).matches);
  const fromHost = useSyncExternalStore(watchAppearance ?? neverChanges, () => appearance?.());
  if (isForced) return "forced";
  return fromHost ?? (isDark ? "dark" : "light");
}
