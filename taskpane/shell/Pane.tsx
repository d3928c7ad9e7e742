import { FluentProvider, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useCallback, useEffect, useMemo, useState, useSyncExternalStore } from "react";
import type { Workbook } from "../../addin/workbook/port.ts";
import type { Errand, Errands } from "./errands.ts";
import { createErrands } from "./errands.ts";
import type { HostServices } from "./hostServices.ts";
import { browserServices } from "./hostServices.ts";
import { NoticeBox } from "./NoticeBox.tsx";
import { CellExplanation, RenameOffers, SectionContent } from "./SectionContent.tsx";
import { SectionNav } from "./SectionNav.tsx";
import type { SectionKey } from "./sections.ts";
import { sectionKeys, sectionTitles } from "./sections.ts";
import { SessionProvider, useNewSession, useSectionSession } from "./session.ts";
import { AskToStart } from "./AskToStart.tsx";
import { paneTheme } from "../ui/theme.ts";
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
    // Boxes to type into would be as wide as twenty letters, whatever the size of these.
    "& .fui-Input": { minWidth: 0, maxWidth: "100%" },
  },
  body: {
    flexGrow: 1,
    minHeight: 0,
    overflowY: "auto",
    overflowX: "hidden",
    position: "relative",
    // What the keyboard goes back to stands below the title, which stays in sight.
    scrollPaddingTop: "min(7rem, 40%)",
  },
});

export interface PaneProps {
  readonly workbook: Workbook;
  /** What the program around the pane offers; a browser’s page where it is left out. */
  readonly services?: HostServices;
  /** What is asked of the pane from outside. */
  readonly errands?: Errands;
  /** Section to open first. */
  readonly section?: SectionKey;
}

/** Where each errand is done; an explanation stands above whatever section is open. */
const sectionOf: Readonly<Record<Errand["kind"], SectionKey | undefined>> = {
  check: "check",
  newChart: "import",
  newPattern: "fit",
  figure: "home",
  measure: "measure",
  explain: undefined,
};

/** The task pane: fills its parent, from 320 px wide. Knows the workbook only through its port. */
export function Pane(props: PaneProps): ReactNode {
  const { workbook, services = browserServices, errands, section: first = "home" } = props;
  const styles = useStyles();
  const asked = useMemo(() => errands ?? createErrands(), [errands]);
  const errand = useSyncExternalStore(asked.subscribe, asked.latest);
  const [section, setSection] = useState<SectionKey>(first);
  const [opened, setOpened] = useState<ReadonlySet<SectionKey>>(new Set([first]));
  const show = useCallback((key: SectionKey): void => {
    setSection(key);
    setOpened((before) => new Set(before).add(key));
  }, []);
  const session = useNewSession({ workbook, services, errand, ask: asked.post, goTo: show });
  const { goTo } = session;
  useEffect(() => {
    const where = errand && sectionOf[errand.kind];
    if (where) goTo(where);
  }, [errand, goTo]);
  const theme = paneTheme(useAppearance(services));

  return (
    <FluentProvider theme={theme} className={styles.provider}>
      <SessionProvider value={session}>
        <div className={styles.pane}>
          <SectionNav section={section} onChoose={goTo} />
          <AskToStart />
          <CellExplanation />
          <RenameOffers />
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
