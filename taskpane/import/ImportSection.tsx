import type { ReactNode } from "react";
import { SectionFrame } from "../SectionFrame.tsx";

export function ImportSection(): ReactNode {
  return <SectionFrame title="Import">Being written.</SectionFrame>;
}
