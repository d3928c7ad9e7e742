import type { ReactNode } from "react";
import { SectionFrame } from "../SectionFrame.tsx";

export function CheckSection(): ReactNode {
  return <SectionFrame title="Check">Being written.</SectionFrame>;
}
