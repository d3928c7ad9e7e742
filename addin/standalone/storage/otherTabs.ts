import * as z from "zod/mini";

const word = z.object({ says: z.enum(["open", "here"]), book: z.string() });

export interface OtherTabs {
  /** This tab shows that book now. */
  showing(book: string): void;
  close(): void;
}

/**
 * Tells when a book is open in two tabs. Where the browser cannot say, saving still notices when another tab has kept
 * the book.
 */
export function watchOtherTabs(onOther: () => void, name = "measure-book"): OtherTabs {
  if (typeof BroadcastChannel === "undefined") return { showing: () => undefined, close: () => undefined };
  const channel = new BroadcastChannel(name);
  let shown: string | undefined;
  channel.onmessage = ({ data }: MessageEvent<unknown>) => {
    const heard = word.safeParse(data).data;
    if (heard === undefined || heard.book !== shown) return;
    if (heard.says === "open") channel.postMessage({ says: "here", book: shown });
    onOther();
  };
  return {
    showing: (book) => {
      shown = book;
      channel.postMessage({ says: "open", book });
    },
    close: () => {
      channel.close();
    },
  };
}
