// How Excel is told of the add-in while it is developed, on each system. No dependencies.

/** The tools of Office’s own, fetched when they are needed: only who works with Excel needs them. */
const certificates = "office-addin-dev-certs@3";
const settings = "office-addin-dev-settings@4";

/** Makes a certificate for localhost that this computer trusts, or leaves a valid one as it is. */
export const certificateCommand = ["npx", ["--yes", certificates, "install"]];

/**
 * The command that adds the add-in to Excel and opens it; `undefined` where there is no Excel to add it to.
 *
 * @param system `process.platform`
 * @param web address of a workbook in Excel on the web, where that is wanted
 */
export function sideloadCommand(system, manifest, web) {
  if (web) return ["npx", ["--yes", settings, "sideload", manifest, "web", "--document", web]];
  if (system !== "win32" && system !== "darwin") return undefined;
  return ["npx", ["--yes", settings, "sideload", manifest, "desktop", "--app", "excel"]];
}

/** The command that takes it away again, where one was added. */
export function removeCommand(system, manifest, web) {
  return !web && system === "win32" ? ["npx", ["--yes", settings, "unregister", manifest]] : undefined;
}

const undo = {
  win32: "It is taken out of Excel when you stop this with Ctrl+C.",
  darwin:
    "To take it out of Excel, delete its file in ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef.",
};

/** What to do next, in words. */
export function nextSteps({ system, address, manifest, web, sideloaded }) {
  const upload = [
    `1. Open a workbook in Excel on the web, in a browser on this computer: https://www.office.com/`,
    `2. Choose Home, Add-ins, More Settings, Upload My Add-in.`,
    `3. Browse to ${manifest} and choose Upload.`,
    `If the pane stays empty: open ${address}taskpane.html in the same browser once, and let the browser trust it.`,
  ].join("\n");
  if (sideloaded && web)
    return "Excel on the web opens with Measure Book. Say yes where it asks to register an add-in.";
  if (sideloaded)
    return `Excel opens with Measure Book: look for it on the tab Home, or type =FIT. in a cell.\n${undo[system] ?? ""}`;
  if (system === "win32" || system === "darwin")
    return `Excel could not be told of it (see above). You can still add it in Excel on the web:\n${upload}`;
  return `There is no Excel for this system to add it to, so add it in Excel on the web:\n${upload}`;
}
