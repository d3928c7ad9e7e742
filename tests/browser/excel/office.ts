/**
 * A stand-in of our own for the parts of `Office` and `CustomFunctions` that the add-in uses, for a page that is
 * opened in a browser as Excel would open it. It does what Microsoft’s documentation says and no more; what a test
 * wants to see or to do stands in `standIn`.
 */

/** How Excel opens the page. All can be passed as JSON. */
export interface StandInSettings {
  /** `Office.PlatformType`. */
  readonly platform?: "PC" | "Mac" | "OfficeOnline";
  /** False: the shared runtime is started for functions or a command, and the pane is not shown. */
  readonly paneOpen?: boolean;
  /** False: `Office.onReady` does not answer until `becomeReady`, as where the rest of Office.js comes late or never. */
  readonly ready?: boolean;
  /** False: opened in a browser, where `Office.onReady` answers without a host. */
  readonly inExcel?: boolean;
  readonly darkTheme?: boolean;
  /** Minor number of the newest ExcelApi 1.x. */
  readonly excelApi?: number;
  /** Requirement sets that are not there, such as “OpenBrowserWindowApi”. */
  readonly without?: readonly string[];
}

type Callback = (...given: never[]) => unknown;

export interface StandIn {
  /** What `CustomFunctions.associate` was given, by id. */
  readonly associated: Map<string, Callback>;
  /** What `Office.actions.associate` was given, by id. */
  readonly actions: Map<string, Callback>;
  /** Addresses that were to be opened in the user’s browser. */
  readonly windows: string[];
  paneOpen: boolean;
  startup: string;
  /** Calls a worksheet function as Excel does: every argument (null where left out), then an object about the call. */
  call(id: string, ...given: unknown[]): unknown;
  /** Presses a command; resolves when the command has said that it is done. */
  press(action: string): Promise<void>;
  setDarkTheme(dark: boolean): void;
  becomeReady(): void;
  /** The user opens or closes the pane. */
  showPane(open: boolean): void;
}

/** The error that a worksheet function throws for Excel to show. */
class CustomFunctionsError extends Error {
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message);
  }
}

export function createOffice({
  platform = "OfficeOnline",
  paneOpen = true,
  ready = true,
  inExcel = true,
  darkTheme = false,
  without = [],
}: StandInSettings) {
  const visibility = new Set<(message: { visibilityMode: string }) => void>();
  const theme = (dark: boolean) => ({
    isDarkTheme: dark,
    bodyBackgroundColor: dark ? "#262626" : "#FFFFFF",
  });
  const info = inExcel ? { host: "Excel", platform } : { host: null, platform: null };
  let answer: (given: typeof info) => void = () => undefined;
  const answered = new Promise<typeof info>((resolve) => {
    answer = resolve;
  });
  if (ready) answer(info);
  const standIn: StandIn = {
    associated: new Map(),
    actions: new Map(),
    windows: [],
    paneOpen,
    startup: "None",
    call(id, ...given) {
      const found = standIn.associated.get(id) as ((...given: unknown[]) => unknown) | undefined;
      if (!found) throw new Error(`No function is associated with “${id}”.`);
      return found(...given, { address: "Sheet1!A1", functionName: id });
    },
    press(action) {
      const found = standIn.actions.get(action) as ((event: { completed(): void }) => unknown) | undefined;
      if (!found) return Promise.reject(new Error(`No action is associated with “${action}”.`));
      return new Promise((resolve) => {
        found({ completed: resolve });
      });
    },
    setDarkTheme(dark) {
      context.officeTheme = theme(dark);
    },
    becomeReady() {
      answer(info);
    },
    showPane(open) {
      if (standIn.paneOpen === open) return;
      standIn.paneOpen = open;
      for (const told of [...visibility]) told({ visibilityMode: open ? "Taskpane" : "Hidden" });
    },
  };

  const newest = platform === "OfficeOnline" ? offered : { ...offered, ...onDesktopOnly };
  const context = {
    platform: inExcel ? platform : null,
    officeTheme: theme(darkTheme),
    requirements: {
      // “Returns true if the set is supported”: the numbers before and after the dot are compared.
      isSetSupported: (set: string, version = "1.1") =>
        inExcel && !without.includes(set) && notNewer(version, newest[set] ?? "0.0"),
    },
    ui: {
      openBrowserWindow: (address: string) => {
        // Documentation of Office.UI: “the full URL … including protocol (http or https)”.
        if (!/^https?:\/\//.test(address)) throw new Error(`“${address}” is not a full http address.`);
        standIn.windows.push(address);
      },
    },
  };

  const Office = {
    HostType: { Excel: "Excel" },
    PlatformType: { PC: "PC", Mac: "Mac", OfficeOnline: "OfficeOnline" },
    StartupBehavior: { none: "None", load: "Load" },
    VisibilityMode: { hidden: "Hidden", taskpane: "Taskpane" },
    context,
    onReady: (told?: (given: typeof info) => unknown): Promise<typeof info> => {
      if (told) void answered.then(told);
      return answered;
    },
    actions: {
      associate: (id: string, action: Callback) => {
        standIn.actions.set(id, action);
      },
    },
    addin: {
      showAsTaskpane: () => {
        standIn.showPane(true);
        return Promise.resolve();
      },
      hide: () => {
        standIn.showPane(false);
        return Promise.resolve();
      },
      onVisibilityModeChanged: (told: (message: { visibilityMode: string }) => void) => {
        visibility.add(told);
        return Promise.resolve(() => {
          visibility.delete(told);
          return Promise.resolve();
        });
      },
      getStartupBehavior: () => Promise.resolve(standIn.startup),
      setStartupBehavior: (behaviour: string) => {
        standIn.startup = behaviour;
        return Promise.resolve();
      },
    },
  };

  const CustomFunctions = {
    associate: (id: string | Readonly<Record<string, Callback>>, compute?: Callback) => {
      if (typeof id === "string") standIn.associated.set(id, compute ?? (() => undefined));
      else for (const [name, each] of Object.entries(id)) standIn.associated.set(name, each);
    },
    Error: CustomFunctionsError,
    ErrorCode: {
      invalidValue: "#VALUE!",
      notAvailable: "#N/A",
      divisionByZero: "#DIV/0!",
      invalidNumber: "#NUM!",
      nullReference: "#NULL!",
      invalidName: "#NAME?",
      invalidReference: "#REF!",
    },
  };
  return { Office, CustomFunctions, standIn };
}

/** Requirement sets, each to its newest version, as Microsoft’s pages on the common requirement sets list them. */
const offered: Readonly<Record<string, string>> = {
  SharedRuntime: "1.2",
  CustomFunctionsRuntime: "1.5",
  DialogApi: "1.2",
  AddinCommands: "1.3",
};

/** “OpenBrowserWindow API requirement sets”: Office on the web, not supported. */
const onDesktopOnly: Readonly<Record<string, string>> = { OpenBrowserWindowApi: "1.1" };

function notNewer(wanted: string, newest: string): boolean {
  const [a = 0, b = 0] = wanted.split(".").map(Number);
  const [c = 0, d = 0] = newest.split(".").map(Number);
  return a < c || (a === c && b <= d);
}
