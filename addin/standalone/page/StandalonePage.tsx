import type { ComponentProps, ReactNode } from "react";
import {
  Component,
  lazy,
  Suspense,
  useCallback,
  useEffect,
  useMemo,
  useRef,
  useState,
  useSyncExternalStore,
} from "react";
import type { HostServices } from "../../../taskpane/shell/hostServices.ts";
import type { Workbook } from "../../workbook/port.ts";
import { flushSync } from "react-dom";
import type { ActiveCell } from "../grid/activeCell.ts";
import { Books } from "./Books.tsx";
import { addressIn, CellAddress } from "./CellAddress.tsx";
import type { Desk, DeskState } from "./desk.ts";
import { createDesk, openingState } from "./desk.ts";
import { chooseWorkbook } from "./files.ts";
import { NewBook } from "./NewBook.tsx";
import type { PageNotice } from "./notices.ts";
import { clock } from "./notices.ts";
import type { Region, Regions } from "./regions.ts";
import { watchRegions } from "./regions.ts";
import { SaveForms } from "./SaveForms.tsx";

/** What the pane needs to show its first section; fetched while the workbook is. */
const openingPane = Promise.all([
  import(/* webpackChunkName: "pane" */ "../../../taskpane/shell/Pane.tsx"),
  import(/* webpackChunkName: "section-home" */ "../../../taskpane/home/HomeSection.tsx"),
]);

const Pane = lazy(async () => {
  const [{ Pane: loaded }] = await openingPane;
  return { default: loaded };
});

/** Longer than the pane takes to be drawn: a page that is not in sight draws nothing, and the sheet must not wait for it. */
const longestDrawingMs = 500;

type View = "sheet" | "pane";

/** The page without Excel: the sheet, and the pane beside it or, on a narrow screen, in its place. */
export function StandalonePage(): ReactNode {
  const place = useRef<HTMLDivElement>(null);
  const paneDrawn = useRef((): void => undefined);
  const [desk, setDesk] = useState<Desk>();
  const [view, setView] = useState<View>("sheet");
  const [isInBooks, setInBooks] = useState(false);
  const [spoken, setSpoken] = useState("");
  const regions = useRegions({ desk, isInBooks, setInBooks, setView, say: setSpoken });
  useEffect(() => {
    const paneShown = async (): Promise<void> => {
      const drawn = new Promise<void>((resolve) => {
        paneDrawn.current = resolve;
      });
      await openingPane.catch(() => undefined);
      await Promise.race([drawn, new Promise((resolve) => setTimeout(resolve, longestDrawingMs))]);
    };
    if (place.current) setDesk(createDesk(place.current, paneShown));
  }, []);
  const state = useDesk(desk);
  const name = state.book?.name;
  useEffect(() => {
    document.title = name === undefined ? "Measure Book" : `${name} – Measure Book`;
  }, [name]);
  useSpokenCell(state.cell, setSpoken);
  const isAtWork = useIsAtWork();
  const address = addressIn(state.cell?.shown ?? "");
  const goTo = (region: Region): void => {
    regions.current?.goTo(region);
  };

  return (
    <div className="page" data-view={view} data-books={isInBooks}>
      <TopBar desk={desk} state={state} isInBooks={isInBooks} setInBooks={setInBooks} goTo={goTo} />
      <Notices
        notices={state.notices}
        isAtWork={isAtWork}
        dismiss={(id) => {
          desk?.dismiss(id);
          // The button that was pressed goes.
          goTo(isInBooks ? "books" : view);
        }}
      />
      <ViewSwitch view={view} setView={setView} />
      <p className="spoken" aria-live="polite">
        {spoken}
      </p>
      <main className="desk">
        <section className="grid" data-region="sheet" aria-label="Sheet">
          <div className="place" ref={place} />
          {state.cell?.problem !== undefined && (
            <p className="cell-message">
              <span aria-hidden="true">▲</span> <strong>{state.cell.cell}</strong> {state.cell.problem}
            </p>
          )}
          {state.cell && address && (
            <CellAddress key={address.href} cell={state.cell.cell} address={address} />
          )}
          {state.working !== undefined && !state.isSheetOpen && <p className="waiting">{state.working}</p>}
        </section>
        <aside className="pane" data-region="pane" aria-label="Pane">
          {state.workbook ? (
            <PaneOf
              workbook={state.workbook}
              name={name}
              onDrawn={() => {
                paneDrawn.current();
              }}
              onSelect={() => {
                setView("sheet");
              }}
            />
          ) : (
            <p className="waiting">Opening the pane …</p>
          )}
        </aside>
        {isInBooks && desk && (
          <section className="shelf" data-region="books" aria-label="Books">
            <Books
              desk={desk}
              state={state}
              close={() => {
                goTo("sheet");
              }}
            />
          </section>
        )}
      </main>
    </div>
  );
}

interface Ways {
  readonly desk: Desk | undefined;
  readonly isInBooks: boolean;
  readonly setInBooks: (isInBooks: boolean) => void;
  readonly setView: (view: View) => void;
  readonly say: (words: string) => void;
}

/** The ways around the page without a mouse. They listen before the grid is there. */
function useRegions(ways: Ways) {
  const now = useRef(ways);
  now.current = ways;
  const regions = useRef<Regions>(undefined);
  useEffect(() => {
    const watching = watchRegions({
      regions: () => (now.current.isInBooks ? ["books", "top"] : ["sheet", "pane", "top"]),
      show: (region) => {
        const { setInBooks, setView } = now.current;
        // At once: only what is in sight can have the keyboard.
        flushSync(() => {
          setInBooks(region === "books" || (region === "top" && now.current.isInBooks));
          if (region === "sheet" || region === "pane") setView(region);
        });
      },
      focusCells: () => now.current.desk?.focusSheet(),
      isTyping: () => now.current.desk?.isTyping() ?? false,
      say: (words) => {
        now.current.say(words);
      },
    });
    regions.current = watching;
    return () => {
      watching.stop();
    };
  }, []);
  return regions;
}

/** Says the selected cell: where it is, what it shows, what is wrong. */
function useSpokenCell(cell: ActiveCell | undefined, say: (words: string) => void): void {
  const before = useRef<string>(undefined);
  useEffect(() => {
    if (!cell) return;
    const { sheet, cell: address, shown, problem } = cell;
    const where = before.current === sheet ? address : `${sheet}, ${address}`;
    before.current = sheet;
    say(`${where}: ${shown === "" ? "empty" : shown}${problem === undefined ? "" : `, ${problem}`}`);
  }, [cell, say]);
}

/** Whether the last press, of a key or with the pointer, was in the sheet or the pane. What opens can take the keyboard without one. */
function useIsAtWork(): () => boolean {
  const isAtWork = useRef(false);
  useEffect(() => {
    const hear = ({ target }: Event): void => {
      isAtWork.current =
        target instanceof Element && target.closest("[data-region=sheet], [data-region=pane]") !== null;
    };
    const presses = ["pointerdown", "keydown"] as const;
    for (const press of presses) document.addEventListener(press, hear, true);
    return () => {
      for (const press of presses) document.removeEventListener(press, hear, true);
    };
  }, []);
  return useCallback(() => isAtWork.current, []);
}

function useDesk(desk: Desk | undefined): DeskState {
  return useSyncExternalStore(
    (listener) => desk?.subscribe(listener) ?? (() => undefined),
    () => desk?.state() ?? openingState,
  );
}

function TopBar(props: {
  readonly desk: Desk | undefined;
  readonly state: DeskState;
  readonly isInBooks: boolean;
  readonly setInBooks: (isInBooks: boolean) => void;
  readonly goTo: (region: Region) => void;
}): ReactNode {
  const { desk, state, isInBooks, setInBooks, goTo } = props;
  const [asks, setAsks] = useState<"new" | "save">();
  const newButton = useRef<HTMLButtonElement>(null);
  const saveButton = useRef<HTMLButtonElement>(null);
  const isBusy = state.working !== undefined;
  // A button that were disabled while it works would lose the keyboard’s place.
  const button = (label: string, run: () => void, more: ComponentProps<"button"> = {}): ReactNode => (
    <button
      type="button"
      aria-disabled={isBusy}
      onClick={() => {
        if (!isBusy) run();
      }}
      {...more}
    >
      {label}
    </button>
  );
  const open = async (): Promise<void> => {
    const file = await chooseWorkbook();
    if (!file) return;
    setInBooks(false);
    await desk?.openFile(file);
  };
  const asked = (): void => {
    setAsks(undefined);
    (asks === "new" ? newButton : saveButton).current?.focus();
  };
  const toggle = (what: "new" | "save"): void => {
    setAsks(asks === what ? undefined : what);
  };
  return (
    <header className="top" data-region="top">
      <Skip to="sheet" goTo={goTo} />
      <Skip to="pane" goTo={goTo} />
      <h1>Measure Book</h1>
      <p className="state">
        {state.book && <strong>{state.book.name}</strong>}{" "}
        <span className="saved" role="status">
          {state.working ?? savedInWords(state)}
        </span>
      </p>
      <div className="actions">
        {state.stop && (
          <button type="button" onClick={state.stop}>
            Stop
          </button>
        )}
        {button(
          "New book",
          () => {
            toggle("new");
          },
          { ref: newButton, "aria-expanded": asks === "new" },
        )}
        {button(
          "Books",
          () => {
            if (isInBooks) setInBooks(false);
            else goTo("books");
          },
          { "aria-pressed": isInBooks },
        )}
        {button("Open .xlsx", () => void open())}
        {button(
          "Save .xlsx",
          () => {
            toggle("save");
          },
          { ref: saveButton, "aria-expanded": asks === "save" },
        )}
      </div>
      {asks === "new" && (
        <NewBook
          begin={(name, unit) => {
            asked();
            setInBooks(false);
            void desk?.beginBook(name, unit);
          }}
          cancel={asked}
        />
      )}
      {asks === "save" && (
        <SaveForms
          name={state.book?.name ?? "Workbook"}
          save={(form) => {
            asked();
            void desk?.saveFile(form);
          }}
          cancel={asked}
        />
      )}
    </header>
  );
}

function Skip({ to, goTo }: { readonly to: View; readonly goTo: (region: Region) => void }): ReactNode {
  return (
    <a
      className="skip"
      href={`#${to}`}
      onClick={(event) => {
        event.preventDefault();
        goTo(to);
      }}
    >
      Skip to the {to}
    </a>
  );
}

function savedInWords({ saved }: DeskState): string {
  switch (saved?.kind) {
    case undefined:
      return "";
    case "kept":
      return `Kept in this browser, ${clock(saved.at)}`;
    case "keeping":
      return "Keeping your changes …";
    case "not kept":
      return "Not kept: save as .xlsx";
    case "other tab":
      return "Not kept: open in another tab";
    case "failed":
      return "Not kept";
  }
}

const shapes = { done: "●", look: "≈", failed: "▲" } as const;

interface Noticing {
  readonly dismiss: (id: string) => void;
  /** Whether the user is at work in the sheet or the pane by now. */
  readonly isAtWork: () => boolean;
}

function Notices({
  notices,
  ...noticing
}: Noticing & { readonly notices: readonly PageNotice[] }): ReactNode {
  return (
    <div className="notices">
      {notices.map((notice) => (
        <NoticeBar key={notice.id} notice={notice} {...noticing} />
      ))}
    </div>
  );
}

function NoticeBar({ notice, dismiss, isAtWork }: Noticing & { readonly notice: PageNotice }): ReactNode {
  const { id, kind, text, actions, isResult } = notice;
  const bar = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // Whoever has gone on to the cells or the pane meanwhile types there, and no key may be lost.
    if (isResult && !isAtWork()) bar.current?.focus();
  }, [notice, isResult, isAtWork]);
  return (
    <div ref={bar} tabIndex={-1} className={`notice ${kind}`} role={kind === "failed" ? "alert" : "status"}>
      <p>
        <span aria-hidden="true" className="shape">
          {shapes[kind]}
        </span>{" "}
        {text}
      </p>
      <div className="actions">
        {actions?.map(({ label, run }) => (
          <button key={label} type="button" onClick={run}>
            {label}
          </button>
        ))}
        <button
          type="button"
          className="plain"
          onClick={() => {
            dismiss(id);
          }}
        >
          Close
        </button>
      </div>
    </div>
  );
}

function ViewSwitch({
  view,
  setView,
}: {
  readonly view: View;
  readonly setView: (view: View) => void;
}): ReactNode {
  const button = (to: View, label: string): ReactNode => (
    <button
      type="button"
      aria-pressed={view === to}
      onClick={() => {
        setView(to);
      }}
    >
      {label}
    </button>
  );
  return (
    <nav className="switch" aria-label="What to show">
      {button("sheet", "Sheet")}
      {button("pane", "Pane")}
    </nav>
  );
}

interface PaneOfProps {
  readonly workbook: Workbook;
  readonly name: string | undefined;
  readonly onDrawn: () => void;
  /** The pane has selected cells in the sheet. */
  readonly onSelect: () => void;
}

function PaneOf({ workbook, name, onDrawn, onSelect }: PaneOfProps): ReactNode {
  const told = useRef(onSelect);
  told.current = onSelect;
  const called = useRef(name);
  called.current = name;
  const services = useMemo<HostServices>(
    () => ({ keepsDownloads: true, bookName: () => called.current }),
    [],
  );
  const port = useMemo<Workbook>(
    () => ({
      ...workbook,
      select: async (area) => {
        await workbook.select(area);
        told.current();
      },
    }),
    [workbook],
  );
  const key = useKey(workbook);
  return (
    <PaneGuard key={key}>
      <Suspense fallback={<p className="waiting">Opening the pane …</p>}>
        <Pane workbook={port} services={services} />
        <Drawn tell={onDrawn} />
      </Suspense>
    </PaneGuard>
  );
}

/** Tells once when what stands beside it is drawn. */
function Drawn({ tell }: { readonly tell: () => void }): ReactNode {
  useEffect(() => {
    requestAnimationFrame(() => setTimeout(tell));
  }, [tell]);
  return undefined;
}

/** Another key for another workbook, so that the pane starts afresh with it. */
function useKey(workbook: Workbook): number {
  const known = useRef({ workbook, key: 0 });
  if (known.current.workbook !== workbook) known.current = { workbook, key: known.current.key + 1 };
  return known.current.key;
}

/** A fault in the pane must not take the sheet with it. */
class PaneGuard extends Component<{ readonly children: ReactNode }, { readonly fault: string | undefined }> {
  override readonly state: { readonly fault: string | undefined } = { fault: undefined };

  static getDerivedStateFromError(error: unknown) {
    return { fault: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    if (this.state.fault === undefined) return this.props.children;
    return (
      <p className="waiting" role="alert">
        The pane could not be shown, through a fault in Measure Book ({this.state.fault}). Your workbook is
        not touched. Load the page again.
      </p>
    );
  }
}
