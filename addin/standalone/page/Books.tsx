import type { ReactNode } from "react";
import { useId, useRef, useState } from "react";
import type { Book } from "../storage/books.ts";
import { longestName } from "../storage/books.ts";
import type { SetAside } from "../storage/bookStore.ts";
import type { Desk, DeskState } from "./desk.ts";
import { when } from "./notices.ts";
import { SaveForms } from "./SaveForms.tsx";

interface BooksProps {
  readonly desk: Desk;
  readonly state: DeskState;
  readonly close: () => void;
}

/** All books that are kept, with what can be done about each. */
export function Books({ desk, state, close }: BooksProps): ReactNode {
  const books = state.books.filter((book) => book.deletedAt === undefined);
  const deleted = state.books.filter((book) => book.deletedAt !== undefined);
  return (
    <div className="books">
      <div className="books-head">
        <h2 tabIndex={-1}>Books</h2>
        <button type="button" onClick={close}>
          Back to the sheet
        </button>
      </div>
      <div className="actions">
        <button
          type="button"
          aria-disabled={state.working !== undefined}
          onClick={() => {
            if (state.working !== undefined) return;
            close();
            void desk.openDemo();
          }}
        >
          Open the demo again
        </button>
      </div>
      <p>
        {state.saved?.kind === "not kept"
          ? "This browser keeps nothing for this page: these books are gone when you close it. Save those that you need as .xlsx."
          : "Kept in this browser, on this computer, as you work. Each book keeps its last saves too."}
      </p>
      <ul>
        {books.map((book) => (
          <BookCard key={book.id} book={book} desk={desk} state={state} close={close} />
        ))}
      </ul>
      {deleted.length > 0 && (
        <section>
          <h3>Deleted books</h3>
          <p>
            They can be brought back for 30 days after they were deleted, unless the browser needs the room.
          </p>
          <ul>
            {deleted.map((book) => (
              <DeletedCard key={book.id} book={book} desk={desk} />
            ))}
          </ul>
        </section>
      )}
      {state.setAside.length > 0 && (
        <section>
          <h3>Damaged saves</h3>
          <p>They could not be opened. Somebody who knows the file may be able to mend them.</p>
          <ul>
            {state.setAside.map((aside) => (
              <AsideCard key={aside.key} aside={aside} desk={desk} />
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

type Asked = "name" | "file" | undefined;

function BookCard({ book, desk, state, close }: BooksProps & { readonly book: Book }): ReactNode {
  const [asked, setAsked] = useState<Asked>();
  const isOpen = book.id === state.book?.id;
  const isBusy = state.working !== undefined;
  const card = useRef<HTMLLIElement>(null);
  const done = (name: string): void => {
    setAsked(undefined);
    // What was typed or chosen in goes; the keyboard goes on at the button that led there.
    card.current?.querySelector<HTMLElement>(`[data-does="${name}"]`)?.focus();
  };
  const [newest, ...earlier] = book.versions;
  return (
    <li ref={card} data-book={book.name}>
      <h3>{book.name}</h3>
      <p className="quiet">
        {isOpen && <strong>Open now. </strong>}
        {newest && `Kept ${when(newest.savedAt)}. `}
        {`Opened ${when(book.openedAt)}.`}
      </p>
      <div className="actions">
        {!isOpen && (
          <Action
            label="Open"
            book={book}
            disabled={isBusy}
            run={() => {
              close();
              void desk.openBook(book);
            }}
          />
        )}
        <Action
          label="Rename"
          book={book}
          disabled={isBusy}
          expanded={asked === "name"}
          run={() => {
            setAsked(asked === "name" ? undefined : "name");
          }}
        />
        <Action label="Duplicate" book={book} disabled={isBusy} run={() => void desk.duplicate(book)} />
        <Action
          label="Download"
          book={book}
          disabled={isBusy}
          expanded={asked === "file"}
          run={() => {
            setAsked(asked === "file" ? undefined : "file");
          }}
        />
        <Action label="Delete" book={book} disabled={isBusy} run={() => void desk.remove(book)} />
      </div>
      {asked === "name" && (
        <Rename
          book={book}
          rename={(name) => {
            done("Rename");
            void desk.rename(book, name);
          }}
          cancel={() => {
            done("Rename");
          }}
        />
      )}
      {asked === "file" && (
        <SaveForms
          name={book.name}
          save={(form) => {
            done("Download");
            void desk.downloadBook(book, form);
          }}
          cancel={() => {
            done("Download");
          }}
        />
      )}
      {earlier.length > 0 && (
        <details>
          <summary>
            {earlier.length === 1 ? "1 earlier save" : `${String(earlier.length)} earlier saves`}
          </summary>
          <ul className="versions">
            {earlier.map((version) => (
              <li key={version.id}>
                <span>{when(version.savedAt)}</span>
                <button
                  type="button"
                  disabled={isBusy}
                  aria-label={`Open the save of ${book.name} from ${when(version.savedAt)} as a book of its own`}
                  onClick={() => {
                    close();
                    void desk.openVersion(book, version);
                  }}
                >
                  Open as a book of its own
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </li>
  );
}

function Action(props: {
  readonly label: string;
  readonly book: Book;
  readonly disabled: boolean;
  readonly expanded?: boolean;
  readonly run: () => void;
}): ReactNode {
  const { label, book, disabled, expanded, run } = props;
  return (
    <button
      type="button"
      data-does={label}
      aria-label={`${label} ${book.name}`}
      aria-disabled={disabled}
      aria-expanded={expanded}
      onClick={() => {
        if (!disabled) run();
      }}
    >
      {label}
    </button>
  );
}

function Rename(props: {
  readonly book: Book;
  readonly rename: (name: string) => void;
  readonly cancel: () => void;
}): ReactNode {
  const id = useId();
  const [name, setName] = useState(props.book.name);
  return (
    <form
      className="ask"
      onSubmit={(event) => {
        event.preventDefault();
        props.rename(name);
      }}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        props.cancel();
      }}
    >
      <label htmlFor={id}>New name</label>
      <input
        id={id}
        ref={takeFocus}
        value={name}
        maxLength={longestName}
        onChange={(event) => {
          setName(event.target.value);
        }}
      />
      <div className="actions">
        <button type="submit">Rename</button>
        <button type="button" onClick={props.cancel}>
          Cancel
        </button>
      </div>
    </form>
  );
}

/** The field takes the place of what was pressed. */
function takeFocus(field: HTMLInputElement | null): void {
  field?.focus();
}

function DeletedCard({ book, desk }: { readonly book: Book; readonly desk: Desk }): ReactNode {
  return (
    <li>
      <h4>{book.name}</h4>
      <p className="quiet">Deleted {when(book.deletedAt ?? 0)}.</p>
      <div className="actions">
        <button
          type="button"
          aria-label={`Bring ${book.name} back`}
          onClick={() => void desk.bringBack(book)}
        >
          Bring back
        </button>
        <button
          type="button"
          aria-label={`Delete ${book.name} for good`}
          onClick={() => void desk.forget(book)}
        >
          Delete for good
        </button>
      </div>
    </li>
  );
}

function AsideCard({ aside, desk }: { readonly aside: SetAside; readonly desk: Desk }): ReactNode {
  return (
    <li>
      <h4>{aside.name}</h4>
      <p className="quiet">Set aside {when(aside.at)}.</p>
      <div className="actions">
        <button
          type="button"
          onClick={() => {
            desk.downloadAside(aside);
          }}
        >
          Download
        </button>
        <button type="button" onClick={() => void desk.forgetAside(aside)}>
          Delete for good
        </button>
      </div>
    </li>
  );
}
