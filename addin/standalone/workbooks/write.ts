import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { workbookFiles, writtenWorkbooks } from "./workbooks.ts";

/** `npm run workbook`: writes the workbooks that are handed out into a folder, dist/workbooks unless another is named. */
const root = fileURLToPath(new URL("../../..", import.meta.url));
const folder = path.resolve(process.argv[2] ?? path.join(root, "dist/workbooks"));
const written = await writtenWorkbooks();
mkdirSync(folder, { recursive: true });
for (const { name, says } of workbookFiles()) {
  writeFileSync(path.join(folder, name), written.get(name) ?? new Uint8Array());
  console.log(`${name}: ${says}`);
}
console.log(`Written to ${folder}.`);
