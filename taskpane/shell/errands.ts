/** Something that is asked of the pane from outside it, such as by a command of the ribbon. */
export interface Errand {
  readonly kind: "check" | "newChart" | "explain" | "newPattern" | "figure" | "measure";
  /** For `figure`: whose card is wanted, and beside whom; for `measure`: who is measured, beginning with what. */
  readonly about?: FiguresAsked | undefined;
}

/** Figures by their names. */
export interface FiguresAsked {
  readonly figure: string;
  readonly other?: string;
  /** The key of a measure. */
  readonly measure?: string;
}

/** Where errands wait until the pane is shown. Only the last one counts; each is an object of its own. */
export interface Errands {
  post(kind: Errand["kind"], about?: FiguresAsked): void;
  latest(): Errand | undefined;
  subscribe(listener: () => void): () => void;
}

export function createErrands(): Errands {
  let latest: Errand | undefined;
  const listeners = new Set<() => void>();
  return {
    post(kind, about) {
      latest = { kind, about };
      for (const listener of [...listeners]) listener();
    },
    latest: () => latest,
    subscribe(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}
