import { makeStyles } from "@fluentui/react-components";
import type { ComponentType, ReactNode } from "react";
import { Component, lazy, memo, Suspense } from "react";
import { FailureBox } from "./FailureBox.tsx";
import type { SectionKey } from "./sections.ts";
import { sectionTitles } from "./sections.ts";

const useStyles = makeStyles({ waiting: { margin: 0, padding: "16px" } });

/** What each section shows comes when it is first opened, so that the pane itself opens fast. */
const contents: Readonly<Record<SectionKey, ComponentType>> = {
  import: lazy(async () => ({ default: (await import("./import/ImportSection.tsx")).ImportSection })),
  check: lazy(async () => ({ default: (await import("./check/CheckSection.tsx")).CheckSection })),
  groups: lazy(async () => ({ default: (await import("./groups/GroupsSection.tsx")).GroupsSection })),
  fit: lazy(async () => ({ default: (await import("./fit/FitSection.tsx")).FitSection })),
  grade: lazy(async () => ({ default: (await import("./grade/GradeSection.tsx")).GradeSection })),
  functions: lazy(async () => ({ default: (await import("./help/FunctionsSection.tsx")).FunctionsSection })),
};

/** A section by its key. Drawn anew only when its session changes. */
export const SectionContent = memo(function SectionContent({
  section,
}: {
  readonly section: SectionKey;
}): ReactNode {
  const styles = useStyles();
  const Content = contents[section];
  return (
    <SectionGuard title={sectionTitles[section]}>
      <Suspense fallback={<p className={styles.waiting}>Opening {sectionTitles[section]} …</p>}>
        <Content />
      </Suspense>
    </SectionGuard>
  );
});

interface GuardProps {
  readonly title: string;
  readonly children: ReactNode;
}

/** A section that could not be fetched, or that fails, must not take the others with it. */
class SectionGuard extends Component<GuardProps, { readonly fault: string | undefined }> {
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
