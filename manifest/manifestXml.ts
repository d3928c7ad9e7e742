import type { Addresses } from "./addIn.ts";
import { addIn, addresses, iconSizes } from "./addIn.ts";
import type { Command } from "./commands.ts";
import { cellCommands, commands, ribbonCommands } from "./commands.ts";
import { element } from "./xml.ts";

/**
 * The XML manifest, the one to install in Excel: one shared runtime for pane and worksheet functions, so that its
 * page is named by the same resource everywhere.
 *
 * @param baseUrl https address that the built files are served from
 */
export function manifestXml(baseUrl: string): string {
  const urls = addresses(baseUrl);
  const root = element(
    "OfficeApp",
    {
      xmlns: "http://schemas.microsoft.com/office/appforoffice/1.1",
      "xmlns:xsi": "http://www.w3.org/2001/XMLSchema-instance",
      "xmlns:bt": "http://schemas.microsoft.com/office/officeappbasictypes/1.0",
      "xsi:type": "TaskPaneApp",
    },
    [
      element("Id", {}, addIn.id),
      element("Version", {}, `${addIn.version}.0`),
      element("ProviderName", {}, addIn.provider),
      element("DefaultLocale", {}, addIn.locale),
      element("DisplayName", { DefaultValue: addIn.name }),
      element("Description", { DefaultValue: addIn.description }),
      element("IconUrl", { DefaultValue: urls.icon(32) }),
      element("HighResolutionIconUrl", { DefaultValue: urls.icon(64) }),
      element("SupportUrl", { DefaultValue: urls.helpIndex }),
      element("AppDomains", {}, [element("AppDomain", {}, urls.origin)]),
      element("Hosts", {}, [element("Host", { Name: "Workbook" })]),
      element("Requirements", {}, [
        element("Sets", { DefaultMinVersion: "1.1" }, [
          element("Set", { Name: "SharedRuntime", MinVersion: "1.1" }),
          element("Set", { Name: "CustomFunctionsRuntime", MinVersion: "1.3" }),
          element("Set", { Name: "ExcelApi", MinVersion: "1.10" }),
        ]),
      ]),
      element("DefaultSettings", {}, [element("SourceLocation", { DefaultValue: urls.page })]),
      element("Permissions", {}, "ReadWriteDocument"),
      versionOverrides(urls),
    ],
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${root}\n`;
}

/** Resource ids, at most 32 characters each. */
const resource = {
  page: "Page.Url",
  script: "Functions.Script.Url",
  metadata: "Functions.Metadata.Url",
  namespace: "Functions.Namespace",
  help: "Help.Url",
  group: "Group.Label",
  label: ({ id }: Command) => `${id}.Label`,
  tip: ({ id }: Command) => `${id}.Tip`,
  startedTitle: "Started.Title",
  startedText: "Started.Text",
  icon: (size: number, name = "icon") => `Icon.${name}.${String(size)}`,
};

function versionOverrides(urls: Addresses): string {
  return element(
    "VersionOverrides",
    {
      xmlns: "http://schemas.microsoft.com/office/taskpaneappversionoverrides",
      "xsi:type": "VersionOverridesV1_0",
    },
    [
      element("Hosts", {}, [
        element("Host", { "xsi:type": "Workbook" }, [
          element("Runtimes", {}, [element("Runtime", { resid: resource.page, lifetime: "long" })]),
          element("AllFormFactors", {}, [worksheetFunctions()]),
          element("DesktopFormFactor", {}, [
            element("GetStarted", {}, [
              element("Title", { resid: resource.startedTitle }),
              element("Description", { resid: resource.startedText }),
              element("LearnMoreUrl", { resid: resource.help }),
            ]),
            element("FunctionFile", { resid: resource.page }),
            ribbonGroup(),
            cellMenu(),
          ]),
        ]),
      ]),
      resources(urls),
    ],
  );
}

function worksheetFunctions(): string {
  const at = (resid: string): string[] => [element("SourceLocation", { resid })];
  return element("ExtensionPoint", { "xsi:type": "CustomFunctions" }, [
    element("Script", {}, at(resource.script)),
    element("Page", {}, at(resource.page)),
    element("Metadata", {}, at(resource.metadata)),
    element("Namespace", { resid: resource.namespace }),
  ]);
}

function ribbonGroup(): string {
  return element("ExtensionPoint", { "xsi:type": "PrimaryCommandSurface" }, [
    element("OfficeTab", { id: "TabHome" }, [
      element("Group", { id: "MeasureBook.Group" }, [
        element("Label", { resid: resource.group }),
        icons(),
        ...ribbonCommands.map(button),
      ]),
    ]),
  ]);
}

function cellMenu(): string {
  return element("ExtensionPoint", { "xsi:type": "ContextMenu" }, [
    element("OfficeMenu", { id: "ContextMenuCell" }, cellCommands.map(button)),
  ]);
}

function icons(name?: string): string {
  return element(
    "Icon",
    {},
    iconSizes.map((size) => element("bt:Image", { size: String(size), resid: resource.icon(size, name) })),
  );
}

function button(command: Command): string {
  const { id, action, icon } = command;
  return element("Control", { "xsi:type": "Button", id: `MeasureBook.${id}` }, [
    element("Label", { resid: resource.label(command) }),
    element("Supertip", {}, [
      element("Title", { resid: resource.label(command) }),
      element("Description", { resid: resource.tip(command) }),
    ]),
    icons(icon),
    action === undefined
      ? // No TaskpaneId: a shared runtime has one pane (Microsoft, “Configure your Office Add-in to use a shared runtime”).
        element("Action", { "xsi:type": "ShowTaskpane" }, [
          element("SourceLocation", { resid: resource.page }),
        ])
      : element("Action", { "xsi:type": "ExecuteFunction" }, [element("FunctionName", {}, action)]),
  ]);
}

function resources(urls: Addresses): string {
  const list = (
    kind: string,
    item: string,
    values: readonly (readonly [id: string, value: string])[],
  ): string =>
    element(
      kind,
      {},
      values.map(([id, value]) => element(item, { id, DefaultValue: value })),
    );
  return element("Resources", {}, [
    list(
      "bt:Images",
      "bt:Image",
      [...new Set(commands.map(({ icon }) => icon))].flatMap((name) =>
        iconSizes.map((size) => [resource.icon(size, name), urls.icon(size, name)] as const),
      ),
    ),
    list("bt:Urls", "bt:Url", [
      [resource.page, urls.page],
      [resource.script, urls.script],
      [resource.metadata, urls.metadata],
      [resource.help, urls.helpIndex],
    ]),
    list("bt:ShortStrings", "bt:String", [
      [resource.namespace, addIn.namespace],
      [resource.group, addIn.groupLabel],
      ...commands.map((command) => [resource.label(command), command.label] as const),
      [resource.startedTitle, addIn.startedTitle],
    ]),
    list("bt:LongStrings", "bt:String", [
      ...commands.map((command) => [resource.tip(command), command.tip] as const),
      [resource.startedText, addIn.startedText],
    ]),
  ]);
}
