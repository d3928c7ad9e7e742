// `npm start`: fetches what is missing, serves the page without Excel on localhost, opens a browser where there is one.
// Plain JavaScript without dependencies, since it runs before anything is installed.
import { spawn } from "node:child_process";
import { createServer as createHttpServer } from "node:http";
import { createServer } from "node:net";
import { parseArgs } from "node:util";
import { headersFor } from "../../manifest/policy.mjs";
import { ensurePackages, fail, requireNode } from "./prepare.mjs";

const { values: options } = parseArgs({
  options: { port: { type: "string" }, "no-open": { type: "boolean" } },
});

requireNode();
await ensurePackages();
const port = await choosePort(options.port);
await serve(port);

/** The asked-for port, or the first free one from 3210. The browser keeps workbooks by address, so the port should stay. */
async function choosePort(asked) {
  const first = Number(asked ?? 3210);
  if (!Number.isInteger(first) || first < 1 || first > 65535)
    fail(`“${asked}” is not a port. Give a whole number from 1 to 65535: npm start -- --port 3210`);
  if (await isFree(first)) return first;
  if (asked) fail(`Port ${first} is in use. Choose another: npm start -- --port ${first + 1}`);
  for (let port = first + 1; port < first + 20; port++) {
    if (await isFree(port)) {
      console.log(
        `Port ${first} is in use (perhaps Measure Book runs already), so this one takes ${port}.\n` +
          `Workbooks are kept by address: what you kept at ${first} is not shown at ${port}.`,
      );
      return port;
    }
  }
  return fail(`Ports ${first} to ${first + 19} are all in use. Choose another: npm start -- --port 4000`);
}

function isFree(port) {
  return new Promise((resolve) => {
    const server = createServer();
    server.once("error", () => resolve(false));
    server.listen(port, "localhost", () => server.close(() => resolve(true)));
  });
}

async function serve(port) {
  const { buildPage } = await import("./buildPage.mjs");
  const folder = await buildPage().catch((error) =>
    fail(
      `The page could not be built:\n${error.message}\nMend what is named here, then run npm start again.`,
    ),
  );
  const { default: sirv } = await import("sirv");
  const files = sirv(folder, { dev: true, etag: true });
  const server = createHttpServer((request, response) => {
    for (const [name, value] of Object.entries(headersFor(request.url ?? "/")))
      response.setHeader(name, value);
    files(request, response, () => {
      response.statusCode = 404;
      response.end("There is no such page. Open / for Measure Book.");
    });
  });
  server.once("error", (error) => fail(`The page could not be served: ${error.message}`));
  server.listen(port, "localhost", () => {
    const address = `http://localhost:${port}/`;
    console.log(`\nMeasure Book is ready at ${address} Press Ctrl+C to stop.`);
    if (!options["no-open"]) openBrowser(address);
  });
}

function openBrowser(address) {
  const command = { darwin: ["open"], win32: ["cmd", "/c", "start", ""] }[process.platform] ?? ["xdg-open"];
  const headless =
    process.env.CI || (process.platform === "linux" && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY);
  if (headless) return console.log("There is no display here: open the address in a browser yourself.");
  const child = spawn(command[0], [...command.slice(1), address], { stdio: "ignore", detached: true });
  child.on("error", () => console.log("No browser could be opened: open the address yourself."));
  child.unref();
}
