import type { ReactNode } from "react";
import { Component, lazy, Suspense, useEffect, useMemo, useRef, useState, useSyncExternalStore } from "react";
import type { Workbook } from "../../workbook/port.ts";
import type { GridWorkbook } from "../grid/gridWorkbook.ts";
import type { Desk, DeskState, PageNotice } from "./desk.ts";
import { clock, createDesk } from "./desk.ts";
import { chooseWorkbook } from "./files.ts";

const Pane = lazy(async () => {
  const { Pane: loaded } = await import("../../../taskpane/Pane.tsx");
  return { default: loaded };
});

const opening: DeskState = {
  working: "Opening your workbook …",
  workbook: undefined,
  saved: undefined,
  notices: [],
  message: undefined,
};

type View = "sheet" | "pane";

/** The page without Excel: the sheet, and the pane beside it or, on a narrow screen, in its place. */
export function StandalonePage(): ReactNode {
  const place = useRef<HTMLDivElement>(null);
  const [desk, setDesk] = useState<Desk>();
  const [view, setView] = useState<View>("sheet");
  useEffect(() => {
    if (place.current) setDesk(createDesk(place.current));
  }, []);
  const state = useDesk(desk);

  return (
    <div className="page" data-view={view}>
      <TopBar desk={desk} state={state} />
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
      </main>
    </div>
  );
}

function useDesk(desk: Desk | undefined): DeskState {
  return useSyncExternalStore(
    (listener) => desk?.subscribe(listener) ?? (() => undefined),
    () => desk?.state() ?? opening,
  );
}

function TopBar({ desk, state }: { readonly desk: Desk | undefined; readonly state: DeskState }): ReactNode {
  const isBusy = state.working !== undefined;
  const open = async (): Promise<void> => {
    const file = await chooseWorkbook();
    if (file) await desk?.openFile(file);
  };
  return (
    <header className="top">
      <h1>Measure Book</h1>
      <p className="saved" role="status">
        {state.working ?? savedInWords(state)}
      </p>
      <div className="actions">
        <button type="button" disabled={isBusy} onClick={() => void open()}>
          Open .xlsx
        </button>
        <button type="button" disabled={isBusy} onClick={() => void desk?.saveFile()}>
          Save .xlsx
        </button>
        <button type="button" disabled={isBusy} onClick={() => void desk?.openDemo()}>
          Open the demo again
        </button>
      </div>
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
