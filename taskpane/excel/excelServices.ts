import type { HostServices } from "../shell/hostServices.ts";
import type { Appearance } from "../ui/theme.ts";

/** What Excel offers beside its sheets, as far as this Excel has it. For use once `Office.onReady` has answered. */
export function excelServices(): HostServices {
  const has = (set: string): boolean => Office.context.requirements.isSetSupported(set, "1.1");
  return {
    appearance: excelAppearance,
    watchAppearance,
    // Webviews on Mac drop downloads, those on Windows do not keep all (Microsoft, “Browsers and webview controls used by
    // Office Add-ins”), and on the web it is for the page around the pane to allow them.
    keepsDownloads: false,
    ...(has("SharedRuntime") && { startup: startup() }),
    ...(has("OpenBrowserWindowApi") && {
      openInBrowser: (address: string) => {
        Office.context.ui.openBrowserWindow(address);
      },
    }),
  };
}

function startup(): NonNullable<HostServices["startup"]> {
  const listeners = new Set<() => void>();
  return {
    isNeeded: Office.context.platform === Office.PlatformType.Mac,
    isOn: async () => (await Office.addin.getStartupBehavior()) === Office.StartupBehavior.load,
    set: async (on) => {
      await Office.addin.setStartupBehavior(on ? Office.StartupBehavior.load : Office.StartupBehavior.none);
      for (const listener of [...listeners]) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}

/** Excel tells whether its own theme is dark; older versions tell only the colour behind the pane. */
function excelAppearance(): Appearance | undefined {
  const theme: Partial<Office.OfficeTheme> | undefined = Office.context.officeTheme;
  if (theme?.isDarkTheme !== undefined) return theme.isDarkTheme ? "dark" : "light";
  const ground = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(theme?.bodyBackgroundColor ?? "");
  if (!ground) return undefined;
  const brightness = ground.slice(1).reduce((sum, part) => sum + parseInt(part, 16), 0) / 3;
  return brightness < 128 ? "dark" : "light";
}

/** How often the theme is looked at while the pane is in sight, in milliseconds. */
const themePause = 2000;

/**
 * The event `OfficeThemeChanged` is documented for Outlook alone (Microsoft, `Office.EventType`), so the theme is looked at
 * again whenever the pane comes into sight, and now and then while it is.
 */
function watchAppearance(listener: () => void): () => void {
  const look = (): void => {
    if (document.visibilityState === "visible") listener();
  };
  const timer = setInterval(look, themePause);
  window.addEventListener("focus", look);
  document.addEventListener("visibilitychange", look);
  return () => {
    clearInterval(timer);
    window.removeEventListener("focus", look);
    document.removeEventListener("visibilitychange", look);
  };
}
