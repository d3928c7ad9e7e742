import type { ComponentProps, ReactNode } from "react";
import { Component, lazy, Suspense, useEffect, useMemo, useRef, useState, useSyncExternalStore } from "react";
import type { Workbook } from "../../workbook/port.ts";
import type { GridWorkbook } from "../grid/gridWorkbook.ts";
import { Books } from "./Books.tsx";
import type { Desk, DeskState } from "./desk.ts";
import { createDesk, openingState } from "./desk.ts";
import { chooseWorkbook } from "./files.ts";
import type { PageNotice } from "./notices.ts";
import { clock } from "./notices.ts";
import { SaveForms } from "./SaveForms.tsx";

const Pane = lazy(async () => {
  const { Pane: loaded } = await import("../../../taskpane/Pane.tsx");
  return { default: loaded };
});

type View = "sheet" | "pane";

/** The page without Excel: the sheet, and the pane beside it or, on a narrow screen, in its place. */
export function StandalonePage(): ReactNode {
  const place = useRef<HTMLDivElement>(null);
  const [desk, setDesk] = useState<Desk>();
  const [view, setView] = useState<View>("sheet");
  const [isInBooks, setInBooks] = useState(false);
  useEffect(() => {
    if (place.current) setDesk(createDesk(place.current));
  }, []);
  const state = useDesk(desk);

  const name = state.book?.name;
  useEffect(() => {
    document.title = name === undefined ? "Measure Book" : `${name} – Measure Book`;
  }, [name]);

  return (
    <div className="page" data-view={view} data-books={isInBooks}>
      <TopBar desk={desk} state={state} isInBooks={isInBooks} setInBooks={setInBooks} />
      <Notices notices={state.notices} dismiss={(id) => desk?.dismiss(id)} />
      <ViewSwitch view={view} setView={setView} />
      <main className="desk">
        <section className="grid" aria-label="Sheet">
          <div className="place" ref={place} />
          {state.message && (
            <p className="cell-message" role="status">
              <span aria-hidden="true">▲</span> <strong>{state.message.cell}</strong> {state.message.text}
            </p>
          )}
          {state.working !== undefined && !state.workbook && <p className="waiting">{state.working}</p>}
        </section>
        <aside className="pane" aria-label="Pane">
          {state.workbook ? (
            <PaneOf
              workbook={state.workbook}
              onSelect={() => {
                setView("sheet");
              }}
            />
          ) : (
            <p className="waiting">The pane opens with the sheet …</p>
          )}
        </aside>
        {isInBooks && desk && (
          <section className="shelf" aria-label="Books">
            <Books
              desk={desk}
              state={state}
              close={() => {
                setInBooks(false);
              }}
            />
          </section>
        )}
      </main>
    </div>
  );
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
}): ReactNode {
  const { desk, state, isInBooks, setInBooks } = props;
  const [isSaving, setSaving] = useState(false);
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
    setSaving(false);
    saveButton.current?.focus();
  };
  return (
    <header className="top">
      <h1>Measure Book</h1>
      <p className="state">
        {state.book && <strong>{state.book.name}</strong>}{" "}
        <span className="saved" role="status">
          {state.working ?? savedInWords(state)}
        </span>
      </p>
      <div className="actions">
        {button(
          "Books",
          () => {
            setInBooks(!isInBooks);
          },
          { "aria-pressed": isInBooks },
        )}
        {button("Open .xlsx", () => void open())}
        {button(
          "Save .xlsx",
          () => {
            setSaving(!isSaving);
          },
          { ref: saveButton, "aria-expanded": isSaving },
        )}
        {button("Open the demo again", () => {
          setInBooks(false);
          void desk?.openDemo();
        })}
      </div>
      {isSaving && (
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

function Notices({
  notices,
  dismiss,
}: {
  readonly notices: readonly PageNotice[];
  readonly dismiss: (id: string) => void;
}): ReactNode {
  return (
    <div className="notices">
      {notices.map(({ id, kind, text, actions }) => (
        <div key={id} className={`notice ${kind}`} role={kind === "failed" ? "alert" : "status"}>
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
      ))}
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
    <div className="switch" role="group" aria-label="What to show">
      {button("sheet", "Sheet")}
      {button("pane", "Pane")}
    </div>
  );
}

interface PaneOfProps {
  readonly workbook: GridWorkbook;
  /** The pane has selected cells in the sheet. */
  readonly onSelect: () => void;
}

function PaneOf({ workbook, onSelect }: PaneOfProps): ReactNode {
  const told = useRef(onSelect);
  told.current = onSelect;
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
        <Pane workbook={port} />
      </Suspense>
    </PaneGuard>
  );
}

/** Another key for another workbook, so that the pane starts afresh with it. */
function useKey(workbook: GridWorkbook): number {
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
