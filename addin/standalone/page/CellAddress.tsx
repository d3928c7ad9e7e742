import type { ReactNode } from "react";
import { useId, useRef } from "react";

/** The longest address that is offered; longer ones nobody reads. */
const longest = 2000;

/**
 * The web or mail address that a cell shows; `undefined` for everything else, also for addresses that look as if they led to
 * another place than they do, with a name before the host.
 */
export function addressIn(shown: string): URL | undefined {
  if (shown.length > longest || !/^(https?:\/\/|mailto:)\S+$/i.test(shown)) return undefined;
  const address = URL.canParse(shown) ? new URL(shown) : undefined;
  return address?.username === "" && address.password === "" ? address : undefined;
}

/** Offers to open the address that a cell holds, once it was shown in full. */
export function CellAddress({ cell, address }: { readonly cell: string; readonly address: URL }): ReactNode {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  const close = (): void => {
    dialog.current?.close();
  };
  return (
    <div className="cell-address">
      <p>
        <strong>{cell}</strong> holds an address.
      </p>
      <button
        type="button"
        onClick={() => {
          dialog.current?.showModal();
        }}
      >
        Open it …
      </button>
      <dialog ref={dialog} aria-labelledby={id}>
        <h2 id={id}>Open this address?</h2>
        <p className="address">{address.href}</p>
        <p className="quiet">
          {address.protocol === "mailto:"
            ? "It opens your mail program."
            : `It leads to ${address.host}, in a new tab. Nothing of your workbook is sent there.`}
        </p>
        <div className="actions">
          <button
            type="button"
            onClick={() => {
              close();
              window.open(address.href, "_blank", "noopener,noreferrer");
            }}
          >
            Open
          </button>
          <button type="button" onClick={close}>
            Cancel
          </button>
        </div>
      </dialog>
    </div>
  );
}
