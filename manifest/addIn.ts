import { namespace } from "../functions/namespace.ts";

/** What both manifests say of the add-in. The id never changes once released. */
export const addIn = {
  id: "92fd357c-d47e-487a-8a37-6f374fcd7f2c",
  /** The version of package.json. */
  version: "0.1.0",
  provider: "Measure Book",
  locale: "en-GB",
  name: "Measure Book",
  short: "Fit work for sewing patterns of small figures, in your workbook.",
  description:
    "For people who draft sewing patterns for dolls and other small figures: check a measurement chart, compare figures, and see which of them share a body.",
  namespace,
  groupLabel: "Measure Book",
  startedTitle: "Measure Book is ready",
  startedText:
    "Choose Measure Book on the Home tab to open it, or type =FIT. in a cell to see its functions.",
} as const;

/** Pixel sizes of each icon in `icons/` that a command needs. */
export const iconSizes = [16, 32, 64, 80] as const;

/** Addresses of the built files. */
export interface Addresses {
  readonly origin: string;
  readonly home: string;
  readonly privacy: string;
  readonly terms: string;
  /** All functions, each with its help. */
  readonly helpIndex: string;
  /** The one page that is pane, function file and home of the worksheet functions. */
  readonly page: string;
  readonly script: string;
  readonly metadata: string;
  /** The help page of a function, see `helpPages`. */
  help(functionName: string): string;
  icon(size: number, name?: string): string;
}

/**
 * @param baseUrl where the built files are served from, with or without the last slash
 * @throws {Error} when it is not an https address, which Office demands
 */
export function addresses(baseUrl: string): Addresses {
  const base = httpsUrl(baseUrl);
  const at = (file: string): string => new URL(file, base).href;
  return {
    origin: base.origin,
    home: base.href,
    privacy: at("privacy.html"),
    terms: at("terms.html"),
    helpIndex: at("help/index.html"),
    page: at("taskpane.html"),
    script: at("functions.js"),
    metadata: at("functions.json"),
    help: (functionName) => at(helpFile(functionName)),
    icon: (size, name = "icon") => at(`icons/${name}-${String(size)}.png`),
  };
}

/** Where the help page of a function stands among the built files: `help/whatfits.html`. */
export function helpFile(functionName: string): string {
  return `help/${functionName.toLowerCase()}.html`;
}

function httpsUrl(text: string): URL {
  const address = text.endsWith("/") ? text : `${text}/`;
  if (URL.canParse(address) && new URL(address).protocol === "https:") return new URL(address);
  throw new Error(
    `“${text}” cannot be the address of the add-in. Give one that starts with https://, for example https://localhost:3000/.`,
  );
}
