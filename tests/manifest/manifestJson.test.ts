import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { validateManifest } from "office-addin-manifest";
import { afterAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { functionsJson } from "../../functions/metadata.ts";
import { addIn, addresses } from "../../manifest/addIn.ts";
import { manifestJson } from "../../manifest/manifest.ts";
import { pngSize } from "./pngSize.ts";

const folder = mkdtempSync(path.join(tmpdir(), "measure-book-manifest-"));
afterAll(() => rmSync(folder, { recursive: true }));

async function validated(manifest: object) {
  const file = path.join(folder, "manifest.json");
  writeFileSync(file, JSON.stringify(manifest));
  return validateManifest(file);
}

describe("unified manifest", () => {
  it("agrees with Microsoft’s schema", async () => {
    const { isValid, report } = await validated(manifestJson("https://localhost:3000/"));
    expect(report?.errors).toBeUndefined();
    expect(isValid).toBe(true);
  });

  it("is really checked: a name beyond 30 letters is found", async () => {
    const manifest = manifestJson("https://localhost:3000/");
    const { isValid, report } = await validated({ ...manifest, name: { short: "Measure".repeat(5) } });
    expect(isValid).toBe(false);
    expect(report?.errors).toHaveLength(1);
  });

  it("says the same as the XML manifest", () => {
    expect(manifestJson("https://localhost:3000/")).toMatchObject({
      id: addIn.id,
      version: addIn.version,
      extensions: [
        {
          runtimes: [
            {
              lifetime: "long",
              code: {
                page: "https://localhost:3000/taskpane.html",
                script: "https://localhost:3000/functions.js",
              },
              customFunctions: { namespace: { id: "FIT", name: "FIT" } },
            },
          ],
        },
      ],
    });
  });

  /**
   * Microsoft’s schema, description of `metadataUrl`: when `functions` is not empty, Office installs the functions from there and
   * ignores the definitions of the metadata file. No version of the schema from 1.23 to 1.30 has `allowErrorForDataTypeAny`.
   */
  it("leaves the functions to functions.json, which takes error cells too", () => {
    const { customFunctions } = z
      .object({
        extensions: z.tuple([
          z.object({
            runtimes: z.tuple([z.object({ customFunctions: z.looseObject({ metadataUrl: z.string() }) })]),
          }),
        ]),
      })
      .parse(manifestJson("https://localhost:3000/")).extensions[0].runtimes[0];
    expect(customFunctions.metadataUrl).toBe("https://localhost:3000/functions.json");
    expect(customFunctions).not.toHaveProperty("functions");
    expect(functionsJson(addresses("https://localhost:3000/").help)).toMatchObject({
      allowErrorForDataTypeAny: true,
      allowCustomDataForDataTypeAny: true,
    });
  });

  // Microsoft, “Configure your Office Add-in to use a shared runtime”, good practice: in the runtime with a long
  // lifetime no action has a view, since a shared runtime supports one pane only.
  it("names no view of its own for any action", () => {
    expect(JSON.stringify(manifestJson("https://localhost:3000/"))).not.toContain('"view"');
  });

  it("has the commands of the XML manifest, each with an action of the runtime", () => {
    const { extensions } = commandsShape.parse(manifestJson("https://localhost:3000/"));
    const [{ runtimes, ribbons, contextMenus }] = extensions;
    const controls = [ribbons[0].tabs[0].groups[0].controls, contextMenus[0].menus[0].controls];
    expect(controls.map((list) => list.map(({ actionId }) => actionId))).toEqual([
      ["ShowPane", "CheckChart", "NewChart"],
      ["ExplainCell"],
    ]);
    expect(runtimes[0].actions.map(({ id }) => id)).toEqual(controls.flat().map(({ actionId }) => actionId));
    expect(contextMenus[0].menus[0].entryPoint).toBe("cell");
  });

  it("has its two icons", () => {
    expect(pngSize("manifest/icons/icon-192.png")).toEqual({ width: 192, height: 192 });
    expect(pngSize("manifest/icons/outline-32.png")).toEqual({ width: 32, height: 32 });
  });
});

/** What is read of the manifest’s commands. */
const controlList = z.array(z.object({ actionId: z.string() }));
const one = <T extends z.ZodType>(each: T) => z.tuple([each]);
const commandsShape = z.object({
  extensions: one(
    z.object({
      runtimes: one(z.object({ actions: z.array(z.object({ id: z.string() })) })),
      ribbons: one(z.object({ tabs: one(z.object({ groups: one(z.object({ controls: controlList })) })) })),
      contextMenus: one(
        z.object({ menus: one(z.object({ entryPoint: z.string(), controls: controlList })) }),
      ),
    }),
  ),
});
