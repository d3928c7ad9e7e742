import { writeFileSync } from "node:fs";
import { referenceMarkdown } from "./reference.ts";

/** `npm run docs`: writes the function reference beside this file. */
const file = new URL("REFERENCE.md", import.meta.url);
writeFileSync(file, referenceMarkdown());
console.log("Wrote functions/REFERENCE.md.");
