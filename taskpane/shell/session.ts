import { createContext, useCallback, useContext, useEffect, useMemo, useState } from "react";
import type { Edit, Workbook } from "../../addin/workbook/port.ts";
import type { Book } from "./book.ts";
import { openBook } from "./book.ts";
import type { Errand, FiguresAsked } from "./errands.ts";
import type { HostServices } from "./hostServices.ts";
import type { Notice } from "./notice.ts";
import { failureText } from "./notice.ts";
import type { SectionKey } from "./sections.ts";

/** What every section shares: the workbook and the program around it, one action at a time, and what was said last. */
export interface Session {
  readonly workbook: Workbook;
  /** False for a section that is hidden: it keeps what it had, and neither reads nor calculates. */
  readonly isShown: boolean;
  readonly services: HostServices;
  /** What was last asked of the pane from outside it, if anything. */
  readonly errand: Errand | undefined;
  /** Asks something of the pane as a command from outside does. */
  ask(kind: Errand["kind"], about?: FiguresAsked): void;
  /** What is being done now, in words. */
  readonly working: string | undefined;
  readonly notice: Notice | undefined;
  /** Label of the action that Undo would take back. */
  readonly lastAction: string | undefined;
  /** The workbook as it was last known to be: another one whenever it has changed, by the pane or by the user. */
  readonly book: Book;
  /** The workbook as it is at this moment, for an action that must not miss what was typed just now. */
  freshBook(): Book;
  say(notice: Notice | undefined): void;
  /** Apply edits as one action. Resolves with whether it was done; failures are said, never thrown. */
  apply(label: string, edits: readonly Edit[], done: Notice): Promise<boolean>;
  undo(): Promise<void>;
  goTo(section: SectionKey): void;
}

const waitsWords =
  "The workbook calculates by hand only: press F9 to see the results, or choose Automatic under Formulas, Calculation Options.";

const SessionContext = createContext<Session | undefined>(undefined);

export const SessionProvider = SessionContext.Provider;

export function useSession(): Session {
  const session = useContext(SessionContext);
  if (!session) throw new Error("A section was shown outside the pane.");
  return session;
}

export function useNewSession(
  given: Pick<Session, "workbook" | "services" | "errand" | "ask" | "goTo">,
): Session {
  const { workbook, services, errand, ask, goTo: show } = given;
  const [working, setWorking] = useState<string>();
  const [notice, setNotice] = useState<Notice>();
  const [lastAction, setLastAction] = useState(() => workbook.lastAction());
  const [freshBook] = useState(() => openBook(workbook));
  const [book, setBook] = useState(() => freshBook());

  const refresh = useCallback(() => {
    setLastAction(workbook.lastAction());
    setBook(() => freshBook());
  }, [workbook, freshBook]);

  const goTo = useCallback(
    (section: SectionKey) => {
      show(section);
      // What was done elsewhere is read by now, and would cover what she came for; what failed stays.
      setNotice((said) => (said?.kind === "done" ? undefined : said));
      setBook((known) => freshBook(known));
    },
    [show, freshBook],
  );

  useEffect(() => workbook.subscribe(refresh), [workbook, refresh]);

  const act = useCallback(
    async (doing: string, action: () => Promise<Notice>): Promise<boolean> => {
      setWorking(doing);
      setNotice(undefined);
      try {
        setNotice(await action());
        return true;
      } catch (error) {
        setNotice({ kind: "failed", text: failureText(error) });
        return false;
      } finally {
        setWorking(undefined);
        refresh();
      }
    },
    [refresh],
  );

  const apply = useCallback(
    (label: string, edits: readonly Edit[], done: Notice) =>
      act(`${label} …`, async () => {
        await workbook.apply(label, edits);
        // What was done stays done where only this cannot be told.
        const waits =
          writesFormulas(edits) && (await workbook.calculatesByItself?.().catch(() => true)) === false;
        return waits ? { ...done, text: `${done.text} ${waitsWords}` } : done;
      }),
    [act, workbook],
  );

  const undo = useCallback(async () => {
    await act("Undo …", async () => {
      const label = await workbook.undo();
      return label === undefined
        ? { kind: "done", text: "There is nothing to undo." }
        : { kind: "done", text: undoneWords(label) };
    });
  }, [act, workbook]);

  return useMemo(
    () => ({
      ...{ workbook, services, isShown: true, errand, working, notice, lastAction },
      ...{ book, freshBook },
      ...{ say: setNotice, apply, undo, ask, goTo },
    }),
    [workbook, services, errand, working, notice, lastAction, book, freshBook, apply, undo, ask, goTo],
  );
}

/**
 * The session as a section is to see it: the pane’s while it is shown, and the last one that it saw while it is hidden, so
 * that nothing of the section takes notice of what goes on.
 */
export function useSectionSession(isShown: boolean): Session {
  const session = useSession();
  const [seen, setSeen] = useState({ session, hidden: { ...session, isShown: false } });
  if (isShown && seen.session !== session) setSeen({ session, hidden: { ...session, isShown: false } });
  return isShown ? session : seen.hidden;
}

/** What is said of an action that was taken back. */
export function undoneWords(label: string): string {
  return `Undone: ${label}.`;
}

function writesFormulas(edits: readonly Edit[]): boolean {
  return edits.some((edit) => {
    const cells = edit.kind === "cells" ? edit.cells : edit.kind === "sheet" ? edit.sheet.cells : [];
    return cells.some((row) => row.some((cell) => cell?.formula !== undefined));
  });
}
