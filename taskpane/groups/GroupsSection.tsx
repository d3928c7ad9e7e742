import type { ReactNode } from "react";
import { SectionFrame } from "../SectionFrame.tsx";

/** Which figures share a body, how surely, and which to keep as house models. */
export function GroupsSection(): ReactNode {
  return <SectionFrame title="Groups">{null}</SectionFrame>;
}
