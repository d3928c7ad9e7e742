// `npm run build`: writes the add-in into dist/, for the address where it will be served.
import path from "node:path";
import process from "node:process";
import { parseArgs } from "node:util";
import { ensurePackages, fail, requireNode, root, run } from "../addin/standalone/prepare.mjs";
import { httpsAddress } from "./httpsAddress.mjs";

const { values: options } = parseArgs({ options: { url: { type: "string" }, output: { type: "string" } } });

requireNode();
const given = options.url ?? process.env.MEASURE_BOOK_URL;
const address = httpsAddress(given ?? "https://localhost:3000/");
if (!address)
  fail(
    `“${given}” cannot be the address of the add-in. Give the https address of the folder where it will be served: npm run build -- --url https://example.org/measure-book/`,
  );
await ensurePackages();
const folder = path.resolve(root, options.output ?? "dist");
console.log(`Building Measure Book for ${address} …`);
const code = await run("npx", ["webpack", "--mode", "production", "--output-path", folder], {
  env: { ...process.env, MEASURE_BOOK_URL: address },
});
if (code !== 0) fail("It could not be built. Mend what is named above, then run npm run build again.");
console.log(`
${folder} holds the add-in. What to do next:
- Copy all of it to where ${address} is served. Any web server with https will do; nothing runs there.
- Then open ${address}add-to-excel.html in a browser: it says how to add Measure Book to Excel.`);
if (!given)
  console.log(`
Without an address it is built for this computer alone: npm run excel serves it. For any other place:
npm run build -- --url https://example.org/measure-book/`);
