import { useEffect } from "react";
import type { Since } from "./sinceWords.ts";
import { usePublishing } from "./usePublishing.ts";

/** Tells what changed since the last publication, as long as it is there; shows nothing itself. */
export function ChangedSince({ onFound }: { readonly onFound: (since: Since | undefined) => void }): null {
  const since = usePublishing(undefined)?.since;
  useEffect(() => {
    onFound(since);
  }, [since, onFound]);
  return null;
}
