import type { Appearance } from "../ui/theme.ts";

/** What the program around the pane offers beside its spreadsheet. */
export interface HostServices {
  /** The program’s own theme; `undefined` where it tells none. */
  appearance?(): Appearance | undefined;
  /** Called when the theme may have changed. Returns the unsubscriber. */
  watchAppearance?(listener: () => void): () => void;
  /** Whether the add-in starts together with this workbook, so that functions answer before the pane is opened. */
  readonly startup?: {
    /** Whether not starting with the workbook is known to leave functions waiting here. */
    readonly isNeeded: boolean;
    isOn(): Promise<boolean>;
    set(on: boolean): Promise<void>;
    /** Called after each change. Returns the unsubscriber. */
    subscribe(listener: () => void): () => void;
  };
  /** Whether a file that the page offers for download is known to arrive somewhere. */
  readonly keepsDownloads: boolean;
  /** What the maker calls the open workbook, where the program tells. */
  bookName?(): string | undefined;
  /** Opens an https address in the user’s own browser; without it a link does. */
  openInBrowser?(address: string): void;
}

/** A page in a browser of its own. */
export const browserServices: HostServices = { keepsDownloads: true };
