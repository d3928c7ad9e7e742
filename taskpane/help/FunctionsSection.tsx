import type { ReactNode } from "react";
import { SectionFrame } from "../SectionFrame.tsx";

export function FunctionsSection(): ReactNode {
  return <SectionFrame title="Functions">Being written.</SectionFrame>;
}
