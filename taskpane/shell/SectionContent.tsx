import { makeStyles } from "@fluentui/react-components";
import type { ComponentType, ReactNode } from "react";
import { Component, lazy, memo, Suspense, useEffect, useState } from "react";
import type { Cell } from "../../addin/chart/cell.ts";
import type { TypedCell, WorkbookChange } from "../../addin/workbook/port.ts";
import { FailureBox } from "../ui/FailureBox.tsx";
import type { SectionKey } from "./sections.ts";
import { sectionTitles } from "./sections.ts";
import { useSession } from "./session.ts";

const useStyles = makeStyles({ waiting: { margin: 0, padding: "16px" } });

/** What each section shows comes when it is first opened, so that the pane itself opens fast. */
const contents: Readonly<Record<SectionKey, ComponentType>> = {
  // The first one, which the page without Excel fetches together with the pane.
  home: lazy(async () => ({
    default: (await import(/* webpackChunkName: "section-home" */ "../home/HomeSection.tsx")).HomeSection,
  })),
  import: lazy(async () => ({ default: (await import("../import/ImportSection.tsx")).ImportSection })),
  measure: lazy(async () => ({ default: (await import("../measure/MeasureSection.tsx")).MeasureSection })),
  check: lazy(async () => ({ default: (await import("../check/CheckSection.tsx")).CheckSection })),
  groups: lazy(async () => ({ default: (await import("../groups/GroupsSection.tsx")).GroupsSection })),
  fit: lazy(async () => ({ default: (await import("../fit/FitSection.tsx")).FitSection })),
  grade: lazy(async () => ({ default: (await import("../grade/GradeSection.tsx")).GradeSection })),
  publish: lazy(async () => ({ default: (await import("../publish/PublishSection.tsx")).PublishSection })),
  functions: lazy(async () => ({ default: (await import("../help/FunctionsSection.tsx")).FunctionsSection })),
};

/** Comes with the first section, since it knows the measures that a chart may have. */
const Gate = lazy(async () => ({
  default: (await import(/* webpackChunkName: "gate" */ "./Gate.tsx")).Gate,
}));

/** A section by its key. Drawn anew only when its session changes. */
export const SectionContent = memo(function SectionContent({
  section,
}: {
  readonly section: SectionKey;
}): ReactNode {
  const styles = useStyles();
  const Content = contents[section];
  return (
    <PartGuard title={sectionTitles[section]}>
      <Suspense fallback={<p className={styles.waiting}>Opening {sectionTitles[section]} …</p>}>
        <Gate section={section}>
          <Content />
        </Gate>
      </Suspense>
    </PartGuard>
  );
});

const CellBox = lazy(async () => ({ default: (await import("../explain/CellBox.tsx")).CellBox }));

/** The explanation of a cell, see `CellBox`, from when it is first asked for. */
export function CellExplanation(): ReactNode {
  const styles = useStyles();
  const isAsked = useSession().errand?.kind === "explain";
  const [wasAsked, setWasAsked] = useState(false);
  if (isAsked && !wasAsked) setWasAsked(true);
  if (!wasAsked) return undefined;
  return (
    <PartGuard title="The explanation">
      <Suspense fallback={<p className={styles.waiting}>Looking at the cell …</p>}>
        <CellBox />
      </Suspense>
    </PartGuard>
  );
}

const RenameBox = lazy(async () => ({ default: (await import("../rename/RenameBox.tsx")).RenameBox }));

/** Offers to follow a new name, see `RenameBox`, from when something is first typed that may be one. */
export function RenameOffers(): ReactNode {
  const { workbook } = useSession();
  const [heard, setHeard] = useState<readonly WorkbookChange[]>([]);
  useEffect(
    () =>
      workbook.subscribe((change) => {
        if (change.typed?.some(isTextOverText)) setHeard((before) => [...before, change]);
      }),
    [workbook],
  );
  if (heard.length === 0) return undefined;
  return (
    <PartGuard title="The offer to follow the new name">
      <Suspense fallback={undefined}>
        <RenameBox heard={heard} />
      </Suspense>
    </PartGuard>
  );
}

/** Readings are mostly numbers, and what is typed over a number by a number is no name. */
function isTextOverText({ before, after }: TypedCell): boolean {
  const isFilled = (cell: Cell): boolean =>
    typeof cell === "number" || (typeof cell === "string" && cell !== "");
  return isFilled(before) && isFilled(after) && !(typeof before === "number" && typeof after === "number");
}

interface GuardProps {
  readonly title: string;
  readonly children: ReactNode;
}

/** A part that could not be fetched, or that fails, must not take the others with it. */
class PartGuard extends Component<GuardProps, { readonly fault: string | undefined }> {
  override readonly state: { readonly fault: string | undefined } = { fault: undefined };

  static getDerivedStateFromError(error: unknown) {
    return { fault: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { fault } = this.state;
    if (fault === undefined) return this.props.children;
    return (
      <FailureBox
        what={`${this.props.title} could not be opened (${fault}).`}
        why="Your workbook is not touched. Make sure that you are connected, then open the pane again."
      />
    );
  }
}
