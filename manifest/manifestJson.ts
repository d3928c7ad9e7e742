import type { Addresses } from "./addIn.ts";
import { addIn, addresses } from "./addIn.ts";
import type { Command } from "./commands.ts";
import { cellCommands, commands, ribbonCommands } from "./commands.ts";

/** The first with custom functions 1.5: a metadata file, and choices offered while typing. */
const schemaVersion = "1.25";
/** The schema takes exactly these three. */
const iconSizes = [16, 32, 80];

/**
 * The unified manifest (JSON), for hosts that take it; it says the same as the XML manifest.
 *
 * The functions stand in `functions.json` alone. The schema of the manifest has no place for `allowErrorForDataTypeAny`, without
 * which an error in a chart would stop every formula that reads it; and where a manifest lists functions itself, Office
 * ignores the metadata file (Microsoft’s schema, description of `customFunctions.metadataUrl`).
 *
 * @param baseUrl https address that the built files are served from
 */
export function manifestJson(baseUrl: string): object {
  const urls = addresses(baseUrl);
  const scopes = ["workbook"];

  return {
    $schema: `https://developer.microsoft.com/json-schemas/teams/v${schemaVersion}/MicrosoftTeams.schema.json`,
    manifestVersion: schemaVersion,
    id: addIn.id,
    version: addIn.version,
    name: { short: addIn.name, full: addIn.name },
    description: { short: addIn.short, full: addIn.description },
    developer: {
      name: addIn.provider,
      websiteUrl: urls.home,
      privacyUrl: urls.privacy,
      termsOfUseUrl: urls.terms,
    },
    icons: { color: "icons/icon-192.png", outline: "icons/outline-32.png" },
    accentColor: "#1F5FA8",
    localizationInfo: { defaultLanguageTag: addIn.locale, additionalLanguages: [] },
    validDomains: [new URL(urls.home).host],
    authorization: {
      permissions: { resourceSpecific: [{ name: "Document.ReadWrite.User", type: "Delegated" }] },
    },
    extensions: [
      {
        requirements: { scopes },
        runtimes: [
          {
            id: "MeasureBook.Runtime",
            type: "general",
            lifetime: "long",
            requirements: {
              scopes,
              capabilities: [
                { name: "SharedRuntime", minVersion: "1.1" },
                { name: "CustomFunctionsRuntime", minVersion: "1.3" },
                { name: "ExcelApi", minVersion: "1.10" },
              ],
            },
            code: { page: urls.page, script: urls.script },
            // Without a view, of which a shared runtime has but one (see the XML manifest).
            actions: commands.map(({ action }) =>
              action === undefined
                ? { id: showPane, type: "openPage" }
                : { id: action, type: "executeFunction" },
            ),
            customFunctions: {
              namespace: { id: addIn.namespace, name: addIn.namespace },
              allowCustomDataForDataTypeAny: true,
              metadataUrl: urls.metadata,
            },
          },
        ],
        ribbons: [
          {
            contexts: ["default"],
            requirements: { scopes },
            tabs: [
              {
                builtInTabId: "TabHome",
                groups: [
                  {
                    id: "MeasureBook.Group",
                    label: addIn.groupLabel,
                    icons: icons(urls),
                    controls: ribbonCommands.map((command) => button(urls, command)),
                  },
                ],
              },
            ],
          },
        ],
        contextMenus: [
          {
            menus: [{ entryPoint: "cell", controls: cellCommands.map((command) => button(urls, command)) }],
          },
        ],
      },
    ],
  };
}

/** The action that opens the pane and no more. */
const showPane = "ShowPane";

function icons(urls: Addresses, name?: string): object[] {
  return iconSizes.map((size) => ({ size, url: urls.icon(size, name) }));
}

function button(urls: Addresses, { id, action = showPane, icon, label, tip }: Command): object {
  return {
    id: `MeasureBook.${id}`,
    type: "button",
    label,
    icons: icons(urls, icon),
    supertip: { title: label, description: tip },
    actionId: action,
  };
}
