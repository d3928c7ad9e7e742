import type { RefCallback } from "react";
import { useCallback, useState } from "react";
import { unitPx } from "./letters.ts";

/**
 * The width of an element in whole units of a drawing, kept up to date; 0 until it is known. The size of the element itself has to
 * follow the letters of the page in some way, or nobody tells when they change.
 */
export function useWidth(): readonly [at: RefCallback<Element>, width: number] {
  const [width, setWidth] = useState(0);
  const at = useCallback((element: Element | null) => {
    if (!element) return undefined;
    const observer = new ResizeObserver(([entry]) => {
      // A section that is not shown has no width; its drawings keep theirs.
      if (entry && entry.contentRect.width > 0) setWidth(Math.floor(entry.contentRect.width / unitPx()));
    });
    observer.observe(element);
    return () => {
      observer.disconnect();
    };
  }, []);
  return [at, width];
}
