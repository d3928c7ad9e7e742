import type { ReactNode } from "react";
import { useId } from "react";
import type { FileForm } from "./desk.ts";

/** Asks for whom a book is saved as .xlsx. */
export function SaveForms(props: {
  readonly name: string;
  readonly save: (form: FileForm) => void;
  readonly cancel: () => void;
}): ReactNode {
  const id = useId();
  const { name, save, cancel } = props;
  return (
    <div
      className="ask"
      role="group"
      aria-labelledby={id}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        cancel();
      }}
    >
      <p id={id}>
        <strong>Save “{name}” as .xlsx</strong>
      </p>
      <p className="quiet">
        With formulas it goes on calculating in Excel, once Measure Book is added there. Other programs do not
        know these formulas: give them the values.
      </p>
      <div className="actions">
        <button
          type="button"
          ref={takeFocus}
          onClick={() => {
            save("formulas");
          }}
        >
          With formulas, for Excel
        </button>
        <button
          type="button"
          onClick={() => {
            save("values");
          }}
        >
          Values, for every program
        </button>
        <button type="button" onClick={cancel}>
          Cancel
        </button>
      </div>
    </div>
  );
}

function takeFocus(button: HTMLButtonElement | null): void {
  button?.focus();
}
