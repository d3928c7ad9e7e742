export { manifestXml } from "./manifestXml.ts";
export { manifestJson } from "./manifestJson.ts";
