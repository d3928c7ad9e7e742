import { FluentProvider, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { memo, useCallback, useState } from "react";
import type { Workbook } from "../addin/workbook/port.ts";
import { CheckSection } from "./check/CheckSection.tsx";
import { FitSection } from "./fit/FitSection.tsx";
import { GradeSection } from "./grade/GradeSection.tsx";
import { GroupsSection } from "./groups/GroupsSection.tsx";
import { FunctionsSection } from "./help/FunctionsSection.tsx";
import { ImportSection } from "./import/ImportSection.tsx";
import { NoticeBox } from "./NoticeBox.tsx";
import { SectionNav } from "./SectionNav.tsx";
import type { SectionKey } from "./sections.ts";
import { sectionKeys, sectionTitles } from "./sections.ts";
import { SessionProvider, useNewSession, useSectionSession } from "./session.ts";
import type { Appearance } from "./theme.ts";
import { paneTheme } from "./theme.ts";
import { UndoBar } from "./UndoBar.tsx";
import { useAppearance } from "./useAppearance.ts";

const useStyles = makeStyles({
  provider: { height: "100%" },
  pane: {
    height: "100%",
    minWidth: 0,
    display: "flex",
    flexDirection: "column",
    backgroundColor: tokens.colorNeutralBackground2,
    color: tokens.colorNeutralForeground1,
    fontVariantNumeric: "tabular-nums",
  },
  body: { flexGrow: 1, minHeight: 0, overflowY: "auto", overflowX: "hidden", position: "relative" },
});

export interface PaneProps {
  readonly workbook: Workbook;
  /** The host’s theme, where it has one; otherwise the system’s preference. */
  readonly appearance?: Appearance | undefined;
  /** Section to open first. */
  readonly section?: SectionKey;
}

/** The task pane: fills its parent, from 320 px wide. Knows the workbook only through its port. */
export function Pane({ workbook, appearance, section: first = "import" }: PaneProps): ReactNode {
  const styles = useStyles();
  const [section, setSection] = useState<SectionKey>(first);
  const [opened, setOpened] = useState<ReadonlySet<SectionKey>>(new Set([first]));
  const goTo = useCallback((key: SectionKey): void => {
    setSection(key);
    setOpened((before) => new Set(before).add(key));
  }, []);
  const session = useNewSession(workbook, goTo);
  const theme = paneTheme(useAppearance(appearance));

  return (
    <FluentProvider theme={theme} className={styles.provider}>
      <SessionProvider value={session}>
        <div className={styles.pane}>
          <SectionNav section={section} onChoose={goTo} />
          {sectionKeys.map((key) => (
            <div
              key={key}
              id={`section-${key}`}
              role="region"
              aria-label={sectionTitles[key]}
              className={styles.body}
              hidden={key !== section}
            >
              {opened.has(key) && <SectionBody section={key} isShown={key === section} />}
            </div>
          ))}
          <NoticeBox />
          <UndoBar />
        </div>
      </SessionProvider>
    </FluentProvider>
  );
}

/** Sections stay mounted once opened, so that a half-made import is still there on coming back; meanwhile they do nothing. */
function SectionBody(props: { readonly section: SectionKey; readonly isShown: boolean }): ReactNode {
  return (
    <SessionProvider value={useSectionSession(props.isShown)}>
      <SectionContent section={props.section} />
    </SessionProvider>
  );
}

/** Drawn anew only when its session changes. */
const SectionContent = memo(function SectionContent({
  section,
}: {
  readonly section: SectionKey;
}): ReactNode {
  switch (section) {
    case "import":
      return <ImportSection />;
    case "check":
      return <CheckSection />;
    case "groups":
      return <GroupsSection />;
    case "fit":
      return <FitSection />;
    case "grade":
      return <GradeSection />;
    case "functions":
      return <FunctionsSection />;
  }
});
