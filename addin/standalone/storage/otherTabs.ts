/**
 * Tells whether the page is open in another tab too. Where the browser cannot say, saving still notices when another
 * tab has kept a workbook.
 */
export function watchOtherTabs(onOther: () => void, name = "measure-book"): () => void {
  if (typeof BroadcastChannel === "undefined") return () => undefined;
  const channel = new BroadcastChannel(name);
  channel.onmessage = ({ data }: MessageEvent<unknown>) => {
    if (data === "hello") channel.postMessage("here");
    onOther();
  };
  channel.postMessage("hello");
  return () => {
    channel.close();
  };
}
