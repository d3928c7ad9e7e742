/** How often a page that stays open asks whether there is a new version, ms. */
const hourMs = 3_600_000;

/**
 * Has the page kept for opening it without a network, and tells when a version is ready that is not the one shown. Where
 * the browser keeps no pages, as in a private window, nothing happens.
 */
export async function watchVersions(onNew: () => void): Promise<void> {
  const { serviceWorker } = navigator;
  // Not everywhere, whatever the types say: a page from another computer without https has none.
  if (!("serviceWorker" in navigator)) return;
  serviceWorker.addEventListener("message", ({ data }: MessageEvent<unknown>) => {
    const files = filesIn(data);
    if (files && !files.includes(ownScript())) onNew();
  });
  const registration = await serviceWorker.register("offline.js", { updateViaCache: "none" });
  const look = (): void => {
    registration.update().catch(() => undefined);
  };
  setInterval(look, hourMs);
}

function filesIn(message: unknown): readonly unknown[] | undefined {
  if (typeof message !== "object" || message === null || !("files" in message)) return undefined;
  return Array.isArray(message.files) ? message.files : undefined;
}

/** The name of the script that began this page. */
function ownScript(): string {
  const script = document.querySelector<HTMLScriptElement>('script[src*="standalone."]');
  return script?.src.split("/").at(-1) ?? "";
}
