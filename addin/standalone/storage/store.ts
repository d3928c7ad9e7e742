import type { Generation } from "./generation.ts";

/** Why a workbook could not be kept, in words for the page. */
export class StorageError extends Error {
  override readonly name = "StorageError";

  constructor(
    readonly reason: "full" | "other tab" | "failed",
    message: string,
  ) {
    super(message);
  }
}

/** A save that could not be read. It is kept, so that it can be downloaded and perhaps mended. */
export interface SetAside {
  readonly key: string;
  readonly text: string;
}

export interface Opened {
  readonly kept: Generation | undefined;
  readonly from: "current" | "previous" | undefined;
  /** Damaged saves that were found and set aside on the way. */
  readonly setAside: readonly SetAside[];
}

/** Where the page keeps its workbook. */
export interface WorkbookStore {
  /** False where nothing outlives the page, for example in a private window. */
  readonly keeps: boolean;
  /** The newest save that is whole. Damaged ones are set aside. */
  open(): Promise<Opened>;
  /** Set the newest save aside, because it could not be shown, and give the one before it. */
  refuse(id: string): Promise<Opened>;
  /**
   * Keep a workbook; the save before it stays as the previous one.
   *
   * @param basedOn the save that the page opened or made last; `"whatever"` overwrites what another tab has kept
   * @throws {StorageError} `"other tab"` when another tab has saved since, `"full"` when the browser has no room
   */
  save(text: string, basedOn: string | undefined): Promise<Generation>;
  /**
   * Keep a workbook before this call returns, because the page is going away. Where there is no room for that, it
   * does nothing. The next `open` finds it, unless a later save was made in the meantime.
   */
  saveAtOnce(text: string, basedOn: string | undefined): void;
  /** Keep the workbook that is about to be replaced by another one, for the way back. */
  keepBefore(text: string): Promise<void>;
  /** The workbook before the one that is open now. */
  before(): Promise<Generation | undefined>;
}

export const whatever = "whatever";
