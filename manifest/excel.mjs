// `npm run excel`: builds the add-in for this computer, serves it with a certificate that Excel trusts, and adds it to Excel.
import { existsSync, readFileSync } from "node:fs";
import { createServer } from "node:https";
import os from "node:os";
import path from "node:path";
import process from "node:process";
import { parseArgs } from "node:util";
import { ensurePackages, fail, requireNode, root, run } from "../addin/standalone/prepare.mjs";
import { certificateCommand, nextSteps, removeCommand, sideloadCommand } from "./sideload.mjs";

const { values: options } = parseArgs({
  options: {
    port: { type: "string", default: "3000" },
    /** A workbook in Excel on the web, by its address. */
    web: { type: "string" },
    /** A folder with localhost.crt and localhost.key to use as they are. */
    certificates: { type: "string" },
    /** Serve a folder that is built already. */
    built: { type: "string" },
    "no-sideload": { type: "boolean" },
  },
});

const port = Number(options.port);
if (!Number.isInteger(port) || port < 1 || port > 65535)
  fail(`“${options.port}” is not a port. Give a whole number from 1 to 65535: npm run excel -- --port 3000`);
if (options.web !== undefined && !/^https:\/\//.test(options.web))
  fail(
    `“${options.web}” is not the address of a workbook. In Excel on the web choose Share, Copy link, and give that.`,
  );

requireNode();
const address = `https://localhost:${port}/`;
const keys = await certificate();
await ensurePackages();
const folder = options.built ? path.resolve(options.built) : await build();
const server = await serve(folder, keys);
await addToExcel(path.join(folder, "manifest.xml"));

async function certificate() {
  const place = options.certificates ?? path.join(os.homedir(), ".office-addin-dev-certs");
  if (!options.certificates) {
    console.log(
      "Making sure that this computer trusts a certificate for localhost (it may ask you to agree) …",
    );
    if ((await run(...certificateCommand)) !== 0)
      fail(
        "The certificate could not be made or trusted (see above). Excel loads add-ins over https only. Run npm run excel again and agree when you are asked, or give your own: npm run excel -- --certificates folder, with localhost.crt and localhost.key in it.",
      );
  }
  const [cert, key] = ["localhost.crt", "localhost.key"].map((name) => path.join(place, name));
  for (const file of [cert, key])
    if (!existsSync(file)) fail(`${file} is missing, so nothing can be served over https.`);
  return { cert: readFileSync(cert), key: readFileSync(key) };
}

async function build() {
  const code = await run(process.execPath, ["manifest/build.mjs", "--url", address]);
  if (code !== 0) process.exit(code);
  return path.join(root, "dist");
}

/** Serves the folder until the program is stopped. */
async function serve(folder, keys) {
  const { default: sirv } = await import("sirv");
  const files = sirv(folder, { dev: true, etag: true });
  const server = createServer(keys, (request, response) => {
    // Excel on the web fetches functions.json from its own address.
    response.setHeader("Access-Control-Allow-Origin", "*");
    files(request, response, () => {
      response.statusCode = 404;
      response.end("There is no such page.");
    });
  });
  await new Promise((resolve) => {
    server.once("error", (error) =>
      fail(
        error.code === "EADDRINUSE"
          ? `Port ${port} is in use, perhaps by Measure Book itself. Stop that, or choose another: npm run excel -- --port ${port + 1}`
          : `The pages could not be served: ${error.message}`,
      ),
    );
    server.listen(port, "localhost", resolve);
  });
  console.log(`\nMeasure Book is served at ${address} Leave this window open; Ctrl+C stops it.\n`);
  return server;
}

async function addToExcel(manifest) {
  const system = process.platform;
  const command = options["no-sideload"] ? undefined : sideloadCommand(system, manifest, options.web);
  const sideloaded = command !== undefined && (await run(...command)) === 0;
  console.log(`\n${nextSteps({ system, address, manifest, web: options.web, sideloaded })}`);
  process.once("SIGINT", async () => {
    const remove = sideloaded ? removeCommand(system, manifest, options.web) : undefined;
    if (remove) await run(...remove);
    server.close();
    server.closeAllConnections();
  });
}
