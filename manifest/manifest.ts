export { addresses } from "./addIn.ts";
export { manifestXml } from "./manifestXml.ts";
export { manifestJson } from "./manifestJson.ts";
