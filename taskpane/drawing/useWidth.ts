import type { RefCallback } from "react";
import { useCallback, useState } from "react";

/** The width of an element in whole CSS pixels, kept up to date; 0 until it is known. */
export function useWidth(): readonly [at: RefCallback<Element>, width: number] {
  const [width, setWidth] = useState(0);
  const at = useCallback((element: Element | null) => {
    if (!element) return undefined;
    const observer = new ResizeObserver(([entry]) => {
      // A section that is not shown has no width; its drawings keep theirs.
      if (entry && entry.contentRect.width > 0) setWidth(Math.floor(entry.contentRect.width));
    });
    observer.observe(element);
    return () => {
      observer.disconnect();
    };
  }, []);
  return [at, width];
}
