import type { ReactNode } from "react";
import { SectionFrame } from "../SectionFrame.tsx";

/** From one figure to the next: what changes on the pieces, and whether a print scale will do. */
export function GradeSection(): ReactNode {
  return <SectionFrame title="Grade">{null}</SectionFrame>;
}
